// What a leak would lose, gathered while a trip is walked without one: pressure and viscosity at every place of the circuit, and the
// level in the pan. A vanishing leak changes nothing of them.

import type { Walk } from "../history/walk.ts";
import { fluidAgeingRate } from "../physics/fluid/ageing.ts";
import { overLid } from "../physics/sump/pan.ts";
import type { Kinds } from "./kinds.ts";
import { circuitPlaces, panPieces, shapes, type PlaceTables } from "./prepared.ts";

/** Scale of the shapes at which a seep turns into a jet [m²]: between the two the tables are smooth. */
export const middleShape = 1e-13;

const places = circuitPlaces.length;
const count = shapes.length;
const scales = shapes.map((shape) => Math.sqrt(1 + shape / middleShape));

/** Tables on their way, and what has gathered since the last tick and in this trip. */
export interface Tabling {
  readonly kinds: Kinds;
  readonly circuit: readonly PlaceTables[];
  readonly panDepth: Float64Array;
  readonly panViscosity: Float64Array;
  readonly panDensity: Float64Array;
  readonly ageing: Float64Array;
  level: number;
  kind: number;
  piece: number;
  seconds: number;
  liquid: number;
  /** By place: pressure and viscosity times seconds. */
  readonly pressure: Float64Array;
  readonly viscosity: Float64Array;
  groupSeconds: number;
  aged: number;
  /** By place and trip, and by place and level: a seep's flow, and that times its pressure. */
  readonly seeps: Float64Array;
  readonly seepsAt: Float64Array;
  readonly weekSeeps: Float64Array;
}

export function newTabling(kinds: Kinds, levels: number): Tabling {
  const all = kinds.firstPiece[kinds.kinds.length]!;
  const table = (width: number) => new Float64Array(levels * width);
  return {
    kinds,
    circuit: circuitPlaces.map(() => ({ trips: table(all * count), week: table(count), pressure: table(1) })),
    panDepth: table(all),
    panViscosity: table(all),
    panDensity: table(all),
    ageing: table(1),
    level: 0,
    kind: 0,
    piece: 0,
    seconds: 0,
    liquid: 0,
    pressure: new Float64Array(places),
    viscosity: new Float64Array(places),
    groupSeconds: 0,
    aged: 0,
    seeps: new Float64Array(places),
    seepsAt: new Float64Array(places),
    weekSeeps: table(places),
  };
}

const allPieces = ({ kinds }: Tabling): number => kinds.firstPiece[kinds.kinds.length]!;
const cellOf = (t: Tabling, piece: number): number =>
  t.level * allPieces(t) + t.kinds.firstPiece[t.kind]! + piece;

export function beginTrip(tabling: Tabling, level: number, kind: number): void {
  tabling.level = level;
  tabling.kind = kind;
  tabling.piece = 0;
  tabling.groupSeconds = 0;
  tabling.aged = 0;
  tabling.seeps.fill(0);
  tabling.seepsAt.fill(0);
}

/** After a step of the walk. */
export function gatherStep(tabling: Tabling, walk: Walk, seconds: number): void {
  const { line, lineInput, viscosity, density, panDepth, panVolume, temperature } = walk.now;
  const { cooler } = walk.unit.build;
  const { pressure, viscosity: sums } = tabling;
  const path = lineInput.pathViscosity;
  // Without a leak the circuit gives the pressure behind the cooler as the leak's; what stands before the cooler is what that takes more.
  const behind = line.leakPressure;
  pressure[0]! += (behind + (cooler.cooler + cooler.returnLine) * path * line.cooler) * seconds;
  pressure[1]! += behind * seconds;
  pressure[2]! += line.nodePressure * seconds;
  pressure[3]! += behind * seconds;
  for (let i = 0; i < places; i++) sums[i]! += (i === 1 ? path : viscosity) * seconds;
  tabling.seconds += seconds;
  tabling.liquid += (1 - line.lineGas) * seconds;
  const cell = cellOf(tabling, tabling.piece - (tabling.piece % panPieces));
  tabling.panDepth[cell]! += (panDepth + overLid(walk.unit.build.sump.pan, panVolume)) * seconds;
  tabling.panViscosity[cell]! += viscosity * seconds;
  tabling.panDensity[cell]! += density * seconds;
  tabling.groupSeconds += seconds;
  tabling.aged += fluidAgeingRate(temperature) * seconds;
}

