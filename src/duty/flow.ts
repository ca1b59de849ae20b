// What a leak loses in a running week or a trip, read from the tables of a prepared week.

import type { FatigueCrack, Leak, Unit } from "../physics/build.ts";
import { gravity } from "../physics/fluid/surroundings.ts";
import { leakFlow } from "../physics/leak/flow.ts";
import { crackInBoth, openingAt } from "../physics/leaking.ts";
import { circuitPlaces, panPieces, shapes, type Prepared } from "./prepared.ts";
import { mixed, shaped, type Reading } from "./reading.ts";
import { middleShape } from "./tabling.ts";

/** Whether a leak at this place can be averaged: one at the pan's rail follows the surface as it swings, which no table holds. */
export const isTabled = ({ place }: Leak): boolean => place !== "pan-seam";

const placeOf = ({ place, fedBy }: Leak): number =>
  place === "pan" || place === "pan-seam"
    ? -1
    : circuitPlaces.indexOf(place === "shaft-seal" ? fedBy : place);

/** Takes a leak for all of its history: where it is, and its opening, if that stays as it is. */
export function takeLeak(reading: Reading, leak: Leak): void {
  const { kind } = leak.opening;
  reading.place = placeOf(leak);
  reading.grows = kind !== "hole" && kind !== "slot";
  if (!reading.grows) openAsParked(reading, leak, 0, 0);
}

/** An opening that is the same whether the engine runs or not. */
function openAsParked({ opening, parked }: Reading, leak: Leak, age: number, calendar: number): void {
  openingAt(opening, leak.opening, age, 0, true, calendar);
  parked.viscous = opening.viscous;
  parked.inertial = opening.inertial;
}

/** Takes fluid that is so many weeks old, of which each takes the share of its life that it takes at the level that was taken. */
export function takeAge(reading: Reading, { fluid }: Unit, weeks: number): void {
  const aged = weeks * mixed(reading, reading.tables.ageing, 0, 1);
  reading.thinned = 1 - fluid.shearLoss * Math.min(1, aged);
}

/** Takes the leak's opening after so many seconds of running and in all; air, level and the fluid's age are taken. */
export function takeOpening(reading: Reading, leak: Leak, age: number, calendar: number): void {
  reading.shape = -1;
  reading.opened++;
  if (!reading.grows) return;
  if (leak.opening.kind === "crack") gape(reading, leak.opening, age);
  else openAsParked(reading, leak, age, calendar);
}

/** Only a crack gapes by pressure and bending. */
function gape(reading: Reading, crack: FatigueCrack, age: number): void {
  const { opening, parked, tables, place } = reading;
  const pressure = place >= 0 ? mixed(reading, tables.circuit[place]!.pressure, 0, 1) : 0;
  crackInBoth(opening, parked, crack, age, pressure);
}

/** Looks up how the opening that was taken lies among the shapes of the tables. */
function takeShape(reading: Reading): void {
  const { opening, shapeWeights } = reading;
  // The circuit is laminar and fed by an orifice: where the fluid has thinned, so has the pressure in front of the leak, and a seep flows as ever.
  const { viscous } = opening;
  const shape = opening.inertial / (viscous * viscous * reading.thinned);
  const at = Math.max(0, Math.min(shapes.length - 1, 3 * (Math.log10(shape) + 18)));
  const first = Math.max(0, Math.min(shapes.length - 4, Math.floor(at) - 1));
  const x = at - first;
  shapeWeights[0] = -((x - 1) * (x - 2) * (x - 3)) / 6;
  shapeWeights[1] = (x * (x - 2) * (x - 3)) / 2;
  shapeWeights[2] = -(x * (x - 1) * (x - 3)) / 2;
  shapeWeights[3] = (x * (x - 1) * (x - 2)) / 6;
  reading.shape = first;
  reading.factor = viscous < 1e200 ? 1 / (viscous * Math.sqrt(1 + shape / middleShape)) : 0;
}

/** How easily the opening that was taken lets fluid out, but for a factor that hardly changes: what the tables of the circuit are held against. */
export function widthOf({ opening, thinned }: Reading): number {
  const { viscous, inertial } = opening;
  return viscous < 1e200
    ? 1 / (viscous * Math.sqrt(1 + inertial / (viscous * viscous * thinned * middleShape)))
    : 0;
}

/** Mass [kg] that a running week loses through the opening that was taken. */
export function weekRunning(reading: Reading, prepared: Prepared, leak: Leak): number {
  const { times, firstPiece } = prepared;
  if (reading.place >= 0) {
    if (reading.shape < 0) takeShape(reading);
    return shaped(reading, reading.tables.circuit[reading.place]!.week, 0, 1);
  }
  let sum = 0;
  for (let k = 0; k < times.length; k++)
    sum += times[k]! * tripRunning(reading, prepared, leak, k, firstPiece[k + 1]! - firstPiece[k]!);
  return sum;
}

/** Mass [kg] that a trip of a kind loses from its start to the end of so many pieces; read once through one opening. */
export function tripRunning(
  reading: Reading,
  prepared: Prepared,
  leak: Leak,
  kind: number,
  pieces: number,
): number {
  if (pieces <= 0) return 0;
  const { readAt, readLoss } = reading;
  const cell = prepared.firstPiece[kind]! + pieces - 1;
  if (readAt[cell] !== reading.opened) {
    readAt[cell] = reading.opened;
    readLoss[cell] =
      reading.place >= 0
        ? fromCircuit(reading, prepared, cell)
        : fromPan(reading, prepared, leak, kind, pieces);
  }
  return readLoss[cell]!;
}

function fromCircuit(reading: Reading, { firstPiece, kinds }: Prepared, cell: number): number {
  if (reading.shape < 0) takeShape(reading);
  return shaped(reading, reading.tables.circuit[reading.place]!.trips, cell, firstPiece[kinds.length]!);
}

function fromPan(reading: Reading, prepared: Prepared, leak: Leak, kind: number, pieces: number): number {
  const { firstPiece, kinds } = prepared;
  const { panDepth, panDensity, panViscosity } = reading.tables;
  const first = firstPiece[kind]!;
  const all = firstPiece[kinds.length]!;
  const { pieceTimes } = kinds[kind]!;
  let sum = 0;
  for (let p = 0; p < pieces; p += panPieces) {
    const depth = mixed(reading, panDepth, first + p, all);
    if (!(depth > leak.height)) continue;
    const density = mixed(reading, panDensity, first + p, all);
    const viscosity = mixed(reading, panViscosity, first + p, all) * reading.thinned;
    const head = density * gravity * (depth - leak.height);
    const seconds = pieceTimes[Math.min(pieces, p + panPieces)]! - pieceTimes[p]!;
    sum += leakFlow(reading.opening, head, viscosity, density) * density * seconds;
  }
  return sum;
}
