// Reading the tables of a prepared week: between two levels, among up to three airs, at one shape of opening.

import { closedLeak, type LeakNow } from "../physics/leaking.ts";
import { levelStep, shapes, type Prepared } from "./prepared.ts";
import { standParts, tablesOf, type Side, type Tables } from "./tables.ts";

/** Where the tables are read: between two levels, among up to three airs, at one opening, in one stand. Written in place. */
export interface Reading {
  readonly tables: Tables;
  readonly opening: LeakNow;
  /** Opening in a parked line: without bending and pressure. */
  readonly parked: LeakNow;
  /** The air that was taken [K]: the first of up to three around it, how many they are, and their weights. */
  air: number;
  first: number;
  count: number;
  readonly weights: Float64Array;
  /** Levels that all of them have. */
  rows: number;
  /** Place of the leak in the circuit, as `circuitPlaces` counts, -1: the pan; and whether its opening grows. */
  place: number;
  grows: boolean;
  level: number;
  levelShare: number;
  /** Weights of the airs at the lower and at the upper level. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** First of four shapes, -1 while not looked up; their weights, and what turns the table's value into mass. */
  shape: number;
  readonly shapeWeights: Float64Array;
  factor: number;
  /** How many openings have been taken; through which of them each piece of a trip was read last, and what it lost from the trip's start on [kg]. */
  opened: number;
  readonly readAt: Float64Array;
  readonly readLoss: Float64Array;
  /** Viscosity of the aged fluid over the new one's. */
  thinned: number;
  /** How many times as long the vehicle stands as its week says. */
  rests: number;
  /** The stand that was taken: as `standParts` counts, which kind it is, how long [s of the week's], and how high the pan stands over the leak in it [m, negative: below]. */
  readonly stand: Float64Array;
  standKind: number;
  standLasts: number;
  over: number;
}

export const newReading = (prepared: Prepared): Reading => ({
  tables: tablesOf(prepared),
  opening: closedLeak(),
  parked: closedLeak(),
  air: Number.NaN,
  first: 0,
  count: 0,
  weights: new Float64Array(3),
  rows: 0,
  place: 0,
  grows: true,
  level: 0,
  levelShare: 0,
  low: new Float64Array(3),
  high: new Float64Array(3),
  shape: -1,
  shapeWeights: new Float64Array(4),
  factor: 0,
  opened: 0,
  readAt: new Float64Array(prepared.firstPiece.at(-1)!),
  readLoss: new Float64Array(prepared.firstPiece.at(-1)!),
  thinned: 1,
  rests: 1,
  stand: new Float64Array(standParts),
  standKind: 0,
  standLasts: 0,
  over: 0,
});

/** Air beyond those prepared counts as theirs from this far on [K]: a parabola that is followed further leads anywhere. */
export const beyondAirs = 3;

/** Weighs the airs for one of a temperature [K]: the parabola through the three around it, or what there is. */
export function takeAir(reading: Reading, asked: number): void {
  if (reading.air === asked) return;
  reading.air = asked;
  const { weights } = reading;
  const { airs, levels } = reading.tables;
  const air = Math.max(airs[0]! - beyondAirs, Math.min(airs[airs.length - 1]! + beyondAirs, asked));
  const count = Math.min(3, airs.length);
  let first = 0;
  while (first + count < airs.length && airs[first]! + airs[first + count]! < 2 * air) first++;
  reading.first = first;
  reading.count = count;
  let rows = Infinity;
  for (let i = 0; i < count; i++) {
    rows = Math.min(rows, levels[first + i]!);
    const here = airs[first + i]!;
    let weight = 1;
    for (let j = 0; j < count; j++) {
      const other = airs[first + j]!;
      if (j !== i) weight *= (air - other) / (here - other);
    }
    weights[i] = weight;
  }
  reading.rows = rows;
}

/** Goes to the loss [kg lacking] between two levels; the air is taken. */
export function takeLevel(reading: Reading, lacking: number): void {
  const { weights, low, high, rows, count } = reading;
  const at = Math.max(0, Math.min(lacking / levelStep, rows - 1));
  const level = Math.min(Math.floor(at), Math.max(0, rows - 2));
  const share = at - level;
  reading.level = level;
  reading.levelShare = share;
  for (let i = 0; i < count; i++) {
    const weight = weights[i]!;
    low[i] = weight * (1 - share);
    high[i] = weight * share;
  }
}

/** Where the row of the lower level begins, and how far it is to the upper one; there is none above the last. */
const rowOf = ({ tables, level, first }: Reading, at: number, width: number): number =>
  (level * width + at) * tables.airs.length + first;
const up = ({ tables, levelShare }: Reading, width: number): number =>
  levelShare > 0 ? width * tables.airs.length : 0;

/** A table's value at the reading, between levels and airs; `at` is the place within a level and `width` a level's width. */
export function mixed(reading: Reading, table: Side, at: number, width: number): number {
  const { low, high, count } = reading;
  const row = rowOf(reading, at, width);
  const higher = row + up(reading, width);
  let sum = 0;
  for (let i = 0; i < count; i++) sum += low[i]! * table[row + i]! + high[i]! * table[higher + i]!;
  return sum;
}

/** The same of a table by shape, with the four shapes weighed and turned into mass [kg]; the opening is taken. */
export function shaped(reading: Reading, table: Side, at: number, width: number): number {
  const { low, high, count, shape, shapeWeights } = reading;
  const next = reading.tables.airs.length;
  const row = rowOf(reading, at * shapes.length + shape, width * shapes.length);
  const higher = row + up(reading, width * shapes.length);
  const a = shapeWeights[0]!;
  const b = shapeWeights[1]!;
  const c = shapeWeights[2]!;
  const d = shapeWeights[3]!;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const l = row + i;
    const h = higher + i;
    sum +=
      low[i]! * (a * table[l]! + b * table[l + next]! + c * table[l + 2 * next]! + d * table[l + 3 * next]!) +
      high[i]! * (a * table[h]! + b * table[h + next]! + c * table[h + 2 * next]! + d * table[h + 3 * next]!);
  }
  return reading.factor * sum;
}

/** Reads one of so many kinds of stands into `stand`. */
export function readStand(reading: Reading, standKind: number, standKinds: number): void {
  const { low, high, count, stand } = reading;
  const { stands } = reading.tables;
  const row = rowOf(reading, standKind, standKinds) * standParts;
  const higher = row + up(reading, standKinds) * standParts;
  let depth = 0;
  let density = 0;
  let viscosity = 0;
  let fluidity = 0;
  let rest = 0;
  for (let i = 0; i < count; i++) {
    const below = low[i]!;
    const above = high[i]!;
    const l = row + i * standParts;
    const h = higher + i * standParts;
    depth += below * stands[l]! + above * stands[h]!;
    density += below * stands[l + 1]! + above * stands[h + 1]!;
    viscosity += below * stands[l + 2]! + above * stands[h + 2]!;
    fluidity += below * stands[l + 3]! + above * stands[h + 3]!;
    rest += below * stands[l + 4]! + above * stands[h + 4]!;
  }
  stand[0] = depth;
  stand[1] = density;
  stand[2] = viscosity;
  stand[3] = fluidity;
  stand[4] = rest;
}
