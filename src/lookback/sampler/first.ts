// Where the guesses begin: many draws of what was believed, weighed by the cheap evidence, and as many of them kept as there are guesses.

import { randomBits } from "../../chance/random.ts";
import { nextPower } from "./power.ts";
import type { Problem } from "./problem.ts";
import { straightAt, valuesOf } from "./straight.ts";
import { normalised, resampled } from "./weights.ts";

/** So many draws stand at the beginning for each guess: they are cheaper than steps, and none is another's copy. */
const AT_FIRST = 8;

/** A draw whose likelihood, to the power that is reached, is below the best one's by so much in its logarithm counts for nothing: some thousands of them weigh less than a hundred-thousandth of one guess. */
const NOTHING = 25;

/** Draws of what was believed: one a row, in coordinates. */
export function believed({ unknowns }: Problem, count: number, seed: number): Float64Array {
  const n = unknowns.length;
  const points = new Float64Array(count * n);
  for (let i = 0; i < count; i++) {
    const random = randomBits(seed, 0, i);
    for (let j = 0; j < n; j++) points[i * n + j] = straightAt(unknowns[j]!.belief, inside(random()));
  }
  return points;
}

/** Off the ends, where a normal number would be infinite. */
const inside = (u: number): number => u + 2 ** -33;

/** The guesses at the beginning: coordinates, what the cheap evidence says of them, the power to which it counts by then, and the evidence up to there. */
export interface Beginning {
  readonly points: Float64Array;
  readonly logLikelihood: Float64Array;
  readonly power: number;
  readonly logEvidence: number;
}

/** Guesses taken from many draws of the belief, at the power at which those are worth as many. */
export function begun(problem: Problem, guesses: number, seed: number): Beginning {
  const n = problem.unknowns.length;
  const count = AT_FIRST * guesses;
  const drawn = believed(problem, count, seed);
  const { log, power } = asFarAsItCounts(problem, drawn, count, guesses);
  const weights = new Float64Array(count);
  const logEvidence = normalised(
    log.map((one) => (power === 0 ? 0 : power * one)),
    weights,
  );
  const points = new Float64Array(guesses * n);
  const logLikelihood = new Float64Array(guesses);
  // No guess is possible: any will do.
  const from =
    logEvidence === -Infinity
      ? Int32Array.from({ length: guesses }, (_, i) => i)
      : resampled(weights, randomBits(seed, 0, -1)(), guesses);
  for (let i = 0; i < guesses; i++) {
    points.set(drawn.subarray(from[i]! * n, (from[i]! + 1) * n), i * n);
    logLikelihood[i] = log[from[i]!]!;
  }
  return { points, logLikelihood, power, logEvidence };
}

/**
 * What the cheap evidence says of draws, those first that may be the best, until the rest can no longer count, and the power at which they are worth `enough`. Where the power comes out lower than it was
 * taken for, more can count: that is asked too, until it no longer falls.
 */
function asFarAsItCounts(problem: Problem, points: Float64Array, count: number, enough: number) {
  const { logLikelihood, atMost } = problem;
  const n = problem.unknowns.length;
  const values = new Float64Array(n);
  const most = new Float64Array(count).fill(Infinity);
  const order = Uint32Array.from(most.keys());
  if (atMost !== undefined) {
    for (let i = 0; i < count; i++) most[i] = atMost(valuesOf(problem, points, i * n, values));
    order.sort((a, b) => most[b]! - most[a]! || a - b);
  }
  const log = new Float64Array(count).fill(-Infinity);
  let [asked, best, power] = [0, -Infinity, 1];
  for (;;) {
    for (; asked < count && !(power * (most[order[asked]!]! - best) < -NOTHING); asked++) {
      const i = order[asked]!;
      log[i] = logLikelihood(valuesOf(problem, points, i * n, values));
      best = Math.max(best, log[i]!);
    }
    const reached = nextPower(log, 0, enough);
    if (asked === count || reached >= power) return { log, power: reached };
    power = reached;
  }
}
