// What a piece of evidence says about a foretold number, as the logarithm of its probability: the pieces of every likelihood.

import logGammaOf from "@stdlib/math-base-special-gammaln";
import { impossible, notNegative } from "../errors.ts";
import { logNormal, logNormalBelow, logNormalBetween } from "./normal.ts";

/** Measured y ± deviation. */
export const measured = logNormal;

/** Known only to be more than y, with the same error of measuring. */
export const moreThan = (y: number, foretold: number, deviation: number): number =>
  logNormalBelow((foretold - y) / deviation);

/** Known only to be less than y, with the same error of measuring. */
export const lessThan = (y: number, foretold: number, deviation: number): number =>
  logNormalBelow((y - foretold) / deviation);

/** Reported to lie between two bounds, each as uncertain as `deviation`. */
export const within = (low: number, high: number, foretold: number, deviation: number): number =>
  logNormalBetween((low - foretold) / deviation, (high - foretold) / deviation);

/** Logarithm of the gamma function of a number above 0. */
export function logGamma(x: number): number {
  if (!(x > 0)) impossible("x", x, "more than 0");
  return logGammaOf(x);
}

/** Counted, where so many were to be expected (Poisson); a count is a whole number from 0. */
export function counted(count: number, expected: number): number {
  if (!(count >= 0 && count < Infinity && expected >= 0 && expected < Infinity)) {
    notNegative("count", count);
    notNegative("expected", expected);
  }
  if (expected === 0) return count === 0 ? 0 : -Infinity;
  return count * Math.log(expected) - expected - logGamma(count + 1);
}

/** ln(eᵃ + eᵇ), without leaving the range of numbers. */
export function logAdd(a: number, b: number): number {
  const [low, high] = a < b ? [a, b] : [b, a];
  if (Number.isNaN(a + b) && a !== -b) impossible(Number.isNaN(a) ? "a" : "b", NaN, "a number");
  return Math.abs(high) === Infinity ? high : high + Math.log1p(Math.exp(low - high));
}

/** Logarithm of the sum of exponentials. */
export function logSum(terms: ArrayLike<number>): number {
  let most = -Infinity;
  for (let i = 0; i < terms.length; i++) most = Math.max(most, terms[i]!);
  if (Number.isNaN(most)) impossible("terms", most, "numbers");
  if (Math.abs(most) === Infinity) return most;
  let sum = 0;
  for (let i = 0; i < terms.length; i++) sum += Math.exp(terms[i]! - most);
  return most + Math.log(sum);
}
