// A few guesses of every problem before any that counts. An engine that compiles what runs often compiles it for what it has seen; a kind of guess
// that it has not seen then makes it throw that away and begin anew, for each kind in turn.

import { believed } from "./first.ts";
import type { Draws, Problem } from "./problem.ts";
import { valuesOf } from "./straight.ts";

/** Guesses of each problem: few enough that nothing is compiled yet. */
const FEW = 4;
/** Their seed, which no answer depends on. */
const SEED = 0;

/** Asks a problem all that a sampler asks it, of a few guesses; nothing comes of it but those. */
export function warmUp(problem: Problem): Pick<Draws, "values" | "count" | "dimensions"> {
  const { unknowns, atMost, logLikelihood, further } = problem;
  const n = unknowns.length;
  const points = believed(problem, FEW, SEED);
  const values = new Float64Array(FEW * n);
  const guess = new Float64Array(n);
  for (let i = 0; i < FEW; i++) {
    values.set(valuesOf(problem, points, i * n, guess), i * n);
    atMost?.(guess);
    logLikelihood(guess);
    further?.(guess);
  }
  return { values, count: FEW, dimensions: n };
}
