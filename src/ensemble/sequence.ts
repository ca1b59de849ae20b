// Points that fill a box more evenly than random ones, the first n of them always the same first n.

import { impossible } from "../errors.ts";

/** Writes point `index` (from 0) into `out`: one coordinate a dimension, from 0 to below 1. */
export type Sequence = (index: number, out: Float64Array) => void;

/** Largest number below one. */
const BELOW_ONE = 1 - 2 ** -53;

/**
 * Halton points with every digit permuted at random: coordinate j of point i is the radical inverse of i in the j-th prime, its
 * k-th digit sent through a permutation of its own. Each coordinate alone is uniform on [0, 1); more points, or more dimensions,
 * leave the earlier ones as they are. `dimensions` is 0 or more, `seed` a whole number from 0.
 * Source: Halton, Numerische Mathematik 2, 1960; the permutations after Owen, A randomized Halton algorithm, 2017 (recalled).
 */
export function scrambledHalton(dimensions: number, seed: number): Sequence {
  if (!Number.isInteger(dimensions) || dimensions < 0)
    impossible("dimensions", dimensions, "a whole number, 0 or more");
  if (!Number.isInteger(seed) || seed < 0) impossible("seed", seed, "a whole number, 0 or more");
  const axes = primes(dimensions).map((base, j) => {
    const digits = Math.ceil((53 * Math.LN2) / Math.log(base));
    return { base, orders: Array.from({ length: digits }, (_, k) => shuffled(base, randomBits(seed, j, k))) };
  });
  return (index, out) => {
    for (let j = 0; j < axes.length; j++) {
      const { base, orders } = axes[j]!;
      let [rest, weight, sum] = [index, 1 / base, 0];
      for (const order of orders) {
        sum += order[rest % base]! * weight;
        rest = Math.floor(rest / base);
        weight /= base;
      }
      out[j] = Math.min(sum, BELOW_ONE);
    }
  };
}

/** The first primes: 2, 3, 5 and so on. */
export function primes(count: number): number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++)
    if (found.every((prime) => prime * prime > n || n % prime !== 0)) found.push(n);
  return found;
}

/**
 * Numbers from 0 to below 1 that depend on nothing but the whole numbers given: a counter through a mixer of bits.
 * Source: Steele, Lea and Flood, Fast splittable pseudorandom number generators, 2014; 32-bit mixer of Appleby, 2008 (recalled).
 */
export function randomBits(...keys: readonly number[]): () => number {
  let state = keys.reduce((before, key) => mixed((before ^ mixed(key | 0)) + 0x9e3779b9), 0x2545f491);
  return () => {
    state = (state + 0x9e3779b9) | 0;
    return (mixed(state) >>> 0) / 2 ** 32;
  };
}

function mixed(bits: number): number {
  let h = bits | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** The whole numbers below n in a random order (Fisher and Yates). */
export function shuffled(n: number, random: () => number): Uint32Array {
  const order = Uint32Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const k = Math.floor(random() * (i + 1));
    [order[i], order[k]] = [order[k]!, order[i]!];
  }
  return order;
}
