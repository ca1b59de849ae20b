// The answer by guesses: drawn from what was believed, led to what the evidence says in steps that each keep half of them.

import { checkBelief } from "../../chance/belief.ts";
import { randomBits } from "../../chance/random.ts";
import { impossible } from "../../errors.ts";
import { begun } from "./first.ts";
import { askFurther, moveAbout } from "./moves.ts";
import { nextPower } from "./power.ts";
import { wholeLikelihood, type Draws, type Problem } from "./problem.ts";
import { valuesOf } from "./straight.ts";
import { effectiveSize, normalised, resampled } from "./weights.ts";

export interface SamplerOptions {
  /** Guesses, 100 or more. */
  readonly guesses: number;
  /** Moves of each guess after every step. */
  readonly moves: number;
  /** A whole number from 0: the same gives the same answer. */
  readonly seed: number;
  /** Evidence (its logarithm) under which the answer is given up on the way; then its own is no more than a bound from above. None when missing. */
  readonly least?: number;
}

/** A step on the way: the powers of both likelihoods that were reached, added up (0 to 2), what the weights were worth, and the share of moves accepted. */
export interface Step {
  readonly power: number;
  readonly effective: number;
  readonly accepted: number;
}

export interface TemperedAnswer extends Draws {
  readonly steps: readonly Step[];
}

/** At the last step guesses are moved so many times as often: what resampling made equal on the way has to part again. */
const AT_LAST = 2;

/**
 * With less than this share of the guesses that the cheap evidence led to left possible by the dear evidence, the way there led past the answer: what stands
 * between both (a vehicle that still drove, with a little less missing than was measured) was given up on the way.
 */
const PAST = 0.02;

/**
 * The answer of a problem by tempered sequential Monte Carlo: draws of the belief, weighed by the likelihood to a rising power, resampled
 * and moved about; cheap evidence first, what is dear after it; both at once, from the beginning, where the dear evidence finds next to nothing possible of
 * what the cheap one led to. The same seed gives the same numbers.
 * Errors: fewer than 100 guesses, moves under 1, a belief that says nothing.
 * Sources: Del Moral, Doucet and Jasra, Sequential Monte Carlo samplers, 2006; Chopin, A sequential particle filter method for static
 * models, 2002; the rule for the next power Zhou, Johansen and Aston, 2016 (recalled).
 */
export function temperedAnswer(problem: Problem, options: SamplerOptions): TemperedAnswer {
  checked(problem, options);
  const { guesses, moves, seed, least = -Infinity } = options;
  const n = problem.unknowns.length;
  const further = new Float64Array(guesses);
  const logWeights = new Float64Array(guesses);
  const weights = new Float64Array(guesses);
  const told: Step[] = [];
  const beginning = begun(problem, guesses, seed);
  const { points, logLikelihood } = beginning;
  let { logEvidence } = beginning;
  let round = 1;
  for (const stage of problem.further === undefined ? [0] : [0, 1]) {
    const counts = stage === 0 ? logLikelihood : further;
    if (stage === 1 && logEvidence > least) {
      askFurther(problem, points, further);
      const left = further.reduce((count, log) => count + (log > -Infinity ? 1 : 0), 0);
      if (left < PAST * guesses) return temperedAnswer(asOne(problem), options);
    }
    for (let power = stage === 0 ? beginning.power : 0; power < 1 && logEvidence > least; round++) {
      const next = nextPower(counts, power);
      for (let i = 0; i < guesses; i++) logWeights[i] = (next - power) * counts[i]!;
      logEvidence += normalised(logWeights, weights);
      if (!(logEvidence > least)) break; // No guess is possible, or none that is worth it: the draws stay as they are.
      const effective = effectiveSize(weights);
      take(points, [logLikelihood, further], resampled(weights, randomBits(seed, round, -1)()), n);
      const last = next === 1 && (stage === 1 || problem.further === undefined);
      const many = last ? AT_LAST * moves : moves;
      const accepted = moveAbout(problem, {
        points,
        logLikelihood,
        further,
        others: points.slice(),
        power: stage === 0 ? next : 1,
        furtherPower: stage === 0 ? 0 : next,
        moves: many,
        seed,
        round,
      });
      told.push({ power: stage + next, effective, accepted: accepted / (guesses * many) });
      power = next;
    }
  }
  weights.fill(1 / guesses);
  const values = new Float64Array(guesses * n);
  const row = new Float64Array(n);
  for (let i = 0; i < guesses; i++) {
    values.set(valuesOf(problem, points, i * n, row), i * n);
    logLikelihood[i]! += further[i]!;
  }
  return { values, count: guesses, dimensions: n, weights, logLikelihood, logEvidence, steps: told };
}

/** The same problem with all its evidence asked at once. */
const asOne = (problem: Problem): Problem => ({
  unknowns: problem.unknowns,
  logLikelihood: (values) => wholeLikelihood(problem, values),
});

function checked({ unknowns }: Problem, { guesses, moves, seed }: SamplerOptions): void {
  for (const { name, belief } of unknowns) checkBelief(name, belief);
  if (!(Number.isInteger(guesses) && guesses >= 100))
    impossible("guesses", guesses, "a whole number, 100 or more");
  if (!(Number.isInteger(moves) && moves >= 1)) impossible("moves", moves, "a whole number, 1 or more");
  if (!(Number.isInteger(seed) && seed >= 0)) impossible("seed", seed, "a whole number, 0 or more");
}

/** Rows taken from where resampling says, in place. */
function take(points: Float64Array, likelihoods: readonly Float64Array[], from: Int32Array, n: number): void {
  const old = points.slice();
  for (let i = 0; i < from.length; i++)
    for (let j = 0; j < n; j++) points[i * n + j] = old[from[i]! * n + j]!;
  for (const likelihood of likelihoods) {
    const before = likelihood.slice();
    for (let i = 0; i < from.length; i++) likelihood[i] = before[from[i]!]!;
  }
}
