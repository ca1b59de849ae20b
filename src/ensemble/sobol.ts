// Sobol indices: which share of the variance an input brings alone, and with all that it does together with others.

import { impossible } from "../errors.ts";
import { quantiles } from "./quantiles.ts";
import { randomBits } from "../chance/random.ts";
import { scrambledHalton } from "./sequence.ts";

export interface SobolIndex {
  /** Share of the variance that goes when the input alone becomes known. */
  readonly first: number;
  /** Share that stays when all others become known. */
  readonly total: number;
  /** Where the truth lies in nine of ten designs; see `sobolIndices`. */
  readonly firstInterval: readonly [number, number];
  readonly totalInterval: readonly [number, number];
}

/** Points of a pick-freeze design: rows of A, rows of B, and for each input rows of A with that input taken from B. */
export interface PickFreeze {
  readonly a: readonly Float64Array[];
  readonly b: readonly Float64Array[];
  readonly ab: readonly (readonly Float64Array[])[];
}

/**
 * Scrambled sequences that a design is woven of, row by row in turn: each fills the box evenly and knows nothing of the others,
 * so how much they differ tells how far all of them may be off. Rows of one sequence alone do not tell: they scatter less than
 * rows drawn at random, and drawing again from them as if they were gave intervals 1.3 to 7 times too wide.
 */
const SEQUENCES = 8;

/**
 * The design of n rows for d inputs on [0, 1), n(d + 2) points in all; A and B are the halves of eight scrambled Halton
 * sequences in turn. The rows of a shorter design are the first of a longer one.
 */
export function pickFreeze(n: number, d: number, seed: number): PickFreeze {
  if (!Number.isInteger(n) || n < 2) impossible("rows", n, "a whole number, 2 or more");
  const sequences = Array.from({ length: Math.min(n, SEQUENCES) }, (_, s) =>
    scrambledHalton(2 * d, SEQUENCES * seed + s),
  );
  const rows = Array.from({ length: n }, (_, j) => {
    const both = new Float64Array(2 * d);
    sequences[j % SEQUENCES]!(Math.floor(j / SEQUENCES), both);
    return both;
  });
  const a = rows.map((both) => both.slice(0, d));
  const b = rows.map((both) => both.slice(d));
  const ab = Array.from({ length: d }, (_, i) => a.map((row, j) => row.with(i, b[j]![i]!)));
  return { a, b, ab };
}

const RESAMPLES = 500;
const TAIL = 0.05;
/** What leaves a tail of a twentieth: of the normal law, and of Student's with 1, 2 … degrees of freedom (Student 1908; any table). */
const NORMAL = 1.6449;
const STUDENT = [6.3138, 2.92, 2.3534, 2.1318, 2.015, 1.9432, 1.8946] as const;

/**
 * Indices from the answers at the points of a design, `ab` one array an input, all of the same length from 2 on: first order
 * after Saltelli et al. (Computer Physics Communications 181, 2010, table 2, row b), total after Jansen (Computer Physics
 * Communications 117, 1999; row f there). Estimates: they scatter about the truth and may lie below 0. All 0 where the
 * answer never varies. `rows` says which rows of the design the answers are of, where some were left out.
 *
 * Intervals: whole sequences of the design are drawn again from its sequences, and the middle nine tenths of what comes of that
 * are widened as Student's law asks for so few (t/z √(k/(k − 1)), 1.23 for eight). On the functions of Ishigami and of Sobol
 * 84 to 92 of 100 designs hold the truth, index by index, at 64 rows and at 256; at 32 rows 80 to 95, fewest for totals. Rows drawn at random may
 * be given too. Throws on an answer that is not finite.
 */
export function sobolIndices(
  a: Float64Array,
  b: Float64Array,
  ab: readonly Float64Array[],
  seed = 1,
  rows: readonly number[] = Array.from(a, (_, j) => j),
): readonly SobolIndex[] {
  const n = a.length;
  if (n < 2) impossible("rows", n, "2 or more");
  for (const column of [a, b, ...ab]) {
    if (column.length !== n) impossible("rows", column.length, `as many as the first has, ${n}`);
    for (const value of column) if (!Number.isFinite(value)) impossible("answer", value, "a finite number");
  }
  // A mean taken off changes no index and keeps the sums from cancelling.
  const mean = a.reduce((sum, value, j) => sum + value + b[j]!, 0) / (2 * n);
  const present = [...new Set(rows.slice(0, n).map((row) => row % SEQUENCES))];
  const k = present.length;
  const wider = k < 2 ? 0 : (STUDENT[k - 2]! / NORMAL) * Math.sqrt(k / (k - 1));
  const drawn = Array.from({ length: RESAMPLES }, (_, r) => {
    const random = randomBits(seed, r, n);
    return present.map(() => Math.floor(random() * k));
  });
  const interval = (value: number, again: readonly number[]): readonly [number, number] => {
    const [low, high] = quantiles(again, [TAIL, 1 - TAIL]);
    // One sequence alone tells nothing of how much another would differ.
    if (k < 2) return [-Infinity, Infinity];
    const end = (at: number) => value + wider * (at - value);
    return [end(low!), end(high!)];
  };
  return ab.map((column) => {
    const sums = present.map((sequence) =>
      sumsOf(a, b, column, mean, (j) => rows[j]! % SEQUENCES === sequence),
    );
    const { first, total } = estimate(sums);
    const again = drawn.map((which) => estimate(which.map((s) => sums[s]!)));
    return {
      first,
      total,
      firstInterval: interval(
        first,
        again.map((one) => one.first),
      ),
      totalInterval: interval(
        total,
        again.map((one) => one.total),
      ),
    };
  });
}

/** What the indices need of some rows: their number, and sums of answers, squares, steps, answers times steps, squared steps. */
type Sums = readonly [number, number, number, number, number, number];

function sumsOf(
  a: Float64Array,
  b: Float64Array,
  ab: Float64Array,
  mean: number,
  belongs: (row: number) => boolean,
): Sums {
  const sums: [number, number, number, number, number, number] = [0, 0, 0, 0, 0, 0];
  for (let j = 0; j < a.length; j++) {
    if (!belongs(j)) continue;
    const [x, y, step] = [a[j]! - mean, b[j]! - mean, ab[j]! - a[j]!];
    sums[0] += 1;
    sums[1] += x + y;
    sums[2] += x * x + y * y;
    sums[3] += step;
    sums[4] += y * step;
    sums[5] += step * step;
  }
  return sums;
}

function estimate(parts: readonly Sums[]): { first: number; total: number } {
  const sum = (of: number) => parts.reduce((before, part) => before + part[of]!, 0);
  const mean = sum(1) / (2 * sum(0));
  const variance = sum(2) - 2 * sum(0) * mean * mean;
  if (!(variance > 0)) return { first: 0, total: 0 };
  return { first: (2 * (sum(4) - mean * sum(3))) / variance, total: sum(5) / variance };
}
