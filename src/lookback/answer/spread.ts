// How an answer spreads: its middle, its intervals, and the share of it on either side of a value.

import { finite, fraction, impossible } from "../../errors.ts";

/** Values with weights that add up to 1, in rising order: read often, sorted once. */
export interface Sorted {
  readonly values: Float64Array;
  /** Share of the weight below the middle of each value's own. */
  readonly below: Float64Array;
}

export function sorted(values: ArrayLike<number>, weights?: ArrayLike<number>): Sorted {
  if (values.length === 0) impossible("values", 0, "at least one value");
  const order = Uint32Array.from({ length: values.length }, (_, i) => i).sort(
    (a, b) => values[a]! - values[b]!,
  );
  const below = new Float64Array(order.length);
  let sum = 0;
  for (let i = 0; i < order.length; i++) {
    if (Number.isNaN(values[order[i]!]!)) impossible("values", NaN, "numbers");
    const weight = weights === undefined ? 1 / order.length : weights[order[i]!]!;
    if (!(weight >= 0)) impossible("weights", weight, "0 or more");
    below[i] = sum + 0.5 * weight;
    sum += weight;
  }
  return { values: Float64Array.from(order, (i) => values[i]!), below };
}

/** The value under which a share p of the answer lies, from 0 to 1; between two values on a straight line. */
export function quantile({ values, below }: Sorted, p: number): number {
  fraction("p", p);
  const last = values.length - 1;
  let [low, high] = [0, last];
  if (p <= below[0]!) return values[0]!;
  if (p >= below[last]!) return values[last]!;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (below[middle]! <= p) low = middle;
    else high = middle;
  }
  const width = below[high]! - below[low]!;
  const share = width > 0 ? (p - below[low]!) / width : 1;
  // Infinity is a value like another: what has not happened.
  if (values[low] === values[high] || share === 0) return values[low]!;
  return values[low]! + (values[high]! - values[low]!) * share;
}

/** Middle, and the central half and nine tenths of an answer. */
export interface Spread {
  readonly middle: number;
  readonly half: readonly [number, number];
  readonly nineTenths: readonly [number, number];
}

export function spreadOf(answer: Sorted): Spread {
  const at = (p: number) => quantile(answer, p);
  return { middle: at(0.5), half: [at(0.25), at(0.75)], nineTenths: [at(0.05), at(0.95)] };
}

/** Mean and variance of weighted values. */
export function moments(
  values: ArrayLike<number>,
  weights: ArrayLike<number>,
): { mean: number; variance: number } {
  let mean = 0;
  for (let i = 0; i < values.length; i++) if (weights[i]! > 0) mean += weights[i]! * values[i]!;
  let variance = 0;
  for (let i = 0; i < values.length; i++)
    if (weights[i]! > 0) variance += weights[i]! * (values[i]! - mean) * (values[i]! - mean);
  if (Number.isNaN(variance)) impossible("values or weights", variance, "finite numbers");
  return { mean, variance };
}

/**
 * Dots that stand for an answer, each as likely as any other: the quantiles at (i - ½)/n. A look at them is a count of cases.
 * Source: Kay, Kola, Hullman and Munson, When (ish) is my bus?, 2016 (recalled).
 */
export function dots(answer: Sorted, count: number): number[] {
  if (!(Number.isInteger(count) && count >= 0 && count <= MOST_DOTS))
    impossible("count", count, `a whole number, 0 to ${MOST_DOTS}`);
  return Array.from({ length: count }, (_, i) => quantile(answer, (i + 0.5) / count));
}

/** More dots than anybody counts. */
const MOST_DOTS = 1e6;

/**
 * How badly a central interval that should hold a share of the truths did against one truth: its width, and 2/(1 - share) for every unit by which it
 * misses. Less is better. Source: Gneiting and Raftery, Strictly proper scoring rules, 2007 (recalled).
 */
export function intervalScore(low: number, high: number, truth: number, share: number): number {
  if (!(share >= 0 && share < 1)) impossible("share", share, "0 to less than 1");
  finite("low", low);
  finite("high", high);
  finite("truth", truth);
  const missed = Math.max(0, low - truth) + Math.max(0, truth - high);
  return high - low + (2 / (1 - share)) * missed;
}
