// A law that looks like the guesses themselves: a smaller copy of their spread about each of some of them.

import { normalQuantile } from "../../chance/normal.ts";

/** Guesses about which kernels stand, at most: more tell hardly more of where the others are. */
const MOST = 250;
/** Spread of a kernel, as a share of that of all guesses. */
const WIDTH = 0.7;
/** Kernels are laws of Student with so many degrees of freedom: what lies far out is proposed often enough. */
const FREEDOM = 4;
/** The least part of its own variance that an unknown keeps once the others are known: guesses that lie in a plane leave none. */
const LEAST = 1e-6;

/** Kernels of one shape: centres in units of the guesses' spread, about their middle. */
export interface Kernels {
  readonly middle: Float64Array;
  /** Lower triangle whose product with its transpose is the guesses' covariance, row by row. */
  readonly root: Float64Array;
  readonly centres: Float64Array;
}

/**
 * Kernels about guesses, one point of n coordinates a row; the centres are drawn in so that mean and covariance are the guesses' own.
 * Source: West, Approximating posterior distributions by mixtures, 1993 (recalled).
 */
export function kernelsAbout(points: Float64Array, n: number): Kernels {
  const count = points.length / n;
  const middle = new Float64Array(n);
  for (let i = 0; i < points.length; i++) middle[i % n]! += points[i]! / count;
  const root = rootOf(covariance(points, middle), n);
  const many = Math.min(count, MOST);
  const centres = new Float64Array(many * n);
  const drawnIn = Math.sqrt(1 - WIDTH * WIDTH);
  const own = new Float64Array(n);
  for (let i = 0; i < many; i++) {
    inUnits(middle, root, points, Math.floor(((i + 0.5) * count) / many) * n, own);
    for (let j = 0; j < n; j++) centres[i * n + j] = drawnIn * own[j]!;
  }
  return { middle, root, centres };
}

function covariance(points: Float64Array, middle: Float64Array): Float64Array {
  const n = middle.length;
  const all = new Float64Array(n * n);
  for (let at = 0; at < points.length; at += n)
    for (let j = 0; j < n; j++)
      for (let k = 0; k <= j; k++)
        all[j * n + k]! +=
          ((points[at + j]! - middle[j]!) * (points[at + k]! - middle[k]!) * n) / points.length;
  return all;
}

/** The root of a covariance (Cholesky), of which the lower triangle is read. */
function rootOf(matrix: Float64Array, n: number): Float64Array {
  const root = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let left = matrix[i * n + j]!;
      for (let k = 0; k < j; k++) left -= root[i * n + k]! * root[j * n + k]!;
      // Guesses that are all one point are given some spread: it does not matter which.
      const least = LEAST * matrix[i * n + i]! || LEAST;
      root[i * n + j] = i === j ? Math.sqrt(Math.max(left, least)) : left / root[j * n + j]!;
    }
  return root;
}

/** A point in units of the guesses' spread. */
function inUnits(
  middle: Float64Array,
  root: Float64Array,
  points: Float64Array,
  from: number,
  out: Float64Array,
): Float64Array {
  const n = out.length;
  for (let j = 0; j < n; j++) {
    let left = points[from + j]! - middle[j]!;
    for (let k = 0; k < j; k++) left -= root[j * n + k]! * out[k]!;
    out[j] = left / root[j * n + j]!;
  }
  return out;
}

/** A point drawn from the kernels. */
export function drawnFrom({ middle, root, centres }: Kernels, random: () => number, out: Float64Array): void {
  const n = middle.length;
  const centre = Math.floor((random() * centres.length) / n) * n;
  const thrown = () => random() + 2 ** -33; // off the ends, where a normal number would be infinite
  // Chi-square with four degrees of freedom: a sum of two exponential numbers, twice.
  const chiSquare = -2 * Math.log(thrown() * thrown());
  const width = WIDTH * Math.sqrt(FREEDOM / chiSquare);
  const own = new Float64Array(n);
  for (let j = 0; j < n; j++) own[j] = centres[centre + j]! + width * normalQuantile(thrown());
  for (let j = 0; j < n; j++) {
    let sum = middle[j]!;
    for (let k = 0; k <= j; k++) sum += root[j * n + k]! * own[k]!;
    out[j] = sum;
  }
}

/** Logarithm of the kernels' density at a point, but for what is the same at every point. */
export function logKernels({ middle, root, centres }: Kernels, points: Float64Array, from: number): number {
  const n = middle.length;
  const own = inUnits(middle, root, points, from, new Float64Array(n));
  const scale = 1 / (FREEDOM * WIDTH * WIDTH);
  const whole = (n + FREEDOM) >> 1;
  let sum = 0;
  for (let at = 0; at < centres.length;) {
    let squares = 0;
    for (let j = 0; j < n; j++, at++) {
      const off = own[j]! - centres[at]!;
      squares += off * off;
    }
    // (1 + d²/ν)^-(ν + n)/2, by hand: it is asked some hundred times a move.
    const one = 1 / (1 + scale * squares);
    let density = n % 2 === 0 ? 1 : Math.sqrt(one);
    for (let k = 0; k < whole; k++) density *= one;
    sum += density;
  }
  return Math.log(sum);
}
