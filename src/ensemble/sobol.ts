// Sobol indices: which share of the variance an input brings alone, and with all that it does together with others.

import { impossible } from "../errors.ts";
import { quantiles } from "./quantiles.ts";
import { randomBits, scrambledHalton } from "./sequence.ts";

export interface SobolIndex {
  /** Share of the variance that goes when the input alone becomes known. */
  readonly first: number;
  /** Share that stays when all others become known. */
  readonly total: number;
  /** Their middle nine tenths when rows are drawn again from the rows. */
  readonly firstInterval: readonly [number, number];
  readonly totalInterval: readonly [number, number];
}

/** Points of a pick-freeze design: rows of A, rows of B, and for each input rows of A with that input taken from B. */
export interface PickFreeze {
  readonly a: readonly Float64Array[];
  readonly b: readonly Float64Array[];
  readonly ab: readonly (readonly Float64Array[])[];
}

/** The design of n rows for d inputs on [0, 1), n(d + 2) points in all; A and B are the halves of one scrambled Halton sequence. */
export function pickFreeze(n: number, d: number, seed: number): PickFreeze {
  if (!Number.isInteger(n) || n < 2) impossible("rows", n, "a whole number, 2 or more");
  const sequence = scrambledHalton(2 * d, seed);
  const rows = Array.from({ length: n }, (_, j) => {
    const both = new Float64Array(2 * d);
    sequence(j, both);
    return both;
  });
  const a = rows.map((both) => both.slice(0, d));
  const b = rows.map((both) => both.slice(d));
  const ab = Array.from({ length: d }, (_, i) => a.map((row, j) => row.with(i, b[j]![i]!)));
  return { a, b, ab };
}

const RESAMPLES = 500;

/**
 * Indices from the answers at the points of a design, `ab` one array an input, all of the same length from 2 on: first order
 * after Saltelli et al. (Computer Physics Communications 181, 2010, table 2, row b), total after Jansen (Computer Physics
 * Communications 117, 1999; row f there). Estimates: they scatter about the truth and may lie below 0. All 0 where the
 * answer never varies. Throws on an answer that is not finite.
 */
export function sobolIndices(
  a: Float64Array,
  b: Float64Array,
  ab: readonly Float64Array[],
  seed = 1,
): readonly SobolIndex[] {
  const n = a.length;
  if (n < 2) impossible("rows", n, "2 or more");
  for (const column of [a, b, ...ab]) {
    if (column.length !== n) impossible("rows", column.length, `as many as the first has, ${n}`);
    for (const value of column) if (!Number.isFinite(value)) impossible("answer", value, "a finite number");
  }
  const all = Uint32Array.from({ length: n }, (_, j) => j);
  const resamples = Array.from({ length: RESAMPLES }, (_, r) => {
    const random = randomBits(seed, r, n);
    return Uint32Array.from({ length: n }, () => Math.floor(random() * n));
  });
  const interval = (values: readonly number[]): readonly [number, number] => {
    const [low, high] = quantiles(values, [0.05, 0.95]);
    return [low!, high!];
  };
  return ab.map((column) => {
    const again = resamples.map((rows) => estimate(a, b, column, rows));
    return {
      ...estimate(a, b, column, all),
      firstInterval: interval(again.map(({ first }) => first)),
      totalInterval: interval(again.map(({ total }) => total)),
    };
  });
}

function estimate(
  a: Float64Array,
  b: Float64Array,
  ab: Float64Array,
  rows: Uint32Array,
): { first: number; total: number } {
  const n = rows.length;
  let sum = 0;
  for (const j of rows) sum += a[j]! + b[j]!;
  const mean = sum / (2 * n); // taken off, which changes no index and steadies the first one
  let [variance, alone, rest] = [0, 0, 0];
  for (const j of rows) {
    variance += (a[j]! - mean) ** 2 + (b[j]! - mean) ** 2;
    alone += (b[j]! - mean) * (ab[j]! - a[j]!);
    rest += (a[j]! - ab[j]!) ** 2;
  }
  if (variance === 0) return { first: 0, total: 0 };
  return { first: (2 * alone) / variance, total: rest / variance };
}
