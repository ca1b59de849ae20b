// Guesses moved about so that they spread as the tempered answer does: each by its own random numbers.

import { coordinateAt, logDensity, valueAt } from "../../chance/belief.ts";
import { randomBits } from "../../chance/random.ts";
import type { Problem } from "./problem.ts";

/** Guesses to be moved, and how. Coordinates and logarithms of likelihoods are written in place. */
export interface Moving {
  readonly points: Float64Array;
  /** Of the cheap evidence, and what the dear evidence adds (0 while it does not yet count). */
  readonly logLikelihood: Float64Array;
  readonly further: Float64Array;
  /** All guesses' coordinates as they were when the round began: steps are differences between two of them. */
  readonly others: Float64Array;
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

/** One move in so many draws one unknown anew from what was believed of it: what the evidence hardly touches is then free at once. */
const ANEW = 0.3;
/** Shares of the unknowns that a move changes at once, one of them taken at random each time. */
const changed = [0.34, 0.67, 1];
/** One step in so many is a whole difference, which leaps from one heap of guesses to another. */
const LEAPS = 0.1;
/** Each unknown's part of a step is longer or shorter by up to this share of it. */
const UNEVEN = 0.3;

/**
 * Metropolis moves, so many for each guess: one unknown drawn anew from its belief, or a step, which is the difference between two other guesses, in some of the unknowns, times
 * 2.38/√(2·changed): it has the draws' own spread, however they lean and bend. Accepted by the ratio of belief × likelihood^power; where
 * dear evidence counts it is asked about what the cheap one let pass, by a throw of its own, which leaves the answer exact. Returns how
 * many were accepted.
 * Sources: Metropolis and others, 1953; steps from differences ter Braak, A Markov chain Monte Carlo version of the genetic algorithm
 * Differential Evolution, 2006; in some unknowns at a time Vrugt and others, 2009; acceptance in two goes Christen and Fox, Markov chain
 * Monte Carlo using an approximation, 2005 (recalled).
 */
export function moveAbout(problem: Problem, moving: Moving): number {
  const { points, logLikelihood, further, others, power, furtherPower, moves, seed, round } = moving;
  const n = problem.unknowns.length;
  const dear = furtherPower > 0 ? problem.further : undefined;
  const [step, trial, values] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  let accepted = 0;
  for (let i = 0; i < logLikelihood.length; i++) {
    const random = randomBits(seed, round, i);
    const at = i * n;
    let prior = logPrior(problem, points, at);
    for (let m = 0; m < moves; m++) {
      const anew = random() < ANEW ? Math.floor(random() * n) : -1;
      if (anew < 0) takeStep(step, others, i, random);
      for (let j = 0; j < n; j++) trial[j] = points[at + j]! + (anew < 0 ? step[j]! : 0);
      if (anew >= 0) trial[anew] = coordinateAt(problem.unknowns[anew]!.belief, random() + 2 ** -33);
      const [chance, second] = [random(), random()];
      const trialPrior = logPrior(problem, trial, 0);
      if (trialPrior === -Infinity) continue;
      // What is drawn anew comes from the belief itself, which then does not count again.
      const believed = anew < 0 ? trialPrior - prior : 0;
      const passes = (log: number) => Math.log(chance) < believed + power * (log - logLikelihood[i]!);
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
      accepted++;
    }
  }
  return accepted;
}

/** A step from the difference between two guesses that are not the one that moves. */
function takeStep(step: Float64Array, others: Float64Array, own: number, random: () => number): void {
  const n = step.length;
  const count = others.length / n;
  const a = (own + 1 + Math.floor(random() * (count - 1))) % count;
  let b = (own + 1 + Math.floor(random() * (count - 2))) % count;
  if (b === a) b = (own + count - 1) % count;
  const share = changed[Math.floor(random() * changed.length)]!;
  const always = Math.floor(random() * n);
  const leaps = random() < LEAPS;
  let moved = 0;
  for (let j = 0; j < n; j++) {
    const moves = random() < share || j === always;
    const uneven = 1 + UNEVEN * (2 * random() - 1);
    step[j] = moves ? uneven * (others[a * n + j]! - others[b * n + j]!) : 0;
    if (moves) moved++;
  }
  const scale = leaps ? 1 : 2.38 / Math.sqrt(2 * moved);
  for (let j = 0; j < n; j++) step[j]! *= scale;
}

/** What the dear evidence says of each point. */
export function askFurther(problem: Problem, points: Float64Array, out: Float64Array): void {
  if (problem.further === undefined) return;
  const n = problem.unknowns.length;
  const values = new Float64Array(n);
  for (let i = 0; i < out.length; i++) out[i] = problem.further(valuesOf(problem, points, i * n, values));
}
