// How far evidence may count at once: so far that the guesses stay worth enough of their number.

import { effectiveSize, normalised } from "./weights.ts";

/** Share of the guesses' worth that a step keeps. */
const KEEPS = 0.5;

/** The next power: the one at which the weights are worth so many guesses (half of them), or 1 if they are then worth more. */
export function nextPower(
  logLikelihood: Float64Array,
  power: number,
  enough = KEEPS * logLikelihood.length,
): number {
  const weights = new Float64Array(logLikelihood.length);
  const worth = (next: number): number => {
    for (let i = 0; i < weights.length; i++) weights[i] = (next - power) * logLikelihood[i]!;
    return normalised(weights, weights) === -Infinity ? 0 : effectiveSize(weights);
  };
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
