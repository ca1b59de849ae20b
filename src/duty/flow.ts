// What a leak loses in a trip, a week or a stand, read from the tables of a prepared week.

import type { Leak } from "../physics/build.ts";
import { gravity } from "../physics/fluid/surroundings.ts";
import { drainTime } from "../physics/leak/drain-down.ts";
import { leakFlow } from "../physics/leak/flow.ts";
import { closedLeak, openingAt, type LeakNow } from "../physics/leaking.ts";
import { columnArea, panArea, sinks } from "../physics/standing.ts";
import { middleShape } from "./levels.ts";
import { levelStep, panPieces, shapes, type Climate, type Prepared } from "./prepared.ts";

/** Where the tables are read: between two levels, among up to three climates, at one opening. Written in place. */
export interface Reading {
  readonly opening: LeakNow;
  /** Opening in a parked line: without bending and pressure. */
  readonly parked: LeakNow;
  /** Weights of the climates. */
  readonly airs: Float64Array;
  level: number;
  levelShare: number;
  /** First of four shapes, their weights, and what turns the table's value into mass. */
  shape: number;
  readonly weights: Float64Array;
  factor: number;
  /** Viscosity of the aged fluid over the new one's. */
  thinned: number;
}

export const newReading = (climates: number): Reading => ({
  opening: closedLeak(),
  parked: closedLeak(),
  airs: new Float64Array(climates),
  level: 0,
  levelShare: 0,
  shape: 0,
  weights: new Float64Array(4),
  factor: 0,
  thinned: 1,
});

/** Weighs the climates for air of a temperature [K]: the parabola through three, or the only one. */
export function takeAir(reading: Reading, climates: readonly Climate[], air: number): void {
  const { airs } = reading;
  for (let i = 0; i < climates.length; i++) {
    let weight = 1;
    for (let j = 0; j < climates.length; j++)
      if (j !== i) weight *= (air - climates[j]!.air) / (climates[i]!.air - climates[j]!.air);
    airs[i] = weight;
  }
}

/** Goes to the loss [kg lacking] between two levels. */
export function takeLevel(reading: Reading, climates: readonly Climate[], lacking: number): void {
  let levels = Infinity;
  for (let i = 0; i < climates.length; i++) levels = Math.min(levels, climates[i]!.levels);
  const at = Math.max(0, Math.min(lacking / levelStep, levels - 1));
  reading.level = Math.min(Math.floor(at), Math.max(0, levels - 2));
  reading.levelShare = at - reading.level;
}

/** Takes the leak's opening after so many running seconds [s], in fluid of an age; air and level are taken. */
export function takeOpening(
  reading: Reading,
  { unit, climates }: Prepared,
  leak: Leak,
  age: number,
  fluidAge: number,
): void {
  const { opening, parked, weights } = reading;
  const supply = leak.place === "supply-line";
  const pressure =
    leak.place === "pan" ? 0 : mixed(reading, climates, supply ? supplyPressures : returnPressures, 0, 1);
  openingAt(opening, leak.opening, age, pressure, true);
  openingAt(parked, leak.opening, age, 0, false);
  reading.thinned = 1 - unit.fluid.shearLoss * Math.min(1, fluidAge);
  if (leak.place === "pan") return;
  const viscous = opening.viscous * reading.thinned;
  const shape = opening.inertial / (viscous * viscous);
  const at = Math.max(0, Math.min(shapes.length - 1, 3 * (Math.log10(shape) + 18)));
  const first = Math.max(0, Math.min(shapes.length - 4, Math.floor(at) - 1));
  const x = at - first;
  weights[0] = -((x - 1) * (x - 2) * (x - 3)) / 6;
  weights[1] = (x * (x - 2) * (x - 3)) / 2;
  weights[2] = -(x * (x - 1) * (x - 3)) / 2;
  weights[3] = (x * (x - 1) * (x - 2)) / 6;
  reading.shape = first;
  reading.factor = viscous < 1e200 ? 1 / (viscous * Math.sqrt(1 + shape / middleShape)) : 0;
}

const supplyPressures = (climate: Climate) => climate.supplyPressure;
const returnPressures = (climate: Climate) => climate.returnPressure;

/** A table's value at the reading, between levels and climates; `at` is the place within a level and `width` a level's width. */
function mixed(
  reading: Reading,
  climates: readonly Climate[],
  table: (climate: Climate) => Float64Array,
  at: number,
  width: number,
): number {
  const { airs, level, levelShare } = reading;
  let sum = 0;
  for (let i = 0; i < climates.length; i++) {
    const row = level * width + at;
    const values = table(climates[i]!);
    const low = values[row]!;
    sum += airs[i]! * (low + levelShare * ((values[row + width] ?? low) - low));
  }
  return sum;
}

/** The same with the four shapes weighed. */
function shaped(
  reading: Reading,
  climates: readonly Climate[],
  table: (climate: Climate) => Float64Array,
  at: number,
  width: number,
): number {
  const { airs, level, levelShare, shape, weights } = reading;
  let sum = 0;
  for (let i = 0; i < climates.length; i++) {
    const values = table(climates[i]!);
    const row = level * width + at + shape;
    let [low, high] = [0, 0];
    for (let s = 0; s < 4; s++) {
      low += weights[s]! * values[row + s]!;
      high += weights[s]! * (values[row + width + s] ?? 0);
    }
    sum += airs[i]! * (low + levelShare * (high - low));
  }
  return reading.factor * sum;
}

