// Weights of draws: how many equal ones they are worth, and equal ones drawn from them.

import { impossible } from "../../errors.ts";

/**
 * How many equally weighted draws weights are worth: (Σw)²/Σw². Weights 0 or more, not all 0.
 * Source: Kish, Survey Sampling, 1965 (recalled).
 */
export function effectiveSize(weights: ArrayLike<number>): number {
  let [sum, squares] = [0, 0];
  for (let i = 0; i < weights.length; i++) {
    if (!(weights[i]! >= 0)) impossible("weights", weights[i]!, "0 or more");
    sum += weights[i]!;
    squares += weights[i]! * weights[i]!;
  }
  if (!(squares > 0 && squares < Infinity)) impossible("weights", sum, "a finite sum above 0");
  return (sum * sum) / squares;
}

/** Weights from their logarithms, scaled to add up to 1; returns the logarithm of their mean before. */
export function normalised(logWeights: ArrayLike<number>, out: Float64Array): number {
  let most = -Infinity;
  for (let i = 0; i < logWeights.length; i++) most = Math.max(most, logWeights[i]!);
  if (most === -Infinity) {
    out.fill(0);
    return -Infinity;
  }
  let sum = 0;
  for (let i = 0; i < logWeights.length; i++) sum += out[i] = Math.exp(logWeights[i]! - most);
  for (let i = 0; i < logWeights.length; i++) out[i]! /= sum;
  return most + Math.log(sum / logWeights.length);
}

/**
 * Which draw each of so many equally weighted ones is taken from: one random shift, then even steps through the running sum
 * (systematic resampling; Kitagawa, Monte Carlo filter and smoother, 1996; recalled). `shift` from 0 to below 1; weights add up to 1.
 */
export function resampled(weights: Float64Array, shift: number, count = weights.length): Int32Array {
  const from = new Int32Array(count);
  let [at, sum] = [0, weights[0]!];
  for (let i = 0; i < count; i++) {
    const level = (i + shift) / count;
    while (sum < level && at < weights.length - 1) sum += weights[++at]!;
    from[i] = at;
  }
  return from;
}
