// Reading the tables of a prepared week: between two levels, among up to three climates, at one shape of opening.

import { closedLeak, type LeakNow } from "../physics/leaking.ts";
import { levelStep, type Climate } from "./prepared.ts";

/** Where the tables are read: between two levels, among up to three climates, at one opening. Written in place. */
export interface Reading {
  readonly opening: LeakNow;
  /** Opening in a parked line: without bending and pressure. */
  readonly parked: LeakNow;
  /** The first of up to three climates, how many they are, and their weights. */
  climate: number;
  climates: number;
  readonly airs: Float64Array;
  /** Place in the circuit, as `circuitPlaces` counts; -1: the pan. */
  place: number;
  level: number;
  levelShare: number;
  /** First of four shapes, their weights, and what turns the table's value into mass. */
  shape: number;
  readonly weights: Float64Array;
  factor: number;
  /** Viscosity of the aged fluid over the new one's. */
  thinned: number;
}

export const newReading = (): Reading => ({
  opening: closedLeak(),
  parked: closedLeak(),
  climate: 0,
  climates: 0,
  airs: new Float64Array(3),
  place: 0,
  level: 0,
  levelShare: 0,
  shape: 0,
  weights: new Float64Array(4),
  factor: 0,
  thinned: 1,
});

/** Weighs the climates for air of a temperature [K]: the parabola through the three around it, or what there is. */
export function takeAir(reading: Reading, climates: readonly Climate[], air: number): void {
  const { airs } = reading;
  const count = Math.min(3, climates.length);
  let first = 0;
  while (first + count < climates.length && climates[first]!.air + climates[first + count]!.air < 2 * air)
    first++;
  reading.climate = first;
  reading.climates = count;
  for (let i = 0; i < count; i++) {
    const here = climates[first + i]!.air;
    let weight = 1;
    for (let j = 0; j < count; j++) {
      const other = climates[first + j]!.air;
      if (j !== i) weight *= (air - other) / (here - other);
    }
    airs[i] = weight;
  }
}

/** Goes to the loss [kg lacking] between two levels; the air is taken. */
export function takeLevel(reading: Reading, climates: readonly Climate[], lacking: number): void {
  let levels = Infinity;
  for (let i = 0; i < reading.climates; i++) levels = Math.min(levels, climates[reading.climate + i]!.levels);
  const at = Math.max(0, Math.min(lacking / levelStep, levels - 1));
  reading.level = Math.min(Math.floor(at), Math.max(0, levels - 2));
  reading.levelShare = at - reading.level;
}

/** A table's value at the reading, between levels and climates; `at` is the place within a level and `width` a level's width. */
export function mixed(
  reading: Reading,
  climates: readonly Climate[],
  table: (climate: Climate, place: number) => Float64Array,
  at: number,
  width: number,
): number {
  const { airs, level, levelShare } = reading;
  let sum = 0;
  const row = level * width + at;
  for (let i = 0; i < reading.climates; i++) {
    const values = table(climates[reading.climate + i]!, reading.place);
    const low = values[row]!;
    sum += airs[i]! * (low + levelShare * ((values[row + width] ?? low) - low));
  }
  return sum;
}

/** The same with the four shapes weighed. */
export function shaped(
  reading: Reading,
  climates: readonly Climate[],
  table: (climate: Climate, place: number) => Float64Array,
  at: number,
  width: number,
): number {
  const { airs, level, levelShare, shape, weights } = reading;
  let sum = 0;
  const row = level * width + at + shape;
  for (let i = 0; i < reading.climates; i++) {
    const values = table(climates[reading.climate + i]!, reading.place);
    let [low, high] = [0, 0];
    for (let s = 0; s < 4; s++) {
      low += weights[s]! * values[row + s]!;
      high += weights[s]! * (values[row + width + s] ?? 0);
    }
    sum += airs[i]! * (low + levelShare * (high - low));
  }
  return reading.factor * sum;
}