const supplyWeek = (climate: Climate) => climate.supplyWeek;
const returnWeek = (climate: Climate) => climate.returnWeek;
const supplyLine = (climate: Climate) => climate.supplyLine;
const returnLine = (climate: Climate) => climate.returnLine;

/** Mass [kg] that a running week loses through the opening that was taken. */
export function weekRunning(reading: Reading, prepared: Prepared, leak: Leak): number {
  const { climates, times, firstPiece } = prepared;
  if (leak.place !== "pan")
    return shaped(
      reading,
      climates,
      leak.place === "supply-line" ? supplyWeek : returnWeek,
      0,
      shapes.length,
    );
  let sum = 0;
  for (let k = 0; k < times.length; k++)
    sum += times[k]! * tripRunning(reading, prepared, leak, k, firstPiece[k + 1]! - firstPiece[k]!);
  return sum;
}

/** Mass [kg] that a trip of a kind loses from its start to the end of so many pieces. */
export function tripRunning(
  reading: Reading,
  prepared: Prepared,
  leak: Leak,
  kind: number,
  pieces: number,
): number {
  if (pieces <= 0) return 0;
  const { climates, firstPiece, kinds } = prepared;
  const first = firstPiece[kind]!;
  const all = firstPiece[kinds.length]!;
  if (leak.place !== "pan")
    return shaped(
      reading,
      climates,
      leak.place === "supply-line" ? supplyLine : returnLine,
      (first + pieces - 1) * shapes.length,
      all * shapes.length,
    );
  const { pieceTimes } = kinds[kind]!;
  let sum = 0;
  for (let p = 0; p < pieces; p += panPieces) {
    const depth = mixed(reading, climates, panDepth, first + p, all);
    const density = mixed(reading, climates, panDensity, first + p, all);
    const viscosity = mixed(reading, climates, panViscosity, first + p, all) * reading.thinned;
    const head = density * gravity * (depth - leak.height);
    const seconds = pieceTimes[Math.min(pieces, p + panPieces)]! - pieceTimes[p]!;
    if (head > 0) sum += leakFlow(reading.opening, head, viscosity, density) * density * seconds;
  }
  return sum;
}

const panDepth = (climate: Climate) => climate.panDepth;
const panDensity = (climate: Climate) => climate.panDensity;
const panViscosity = (climate: Climate) => climate.panViscosity;
const fluidity = (climate: Climate) => climate.stands.fluidity;
const coldViscosity = (climate: Climate) => climate.stands.viscosity;
const standDensity = (climate: Climate) => climate.stands.density;
const standDepth = (climate: Climate) => climate.stands.depth;
const ageing = (climate: Climate) => climate.ageing;

/** Share of the fluid's life that a week takes. */
export const weekAgeing = (reading: Reading, { climates }: Prepared): number =>
  mixed(reading, climates, ageing, 0, 1);

/**
 * Mass [kg] lost in the last `seconds` of a stand before a trip of a kind: first from the line's column above the hole, then from
 * what stands in the pan over it, at the viscosity that the whole stand amounts to.
 */
export function standLoses(
  reading: Reading,
  prepared: Prepared,
  leak: Leak,
  kind: number,
  stand: number,
  seconds: number,
): number {
  if (!(seconds > 0)) return 0;
  const { climates, kinds, unit } = prepared;
  const wide = kinds.length;
  const column = leak.place === "pan" || !(leak.lineAbove > 0) ? 0 : leak.columnHeight;
  const over = mixed(reading, climates, standDepth, kind, wide) - leak.height;
  if (!(column > 0 || over > 0)) return 0;
  const density = mixed(reading, climates, standDensity, kind, wide);
  const cold = mixed(reading, climates, coldViscosity, kind, wide);
  const longer = stand - kinds[kind]!.stand;
  const flowed = Math.max(seconds / cold, mixed(reading, climates, fluidity, kind, wide) + longer / cold);
  // A leak that opens in the middle of a stand opens in the cold.
  const viscosity = (seconds < stand ? cold : stand / flowed) * reading.thinned;
  const { pan } = unit.build.sump;
  const { parked } = reading;
  if (column > over) {
    const area = columnArea(leak);
    const lost = sinks(parked, area, column, seconds, viscosity, density);
    const floor = Math.max(0, over);
    if (column - lost / area >= floor || floor === 0) return lost * density;
    const left = seconds - drainTime(parked, area, column, floor, viscosity, density);
    return (
      (area * (column - floor) + sinks(parked, panArea(pan), floor, Math.max(0, left), viscosity, density)) *
      density
    );
  }
  return sinks(parked, panArea(pan), over, seconds, viscosity, density) * density;
}

/** Mass [kg] that the stands of a week lose. */
export function weekStanding(reading: Reading, prepared: Prepared, leak: Leak): number {
  const { standKinds } = prepared;
  if ((leak.place === "pan" || !(leak.lineAbove > 0)) && !reachesPan(reading, prepared, leak)) return 0;
  let sum = 0;
  for (let i = 0; i < standKinds.length; i++) {
    const { kind, stand, times } = standKinds[i]!;
    sum += times * standLoses(reading, prepared, leak, kind, stand, stand);
  }
  return sum;
}

function reachesPan(reading: Reading, { climates, kinds }: Prepared, leak: Leak): boolean {
  for (let k = 0; k < kinds.length; k++)
    if (mixed(reading, climates, standDepth, k, kinds.length) > leak.height) return true;
  return false;
}
