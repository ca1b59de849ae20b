// What another look would be worth: how much spread it would leave, on average over what it may show.

import { impossible, notNegative } from "../../errors.ts";
import { moments } from "./spread.ts";

/** A look that measures a foretold number with a normal error. */
export interface Measuring {
  /** What each draw foretells that the look would show. */
  readonly foretold: ArrayLike<number>;
  /** Standard deviation of the error. */
  readonly error: number;
}

/** Readings over which the mean is taken: the readings' grid has about so many, and no more than ten times as many. */
const READINGS = 200;
const MOST_READINGS = 1e5;

/**
 * Variance that is left, on average, in a quantity after a look that measures with a normal error: for readings that the draws themselves
 * foretell, every draw is weighed anew. Law of total variance; weights add up to 1. Errors of the mean over readings are of order 1/readings.
 */
export function varianceAfter(
  quantity: ArrayLike<number>,
  weights: ArrayLike<number>,
  { foretold, error }: Measuring,
  readings = READINGS,
): number {
  if (!(readings >= 1 && readings <= MOST_READINGS))
    impossible("readings", readings, `1 to ${MOST_READINGS}`);
  notNegative("error", error);
  // The readings: a grid over all that may be read, each as likely as the draws make it.
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < weights.length; i++) {
    if (!(weights[i]! > 1e-12)) continue;
    low = Math.min(low, foretold[i]!);
    high = Math.max(high, foretold[i]!);
  }
  if (!(high >= low && high - low < Infinity))
    impossible("weights or foretold", high - low, "some weight above 0, and finite numbers foretold");
  // A look much finer than the grid would tell one draw from the next: no draws of an answer are that close to it.
  error = Math.max(error, (high - low) / (5 * readings));
  low -= 5 * error;
  high += 5 * error;
  const step = Math.min((high - low) / readings, 0.5 * error);
  const { mean, variance } = moments(quantity, weights);
  let [left, total] = [0, 0];
  for (let y = low + 0.5 * step; y < high; y += step) {
    let [sum, first, second] = [0, 0, 0];
    for (let i = 0; i < weights.length; i++) {
      const z = (y - foretold[i]!) / error;
      if (z > 9 || z < -9) continue;
      const w = weights[i]! * Math.exp(-0.5 * z * z);
      const off = quantity[i]! - mean;
      sum += w;
      first += w * off;
      second += w * off * off;
    }
    if (!(sum > 0)) continue;
    left += second - (first * first) / sum;
    total += sum;
  }
  const after = total > 0 ? left / total : variance; // a look that all foretell alike tells nothing
  if (!(after < Infinity)) impossible("quantity or weights", after, "finite numbers");
  return after;
}

/** The same after a look that answers yes or no, each draw foretelling yes with a probability from 0 to 1. */
export function varianceAfterYesNo(
  quantity: ArrayLike<number>,
  weights: ArrayLike<number>,
  yes: ArrayLike<number>,
): number {
  let [left, told] = [0, 0];
  for (const no of [0, 1]) {
    const reweighed = Float64Array.from(weights, (w, i) => w * (no === 1 ? 1 - yes[i]! : yes[i]!));
    const probability = reweighed.reduce((sum, w) => sum + w, 0);
    if (!(probability > 0)) continue;
    told += probability;
    const { variance } = moments(
      quantity,
      reweighed.map((w) => w / probability),
    );
    left += probability * variance;
  }
  if (!(told > 0 && left < Infinity))
    impossible("weights", told, "some weight above 0, and probabilities from 0 to 1");
  return left;
}
