// Whether weights can be trusted: the tail of the largest ones tells whether more draws would change the answer.

import { finite, impossible } from "../../errors.ts";

/** What a set of weights is worth once its tail is smoothed. */
export interface Smoothed {
  /** Shape of the tail; above `trusted` the answer hangs on a few draws. */
  readonly shape: number;
  readonly trusted: number;
  /** Logarithms of the smoothed weights, scaled to add up to 1. */
  readonly logWeights: Float64Array;
  readonly effective: number;
}

/** Weights that the belief in the shape is worth, about 0.5. */
const SHRINK = 10;

/** Largest shape that may be trusted with so many draws, more than one: min(1 - 1/log₁₀ S, 0.7). */
export function trustedShape(draws: number): number {
  if (!(draws > 1)) impossible("draws", draws, "more than 1");
  return Math.min(1 - 1 / Math.log10(draws), 0.7);
}

/**
 * Pareto-smoothed importance weights from the logarithms of raw ones (25 or more): the largest are replaced by the quantiles of a generalised Pareto
 * law fitted to them. Sources: Vehtari, Simpson, Gelman, Yao and Gabry, Pareto smoothed importance sampling, 2024; the fit Zhang and
 * Stephens, A new and efficient estimation method for the generalized Pareto distribution, 2009 (recalled).
 */
export function paretoSmoothed(logWeights: ArrayLike<number>): Smoothed {
  const count = logWeights.length;
  if (!(count > 1)) impossible("logWeights", count, "two weights or more");
  let most = -Infinity;
  for (let i = 0; i < count; i++) most = Math.max(most, logWeights[i]!);
  finite("logWeights", most);
  const scaled = Float64Array.from(logWeights, (w) => w - most);
  const tail = Math.min(Math.ceil(Math.min(0.2 * count, 3 * Math.sqrt(count))), count - 1);
  const order = Uint32Array.from(scaled, (_, i) => i).sort((a, b) => scaled[a]! - scaled[b]!);
  const cutoff = Math.exp(scaled[order[count - tail - 1]!]!);
  const excess = Float64Array.from(
    { length: tail },
    (_, i) => Math.exp(scaled[order[count - tail + i]!]!) - cutoff,
  );
  let shape = -Infinity;
  if (tail >= 5 && excess[tail - 1]! > excess[0]!) {
    const fit = fitPareto(excess);
    shape = fit.shape;
    for (let i = 0; i < tail; i++) {
      const quantile = cutoff + paretoQuantile((i + 0.5) / tail, fit.shape, fit.scale);
      scaled[order[count - tail + i]!] = Math.min(0, Math.log(quantile));
    }
  }
  let sum = 0;
  for (let i = 0; i < count; i++) sum += Math.exp(scaled[i]!);
  let squares = 0;
  for (let i = 0; i < count; i++) {
    scaled[i]! -= Math.log(sum);
    squares += Math.exp(2 * scaled[i]!);
  }
  return { shape, trusted: trustedShape(count), logWeights: scaled, effective: 1 / squares };
}

const paretoQuantile = (p: number, shape: number, scale: number): number =>
  Math.abs(shape) < 1e-12 ? -scale * Math.log1p(-p) : (scale * Math.expm1(-shape * Math.log1p(-p))) / shape;

/** Shape and scale of a generalised Pareto law from rising excesses, the shape shrunk towards 0.5. */
function fitPareto(x: Float64Array): { shape: number; scale: number } {
  const n = x.length;
  const grid = 30 + Math.floor(Math.sqrt(n));
  const quarter = x[Math.floor(n / 4 + 0.5) - 1]!;
  const thetas = Float64Array.from(
    { length: grid },
    (_, j) => 1 / x[n - 1]! + (1 - Math.sqrt(grid / (j + 0.5))) / (3 * quarter),
  );
  const shapeAt = (theta: number): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += Math.log1p(-theta * x[i]!);
    return sum / n;
  };
  const profile = thetas.map((theta) => {
    const k = shapeAt(theta);
    return n * (Math.log(-theta / k) - k - 1);
  });
  let theta = 0;
  for (let j = 0; j < grid; j++) {
    let total = 0;
    for (let l = 0; l < grid; l++) total += Math.exp(profile[l]! - profile[j]!);
    theta += thetas[j]! / total;
  }
  const k = shapeAt(theta);
  return { shape: (k * n + 0.5 * SHRINK) / (n + SHRINK), scale: -k / theta };
}
