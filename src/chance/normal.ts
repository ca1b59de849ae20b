// The normal law, right far into its tails: a likelihood lives there.

import { finite, fraction, impossible, positive } from "../errors.ts";
import erfcx from "@stdlib/math-base-special-erfcx";
import cumulative from "@stdlib/stats-base-dists-normal-cdf";
import quantile from "@stdlib/stats-base-dists-normal-quantile";

/** ln √(2π) [-]. */
export const LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

/** Below this many standard deviations a probability is taken in its logarithm only. */
const FAR = -5;

/** Probability that a standard normal number lies under z [-]; right to rounding in both tails. */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) impossible("z", z, "a number");
  return cumulative(z, 0, 1);
}

/** The z under which a standard normal number lies with probability p, from 0 to 1 [-]. */
export function normalQuantile(p: number): number {
  fraction("p", p);
  return quantile(p, 0, 1);
}

/** Logarithm of the density of y about a middle, with a standard deviation above 0 [-]; all in one unit. */
export function logNormal(y: number, middle: number, deviation: number): number {
  const z = (y - middle) / deviation;
  if (!(z * z >= 0 && deviation > 0 && deviation < Infinity)) refuse(y, middle, deviation);
  return -0.5 * z * z - Math.log(deviation) - LOG_ROOT_TWO_PI;
}

/** Logarithm of the probability that a standard normal number lies under z [-]; finite for every finite z. */
export function logNormalBelow(z: number): number {
  if (Number.isNaN(z)) impossible("z", z, "a number");
  if (z > -FAR) return Math.log1p(-cumulative(-z, 0, 1));
  if (z > FAR) return Math.log(cumulative(z, 0, 1));
  return Math.log(0.5 * erfcx(-z / Math.SQRT2)) - 0.5 * z * z;
}

/** Logarithm of the probability that a standard normal number lies between a and b; -Infinity unless b is above a. */
export function logNormalBetween(a: number, b: number): number {
  if (Number.isNaN(a - b) && a !== b) impossible(Number.isNaN(a) ? "a" : "b", NaN, "a number");
  if (!(b > a)) return -Infinity;
  if (a > 0) return logNormalBetween(-b, -a);
  if (b > 0 && a < 0) return Math.log1p(-cumulative(a, 0, 1) - cumulative(-b, 0, 1));
  const [low, high] = [logNormalBelow(a), logNormalBelow(b)];
  return high + Math.log1p(-Math.exp(low - high));
}

function refuse(y: number, middle: number, deviation: number): void {
  positive("deviation", deviation);
  finite("middle", middle);
  finite("y", y);
}
