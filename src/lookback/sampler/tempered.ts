// The answer by guesses: drawn from what was believed, led to what the evidence says in steps that each keep half of them.

import { checkBelief, coordinateAt } from "../../chance/belief.ts";
import { randomBits } from "../../chance/random.ts";
import { impossible } from "../../errors.ts";
import { moveAbout, valuesOf, type Moving } from "./moves.ts";
import type { Draws, Problem } from "./problem.ts";
import { spreadTriangle } from "./spread-matrix.ts";
import { effectiveSize, normalised, resampled } from "./weights.ts";

export interface SamplerOptions {
  /** Guesses, 100 or more. */
  readonly guesses: number;
  /** Moves of each guess after every step. */
  readonly moves: number;
  /** A whole number from 0: the same gives the same answer. */
  readonly seed: number;
}

/** A step on the way: the power of the likelihood that was reached, what the weights were worth, and the share of moves accepted. */
export interface Step {
  readonly power: number;
  readonly effective: number;
  readonly accepted: number;
}

export interface TemperedAnswer extends Draws {
  readonly steps: readonly Step[];
}

/** What a step takes: the guesses in coordinates, their likelihoods, and how they are to be moved. */
export type Mover = (moving: Omit<Moving, "first">) => number | Promise<number>;

/** Share of the guesses' worth that a step keeps. */
const KEEPS = 0.5;

/** Draws of what was believed: one guess a row, in coordinates, and their likelihoods. */
export function firstGuesses(
  problem: Problem,
  count: number,
  seed: number,
  first = 0,
): { points: Float64Array; logLikelihood: Float64Array } {
  const n = problem.unknowns.length;
  const points = new Float64Array(count * n);
  const logLikelihood = new Float64Array(count);
  const values = new Float64Array(n);
  for (let i = 0; i < count; i++) {
    const random = randomBits(seed, 0, first + i);
    for (let j = 0; j < n; j++)
      points[i * n + j] = coordinateAt(problem.unknowns[j]!.belief, inside(random()));
    logLikelihood[i] = problem.logLikelihood(valuesOf(problem, points, i * n, values));
  }
  return { points, logLikelihood };
}

/** Off the ends, where a normal number would be infinite. */
const inside = (u: number): number => u + 2 ** -33;

/** The next power: the one at which the weights are worth half the guesses, or 1 if they are then worth more. */
export function nextPower(logLikelihood: Float64Array, power: number): number {
  const weights = new Float64Array(logLikelihood.length);
  const worth = (next: number): number => {
    for (let i = 0; i < weights.length; i++) weights[i] = (next - power) * logLikelihood[i]!;
    return normalised(weights, weights) === -Infinity ? 0 : effectiveSize(weights);
  };
  const enough = KEEPS * logLikelihood.length;
  if (worth(1) >= enough) return 1;
  let [low, high] = [power, 1];
  for (let i = 0; i < 60 && high - low > 1e-12 * (1 - power); i++) {
    const middle = 0.5 * (low + high);
    if (worth(middle) >= enough) low = middle;
    else high = middle;
  }
  // A step that could not leave its place would never end.
  return low > power ? low : high;
}

/**
 * The answer of a problem by tempered sequential Monte Carlo: draws of the belief, weighed by the likelihood to a rising power, resampled
 * and moved about. The same seed gives the same numbers, whatever moves the guesses; `told` hears of every step.
 * Errors: fewer than 100 guesses, moves under 1, a belief that says nothing.
 * Sources: Del Moral, Doucet and Jasra, Sequential Monte Carlo samplers, 2006; Chopin, A sequential particle filter method for static
 * models, 2002; the rule for the next power Zhou, Johansen and Aston, 2016 (recalled).
 */
export function temperedAnswer(problem: Problem, options: SamplerOptions): TemperedAnswer {
  checked(problem, options);
  const { points, logLikelihood } = firstGuesses(problem, options.guesses, options.seed);
  const walk = steps(problem, options, points, logLikelihood);
  let step = walk.next();
  while (step.done !== true) step = walk.next(moveAbout(problem, { ...step.value, first: 0 }));
  return step.value;
}

/** The same with guesses drawn and moved elsewhere, such as by workers; `told` hears of every step and may throw to call it off. */
export async function temperedAnswerBy(
  problem: Problem,
  options: SamplerOptions,
  start: () => Promise<{ points: Float64Array; logLikelihood: Float64Array }>,
  move: (moving: Omit<Moving, "first">) => Promise<number>,
  told?: (power: number) => void,
): Promise<TemperedAnswer> {
  checked(problem, options);
  const { points, logLikelihood } = await start();
  const walk = steps(problem, options, points, logLikelihood);
  let step = walk.next();
  while (step.done !== true) {
    told?.(step.value.power);
    step = walk.next(await move(step.value));
  }
  return step.value;
}

function checked({ unknowns }: Problem, { guesses, moves, seed }: SamplerOptions): void {
  for (const { name, belief } of unknowns) checkBelief(name, belief);
  if (!(Number.isInteger(guesses) && guesses >= 100))
    impossible("guesses", guesses, "a whole number, 100 or more");
  if (!(Number.isInteger(moves) && moves >= 1)) impossible("moves", moves, "a whole number, 1 or more");
  if (!(Number.isInteger(seed) && seed >= 0)) impossible("seed", seed, "a whole number, 0 or more");
}

/** The steps, told apart from who moves the guesses: yields what is to be moved, is given how many moves were accepted. */
function* steps(
  problem: Problem,
  { guesses, moves, seed }: SamplerOptions,
  points: Float64Array,
  logLikelihood: Float64Array,
): Generator<Omit<Moving, "first">, TemperedAnswer, number> {
  const n = problem.unknowns.length;
  const logWeights = new Float64Array(guesses);
  const weights = new Float64Array(guesses);
  const told: Step[] = [];
  let logEvidence = 0;
  for (let power = 0, round = 1; power < 1; round++) {
    const next = nextPower(logLikelihood, power);
    for (let i = 0; i < guesses; i++) logWeights[i] = (next - power) * logLikelihood[i]!;
    logEvidence += normalised(logWeights, weights);
    if (logEvidence === -Infinity) break; // No guess is possible: the draws stay what was believed.
    const triangle = spreadTriangle(points, weights, n);
    const effective = effectiveSize(weights);
    const from = resampled(weights, randomBits(seed, round, -1)());
    take(points, logLikelihood, from, n);
    const accepted = yield { points, logLikelihood, triangle, power: next, moves, seed, round };
    told.push({ power: next, effective, accepted: accepted / (guesses * moves) });
    power = next;
  }
  weights.fill(1 / guesses);
  const values = new Float64Array(guesses * n);
  const row = new Float64Array(n);
  for (let i = 0; i < guesses; i++) values.set(valuesOf(problem, points, i * n, row), i * n);
  return { values, count: guesses, dimensions: n, weights, logLikelihood, logEvidence, steps: told };
}

/** Rows taken from where resampling says, in place. */
function take(points: Float64Array, logLikelihood: Float64Array, from: Int32Array, n: number): void {
  const [oldPoints, oldLikelihood] = [points.slice(), logLikelihood.slice()];
  for (let i = 0; i < from.length; i++) {
    const row = from[i]! * n;
    for (let j = 0; j < n; j++) points[i * n + j] = oldPoints[row + j]!;
    logLikelihood[i] = oldLikelihood[from[i]!]!;
  }
}
