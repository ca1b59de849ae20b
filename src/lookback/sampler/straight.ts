// The coordinates in which guesses are moved: those in which they lie along straight lines.

import { coordinateAt, logDensity, valueAt, type Belief } from "../../chance/belief.ts";
import type { Problem } from "./problem.ts";

/** A number that is 0 or more goes by its logarithm, even where the belief in it is even: a leak twice as old is like one that is twice as fast. */
const byLogarithm = (belief: Belief): boolean => belief.law === "uniform" && belief.low >= 0;

/** The coordinate under which lies a share p of the belief, from above 0 to below 1. */
export const straightAt = (belief: Belief, p: number): number =>
  byLogarithm(belief) ? Math.log(coordinateAt(belief, p)) : coordinateAt(belief, p);

/** Logarithm of the belief at a point, in these coordinates. */
export function logPrior({ unknowns }: Problem, points: Float64Array, from: number): number {
  let sum = 0;
  for (let j = 0; j < unknowns.length; j++) {
    const { belief } = unknowns[j]!;
    const x = points[from + j]!;
    sum += byLogarithm(belief) ? logDensity(belief, Math.exp(x)) + x : logDensity(belief, x);
  }
  return sum;
}

/** Values of a point's coordinates. */
export function valuesOf(
  { unknowns }: Problem,
  points: Float64Array,
  from: number,
  out: Float64Array,
): Float64Array {
  for (let j = 0; j < unknowns.length; j++) {
    const { belief } = unknowns[j]!;
    const x = points[from + j]!;
    out[j] = byLogarithm(belief) ? Math.exp(x) : valueAt(belief, x);
  }
  return out;
}
