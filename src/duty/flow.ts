// What a leak loses in a trip, a week or a stand, read from the tables of a prepared week.

import type { Leak, Unit } from "../physics/build.ts";
import { gravity } from "../physics/fluid/surroundings.ts";
import { drainTime } from "../physics/leak/drain-down.ts";
import { leakFlow } from "../physics/leak/flow.ts";
import { openingAt } from "../physics/leaking.ts";
import { columnArea, panArea, sinks } from "../physics/standing.ts";
import { circuitPlaces, panPieces, shapes, type Prepared } from "./prepared.ts";
import { mixed, shaped, takeStand, type Reading } from "./reading.ts";
import { middleShape } from "./tabling.ts";

/** Whether a leak at this place can be averaged: one at the pan's rail follows the surface as it swings, which no table holds. */
export const isTabled = ({ place }: Leak): boolean => place !== "pan-seam";

const placeOf = ({ place, fedBy }: Leak): number =>
  place === "pan" || place === "pan-seam"
    ? -1
    : circuitPlaces.indexOf(place === "shaft-seal" ? fedBy : place);

/** Takes the leak's opening after so many seconds of running and in all, in fluid of an age; air and level are taken. */
export function takeOpening(
  reading: Reading,
  { fluid }: Unit,
  leak: Leak,
  age: number,
  calendar: number,
  fluidAge: number,
): void {
  const { opening, parked, tables } = reading;
  reading.place = placeOf(leak);
  reading.shape = -1;
  reading.opened++;
  reading.thinned = 1 - fluid.shearLoss * Math.min(1, fluidAge);
  // Only a crack gapes by pressure and bending.
  const gapes = leak.opening.kind === "crack";
  const pressure =
    gapes && reading.place >= 0 ? mixed(reading, tables.circuit[reading.place]!.pressure, 0, 1) : 0;
  openingAt(opening, leak.opening, age, pressure, true, calendar);
  if (gapes) openingAt(parked, leak.opening, age, 0, false, calendar);
  else {
    parked.viscous = opening.viscous;
    parked.inertial = opening.inertial;
  }
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

const hasColumn = ({ place, lineAbove }: Leak) =>
  (place === "supply-line" || place === "return-line") && lineAbove > 0;

/** Share of the fluid's life that a week takes. */
export const weekAgeing = (reading: Reading): number => mixed(reading, reading.tables.ageing, 0, 1);

/**
 * Mass [kg] lost in the last `seconds` of one of the week's kinds of stands, or of so long a beginning of it, each as much longer as the vehicle rests longer: first from the line's column above the hole, then from
 * what stands in the pan over it, at the viscosity that the whole stand amounts to.
 */
export function standLoses(
  reading: Reading,
  prepared: Prepared,
  leak: Leak,
  standKind: number,
  asked: number,
  told = prepared.standKinds[standKind]!.stand,
): number {
  if (!(asked > 0)) return 0;
  const over = parkedOver(reading, prepared, leak, standKind, told);
  const column = hasColumn(leak) ? leak.columnHeight : 0;
  if (!(column > 0 || over > 0)) return 0;
  const { parked } = reading;
  const seconds = reading.rests * asked;
  const density = reading.stand[1]!;
  // A leak that opens in the middle of a stand opens in the cold.
  const viscosity =
    reading.thinned * (asked < told ? reading.stand[2]! : viscosityOf(reading, prepared, standKind, told));
  if (column > over) {
    const area = columnArea(leak);
    const lost = sinks(parked, area, column, seconds, viscosity, density);
    const floor = Math.max(0, over);
    if (column - lost / area >= floor || floor === 0) return lost * density;
    const left = seconds - drainTime(parked, area, column, floor, viscosity, density);
    const { pan } = prepared.unit.build.sump;
    return (
      (area * (column - floor) + sinks(parked, panArea(pan), floor, Math.max(0, left), viscosity, density)) *
      density
    );
  }
  return sinks(parked, panArea(prepared.unit.build.sump.pan), over, seconds, viscosity, density) * density;
}

/** How high the pan stands over the leak [m, negative: below it] in one of the week's kinds of stands of a length [s], mean by how easily the fluid flows; the stand is read. */
function parkedOver(
  reading: Reading,
  { standKinds }: Prepared,
  leak: Leak,
  standKind: number,
  told: number,
): number {
  const { stand, rests } = reading;
  takeStand(reading, standKind, standKinds.length);
  const longer = rests * told - standKinds[standKind]!.walked;
  if (!(longer > 0)) return stand[0]! - leak.height;
  const fluidity = stand[3]!;
  const later = longer / stand[2]!;
  return (stand[0]! * fluidity + stand[4]! * later) / (fluidity + later) - leak.height;
}

/** The viscosity that a whole stand of a length [s] amounts to [Pa s]; it is read. */
function viscosityOf(reading: Reading, prepared: Prepared, standKind: number, told: number): number {
  const { walked, before } = prepared.standKinds[standKind]!;
  const stand = reading.rests * told;
  const cold = reading.stand[2]!;
  const fluidity = reading.stand[3]!;
  const whole =
    stand < walked
      ? begins(reading, prepared, before, stand, walked, cold, fluidity)
      : fluidity + (stand - walked) / cold;
  return stand / Math.max(stand / cold, whole);
}

/** Whether anything can leak in one of the week's kinds of stands of a length [s]: whatever the opening. Air and level are taken. */
export const leaksParked = (
  reading: Reading,
  prepared: Prepared,
  leak: Leak,
  standKind: number,
  told: number,
): boolean => hasColumn(leak) || parkedOver(reading, prepared, leak, standKind, told) > 0;

/**
 * ∫dt/µ [1/Pa] over so long a beginning of a stand that was walked for longer: what it is more than in the cold fades from the
 * viscosity at the end of the trip before it, and adds up to what the whole stand has more.
 */
function begins(
  reading: Reading,
  prepared: Prepared,
  before: number,
  stand: number,
  walked: number,
  cold: number,
  fluidity: number,
): number {
  const { firstPiece, kinds } = prepared;
  const last = firstPiece[before + 1]! - 1;
  const at = last - ((last - firstPiece[before]!) % panPieces);
  const hot = mixed(reading, reading.tables.panViscosity, at, firstPiece[kinds.length]!);
  const more = fluidity - walked / cold;
  const fades = more / (1 / hot - 1 / cold);
  const share = more > 0 && fades > 0 ? Math.expm1(-stand / fades) / Math.expm1(-walked / fades) : 0;
  return stand / cold + more * share;
}

/** Mass [kg] that the stands of a week lose. */
export function weekStanding(reading: Reading, prepared: Prepared, leak: Leak): number {
  const { standKinds } = prepared;
  if (!hasColumn(leak) && !reachesPan(reading, prepared, leak)) return 0;
  let sum = 0;
  for (let i = 0; i < standKinds.length; i++) {
    const { stand, times } = standKinds[i]!;
    sum += times * standLoses(reading, prepared, leak, i, stand);
  }
  return sum;
}

function reachesPan(reading: Reading, { standKinds }: Prepared, leak: Leak): boolean {
  for (let s = 0; s < standKinds.length; s++) {
    takeStand(reading, s, standKinds.length);
    if (reading.stand[0]! > leak.height) return true;
  }
  return false;
}
