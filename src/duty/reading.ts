// Reading the tables of a prepared week: between two levels, among up to three climates, at one shape of opening.

import { closedLeak, type LeakNow } from "../physics/leaking.ts";
import { levelStep, type Climate } from "./prepared.ts";

/** Where the tables are read: between two levels, among up to three climates, at one opening. Written in place. */
export interface Reading {
  readonly opening: LeakNow;
  /** Opening in a parked line: without bending and pressure. */
  readonly parked: LeakNow;
  /** Weights of the climates. */
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

export const newReading = (climates: number): Reading => ({
  opening: closedLeak(),
  parked: closedLeak(),
  airs: new Float64Array(climates),
  place: 0,
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
  for (let i = 0; i < climates.length; i++) {
    const row = level * width + at;
    const values = table(climates[i]!, reading.place);
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
  for (let i = 0; i < climates.length; i++) {
    const values = table(climates[i]!, reading.place);
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