/** After a tick: what has gathered goes into the tables. */
export function closeTick(tabling: Tabling, density: number): void {
  const { seconds, circuit, pressure, viscosity, seeps, seepsAt } = tabling;
  if (!(seconds > 0)) return;
  const row = cellOf(tabling, tabling.piece) * count;
  const liquid = tabling.liquid / seconds;
  for (let i = 0; i < places; i++) {
    const p = pressure[i]! / seconds;
    const mu = viscosity[i]! / seconds;
    loses(circuit[i]!.trips, row, p, mu, density, liquid, seconds);
    const seep = (Math.max(0, p) / mu) * seconds;
    seeps[i]! += seep;
    seepsAt[i]! += seep * p;
    pressure[i] = viscosity[i] = 0;
  }
  tabling.seconds = tabling.liquid = 0;
}

/** Adds what openings of unit `viscous` and every shape lose in a time, scaled as the tables are. */
function loses(
  out: Float64Array,
  row: number,
  pressure: number,
  viscosity: number,
  density: number,
  liquid: number,
  seconds: number,
): void {
  if (!(pressure > 0)) return;
  const seep = (density * liquid * seconds * 2 * pressure) / viscosity;
  const x = (4 * density * Math.max(liquid, 1e-3) * pressure) / (viscosity * viscosity);
  for (let s = 0; s < count; s++) out[row + s]! += (seep * scales[s]!) / (1 + Math.sqrt(1 + x * shapes[s]!));
}

/** Goes on to the next piece; the tables of the circuit run on from piece to piece. */
export function nextPiece(tabling: Tabling, density: number): void {
  closeTick(tabling, density);
  const row = cellOf(tabling, tabling.piece) * count;
  for (const { trips } of tabling.circuit) trips.copyWithin(row + count, row, row + count);
  tabling.piece++;
  if (tabling.piece % panPieces === 0) closeGroup(tabling);
}

function closeGroup(tabling: Tabling): void {
  const { groupSeconds, piece } = tabling;
  if (!(groupSeconds > 0)) return;
  const cell = cellOf(tabling, piece - panPieces);
  for (const values of panTables(tabling)) values[cell]! /= groupSeconds;
  tabling.groupSeconds = 0;
}

const panTables = ({ panDepth, panViscosity, panDensity }: Tabling) => [panDepth, panViscosity, panDensity];

/** Ends a trip that came so far; what it no longer showed is as at the level before. A week has `times` such trips. */
export function endTrip(tabling: Tabling, density: number, times: number): void {
  closeTick(tabling, density);
  const { circuit, level, piece, kinds, kind, seeps, seepsAt, weekSeeps } = tabling;
  if (tabling.groupSeconds > 0) {
    const cell = cellOf(tabling, piece - (piece % panPieces));
    for (const values of panTables(tabling)) values[cell]! /= tabling.groupSeconds;
    tabling.groupSeconds = 0;
  }
  const pieces = kinds.firstPiece[kind + 1]! - kinds.firstPiece[kind]!;
  const back = allPieces(tabling);
  for (let p = piece + 1; p < pieces; p++) {
    const [cell, here] = [cellOf(tabling, p), cellOf(tabling, piece)];
    for (const { trips } of circuit)
      for (let s = 0; s < count; s++) {
        const more = level > 0 ? trips[(cell - back) * count + s]! - trips[(here - back) * count + s]! : 0;
        trips[cell * count + s] = trips[here * count + s]! + more;
      }
    if (p % panPieces === 0 && level > 0)
      for (const values of panTables(tabling)) values[cell] = values[cell - back]!;
  }
  const end = cellOf(tabling, pieces - 1) * count;
  circuit.forEach(({ trips, week, pressure }, i) => {
    for (let s = 0; s < count; s++) week[level * count + s]! += times * trips[end + s]!;
    const before = weekSeeps[level * places + i]!;
    const now = before + times * seeps[i]!;
    if (now > 0) pressure[level] = (pressure[level]! * before + times * seepsAt[i]!) / now;
    weekSeeps[level * places + i] = now;
  });
  tabling.ageing[level]! += times * tabling.aged;
}
