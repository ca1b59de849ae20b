// Guesses moved about so that they spread as the tempered answer does: each by its own random numbers, whoever moves it.

import { coordinateOf, logDensity, valueAt } from "../../chance/belief.ts";
import { drawNormals, randomBits } from "../../chance/random.ts";
import type { Problem } from "./problem.ts";

/** Guesses to be moved, and how. Coordinates and logarithms of belief and likelihood are written in place. */
export interface Moving {
  /** Number of the first guess among all; its random numbers hang on it. */
  readonly first: number;
  readonly points: Float64Array;
  readonly logLikelihood: Float64Array;
  /** Lower triangle of the steps' spread. */
  readonly triangle: Float64Array;
  /** Power of the likelihood, from 0 to 1. */
  readonly power: number;
  readonly moves: number;
  readonly seed: number;
  readonly round: number;
}

/** Logarithm of the belief at a point, in coordinates. */
export function logPrior({ unknowns }: Problem, points: Float64Array, from: number): number {
  let sum = 0;
  for (let j = 0; j < unknowns.length; j++) sum += logDensity(unknowns[j]!.belief, points[from + j]!);
  return sum;
}

/** Values of a point's coordinates. */
export function valuesOf(
  { unknowns }: Problem,
  points: Float64Array,
  from: number,
  out: Float64Array,
): Float64Array {
  for (let j = 0; j < unknowns.length; j++) out[j] = valueAt(unknowns[j]!.belief, points[from + j]!);
  return out;
}

/**
 * Random-walk Metropolis moves, so many for each guess: steps of the draws' own spread times 2.38/√d, accepted by the ratio of
 * belief × likelihood^power. Returns how many were accepted.
 * Sources: Metropolis and others, 1953; scale of the steps Roberts, Gelman and Gilks, 1997 (recalled).
 */
export function moveAbout(problem: Problem, moving: Moving): number {
  const { points, logLikelihood, triangle, power, moves, seed, round, first } = moving;
  const n = problem.unknowns.length;
  const scale = 2.38 / Math.sqrt(n);
  const [normals, trial, values] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  let accepted = 0;
  for (let i = 0; i < logLikelihood.length; i++) {
    const random = randomBits(seed, round, first + i);
    const at = i * n;
    let prior = logPrior(problem, points, at);
    for (let m = 0; m < moves; m++) {
      drawNormals(normals, random);
      for (let j = 0; j < n; j++) {
        let step = 0;
        for (let k = 0; k <= j; k++) step += triangle[j * n + k]! * normals[k]!;
        trial[j] = points[at + j]! + scale * step;
      }
      const chance = random();
      const trialPrior = logPrior(problem, trial, 0);
      if (trialPrior === -Infinity) continue;
      const likelihood = problem.logLikelihood(valuesOf(problem, trial, 0, values));
      const gain = trialPrior - prior + power * (likelihood - logLikelihood[i]!);
      if (!(Math.log(chance) < gain)) continue;
      points.set(trial, at);
      logLikelihood[i] = likelihood;
      prior = trialPrior;
      accepted++;
    }
  }
  return accepted;
}

/** Coordinates of given values, as a starting point. */
export const pointOf = ({ unknowns }: Problem, values: readonly number[]): Float64Array =>
  Float64Array.from(unknowns, ({ belief }, j) => coordinateOf(belief, values[j]!));
