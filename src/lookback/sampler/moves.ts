// Guesses moved about so that they spread as the tempered answer does: each by its own random numbers.

import { randomBits } from "../../chance/random.ts";
import { drawnFrom, kernelsAbout, logKernels } from "./kernels.ts";
import type { Problem } from "./problem.ts";
import { logPrior, straightAt, valuesOf } from "./straight.ts";

/** Guesses to be moved, and how. Coordinates and logarithms of likelihoods are written in place. */
export interface Moving {
  readonly points: Float64Array;
  /** Of the cheap evidence, and what the dear evidence adds (0 while it does not yet count). */
  readonly logLikelihood: Float64Array;
  readonly further: Float64Array;
  /** All guesses' coordinates as they were when the round began: where a guess goes hangs on those of the other half. */
  readonly others: Float64Array;
  /** Powers from 0 to 1 of the likelihood of the cheap and of the dear evidence. */
  readonly power: number;
  readonly furtherPower: number;
  readonly moves: number;
  readonly seed: number;
  readonly round: number;
}

/** Shares of the moves that draw one unknown anew from what was believed of it (what the evidence hardly touches is then free at once), and that take a step; the rest leap. */
const ANEW = 0.2;
const STEPS = 0.1;

/**
 * Metropolis moves, so many for each guess: one unknown drawn anew from its belief; a step, which is the difference between two
 * guesses times 2.38/√(2n), so that it has their own spread, however they lean; or a leap, wherever it was before, to a point drawn from
 * kernels about guesses. Accepted by the ratio of belief × likelihood^power over what the point was drawn from; where
 * dear evidence counts it is asked about what the cheap one let pass, by a throw of its own, which leaves the answer exact. Returns how
 * many were accepted.
 *
 * Steps and leaps of one half of the guesses come from the other half. Were a kernel about itself among them, a guess far out
 * would take its place for a likely one to be sent to, and leave it too soon: answers came out a sixth too narrow.
 * Sources: Metropolis and others, 1953; Hastings, 1970; steps from differences ter Braak, A Markov chain Monte Carlo version of the genetic
 * algorithm Differential Evolution, 2006; leaps to a law fitted to the guesses Chopin, A sequential particle filter method for static models,
 * 2002; two halves Goodman and Weare, Ensemble samplers with affine invariance, 2010; acceptance in two goes Christen and Fox, Markov chain
 * Monte Carlo using an approximation, 2005 (recalled).
 */
export function moveAbout(problem: Problem, moving: Moving): number {
  const { points, logLikelihood, further, others, power, furtherPower, moves, seed, round } = moving;
  const n = problem.unknowns.length;
  const dear = furtherPower > 0 ? problem.further : undefined;
  const [trial, values] = [new Float64Array(n), new Float64Array(n)];
  // Resampling keeps the order: but for a few in the middle no guess has a copy of its own beginning in the other half.
  const middle = (logLikelihood.length >> 1) * n;
  const halves = [others.subarray(middle), others.subarray(0, middle)];
  const kernelsOf = halves.map((half) => kernelsAbout(half, n));
  let accepted = 0;
  for (let i = 0; i < logLikelihood.length; i++) {
    const random = randomBits(seed, round, i);
    const at = i * n;
    const half = at < middle ? 0 : 1;
    const [kernels, apart] = [kernelsOf[half]!, halves[half]!];
    let prior = logPrior(problem, points, at);
    /** Logarithm of the kernels' density where the guess is, once a leap has asked for it. */
    let proposed: number | undefined;
    for (let m = 0; m < moves; m++) {
      const kind = random();
      const [anew, leaps] = [kind < ANEW, kind >= ANEW + STEPS];
      trial.set(points.subarray(at, at + n));
      if (anew) {
        const j = Math.floor(random() * n);
        trial[j] = straightAt(problem.unknowns[j]!.belief, random() + 2 ** -33);
      } else if (leaps) drawnFrom(kernels, random, trial);
      else takeStep(trial, apart, random);
      const [chance, second] = [random(), random()];
      const trialPrior = logPrior(problem, trial, 0);
      if (trialPrior === -Infinity) continue;
      // What a point is drawn from does not count again: of one drawn anew that is the belief itself.
      let before = anew ? 0 : trialPrior - prior;
      let trialProposed: number | undefined;
      if (leaps) {
        proposed ??= logKernels(kernels, points, at);
        trialProposed = logKernels(kernels, trial, 0);
        before += proposed - trialProposed;
      }
      const passes = (log: number) => Math.log(chance) < before + power * (log - logLikelihood[i]!);
      valuesOf(problem, trial, 0, values);
      if (problem.atMost !== undefined && !passes(problem.atMost(values))) continue;
      const likelihood = problem.logLikelihood(values);
      if (!passes(likelihood)) continue;
      let more = 0;
      if (dear !== undefined) {
        more = dear(values);
        if (!(Math.log(second) < furtherPower * (more - further[i]!))) continue;
      }
      points.set(trial, at);
      logLikelihood[i] = likelihood;
      further[i] = more;
      prior = trialPrior;
      proposed = trialProposed;
      accepted++;
    }
  }
  return accepted;
}

/** A step by the difference between two guesses. */
function takeStep(point: Float64Array, others: Float64Array, random: () => number): void {
  const n = point.length;
  const count = others.length / n;
  const a = Math.floor(random() * count);
  const b = (a + 1 + Math.floor(random() * (count - 1))) % count;
  const scale = 2.38 / Math.sqrt(2 * n);
  for (let j = 0; j < n; j++) point[j]! += scale * (others[a * n + j]! - others[b * n + j]!);
}

/** What the dear evidence says of each point. */
export function askFurther(problem: Problem, points: Float64Array, out: Float64Array): void {
  if (problem.further === undefined) return;
  const n = problem.unknowns.length;
  const values = new Float64Array(n);
  for (let i = 0; i < out.length; i++) out[i] = problem.further(valuesOf(problem, points, i * n, values));
}
