// Guesses moved about so that they spread as the tempered answer does: each by its own random numbers, whoever moves it.

import { logDensity, valueAt } from "../../chance/belief.ts";
import { drawNormals, randomBits } from "../../chance/random.ts";
import type { Problem } from "./problem.ts";

/** Guesses to be moved, and how. Coordinates and logarithms of likelihoods are written in place. */
export interface Moving {
  /** Number of the first guess among all; its random numbers hang on it. */
  readonly first: number;
  readonly points: Float64Array;
  /** Of the cheap evidence, and what the dear evidence adds (0 while it does not yet count). */
  readonly logLikelihood: Float64Array;
  readonly further: Float64Array;
  /** Lower triangle of the steps' spread. */
  readonly triangle: Float64Array;
  /** Powers from 0 to 1 of the likelihood of the cheap and of the dear evidence. */
  readonly power: number;
  readonly furtherPower: number;
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
 * belief × likelihood^power; where dear evidence counts it is asked about what the cheap one let pass, by a throw of its own, which
 * leaves the answer exact. Returns how many were accepted.
 * Sources: Metropolis and others, 1953; scale of the steps Roberts, Gelman and Gilks, 1997; acceptance in two goes Christen and Fox,
 * Markov chain Monte Carlo using an approximation, 2005 (recalled).
 */
export function moveAbout(problem: Problem, moving: Moving): number {
  const { points, logLikelihood, further, triangle, power, furtherPower, moves, seed, round, first } = moving;
  const n = problem.unknowns.length;
  const dear = furtherPower > 0 ? problem.further : undefined;
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
      const [chance, second] = [random(), random()];
      const trialPrior = logPrior(problem, trial, 0);
      if (trialPrior === -Infinity) continue;
      const likelihood = problem.logLikelihood(valuesOf(problem, trial, 0, values));
      const gain = trialPrior - prior + power * (likelihood - logLikelihood[i]!);
      if (!(Math.log(chance) < gain)) continue;
      let more = 0;
      if (dear !== undefined) {
        more = dear(values);
        if (!(Math.log(second) < furtherPower * (more - further[i]!))) continue;
      }
      points.set(trial, at);
      logLikelihood[i] = likelihood;
      further[i] = more;
      prior = trialPrior;
      accepted++;
    }
  }
  return accepted;
}

/** What the dear evidence says of each point. */
export function askFurther(problem: Problem, points: Float64Array, out: Float64Array): void {
  if (problem.further === undefined) return;
  const n = problem.unknowns.length;
  const values = new Float64Array(n);
  for (let i = 0; i < out.length; i++) out[i] = problem.further(valuesOf(problem, points, i * n, values));
}
