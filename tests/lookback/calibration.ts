// Whether answers hold the truth as often as they say: ranks of the truth among the draws of many made-up cases must be even.
import binomialBelow from "@stdlib/stats-base-dists-binomial-cdf";
import chiSquareQuantile from "@stdlib/stats-base-dists-chisquare-quantile";
import { randomBits } from "../../src/chance/random.ts";

/** Rank of a truth among draws, from 0 to their number; ties are broken by a seeded throw. */
export function rankOf(truth: number, draws: ArrayLike<number>, throws: () => number): number {
  let [below, same] = [0, 0];
  for (let i = 0; i < draws.length; i++) {
    if (draws[i]! < truth) below++;
    else if (draws[i] === truth) same++;
  }
  return below + Math.floor(throws() * (same + 1));
}

/** Counts of ranks in bins of one width; `most` + 1 must be divisible by the bins. */
export function binned(ranks: readonly number[], most: number, bins: number): number[] {
  const counts = new Array<number>(bins).fill(0);
  for (const rank of ranks) counts[Math.floor((rank * bins) / (most + 1))]!++;
  return counts;
}

/** How far counts are from even: Σ(count - mean)²/mean. */
export function unevenness(counts: readonly number[]): number {
  const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  return counts.reduce((sum, count) => sum + (count - mean) ** 2 / mean, 0);
}

/** Unevenness that even ranks pass with a false alarm of `alarm` in all, among so many quantities. */
export const unevennessLimit = (bins: number, alarm: number, quantities: number): number =>
  chiSquareQuantile(1 - alarm / quantities, bins - 1);

/** Counts up to each bin's end that even ranks keep to, all at once, with probability 1 - 2·alarm/2. */
export interface Band {
  readonly gamma: number;
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** The band whose point-wise level is `gamma`: binomial quantiles γ/2 and 1 - γ/2. */
export function bandAt(gamma: number, cases: number, bins: number): Band {
  const quantile = (p: number, z: number): number => {
    let [low, high] = [0, cases];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (binomialBelow(middle, cases, z) >= p) high = middle;
      else low = middle + 1;
    }
    return low;
  };
  const at = Array.from({ length: bins }, (_, i) => (i + 1) / bins);
  return {
    gamma,
    low: at.map((z) => (z === 1 ? cases : quantile(gamma / 2, z))),
    high: at.map((z) => (z === 1 ? cases : quantile(1 - gamma / 2, z))),
  };
}

/**
 * Probability that even ranks keep to a band: counts bin by bin, each binomial given those before.
 * Source: Säilynoja, Bürkner and Vehtari, Graphical test for discrete uniformity, 2022 (recalled).
 */
export function keepsTo({ low, high }: Band, cases: number): number {
  const bins = low.length;
  let chances = new Float64Array(cases + 1);
  chances[0] = 1;
  for (let b = 0; b < bins; b++) {
    const next = new Float64Array(cases + 1);
    const share = 1 / (bins - b);
    for (let n = 0; n <= cases; n++) {
      const chance = chances[n]!;
      if (chance === 0) continue;
      const rest = cases - n;
      let weight = share === 1 ? (rest === 0 ? 1 : 0) : Math.exp(rest * Math.log1p(-share));
      for (let more = 0; more <= rest; more++) {
        if (share === 1) weight = more === rest ? 1 : 0;
        const now = n + more;
        if (now >= low[b]! && now <= high[b]!) next[now]! += chance * weight;
        if (share < 1) weight *= ((rest - more) / (more + 1)) * (share / (1 - share));
      }
    }
    chances = next;
  }
  return chances.reduce((sum, chance) => sum + chance, 0);
}

/** The band that even ranks keep to with a probability. */
export function bandFor(kept: number, cases: number, bins: number): Band {
  let [low, high] = [0, 1 - kept];
  for (let i = 0; i < 30; i++) {
    const middle = 0.5 * (low + high);
    if (keepsTo(bandAt(middle, cases, bins), cases) >= kept) low = middle;
    else high = middle;
  }
  return bandAt(low, cases, bins);
}

/** A seeded source of throws for ties. */
export const throwsOf = (seed: number) => randomBits(seed, 77);
