// How likely something is, in words that a customer reads with the number beside them: a word alone is read as near even.

import { impossible } from "../../errors.ts";

/** One word of the scale, for a probability up to `to`. */
interface Word {
  readonly to: number;
  readonly word: string;
}

/** Source: Intelligence Community Directive 203, Analytic Standards, 2015 (recalled but for one row). */
const scale: readonly Word[] = [
  { to: 0.05, word: "almost no chance" },
  { to: 0.2, word: "very unlikely" },
  { to: 0.45, word: "unlikely" },
  { to: 0.55, word: "roughly even" },
  { to: 0.8, word: "likely" },
  { to: 0.95, word: "very likely" },
  { to: 1, word: "almost certain" },
];

// Shares that add up to 1 may do so to a rounding.
function check(probability: number): void {
  if (!(probability >= -1e-9 && probability <= 1 + 1e-9)) impossible("probability", probability, "0 to 1");
}

/** The word for a probability from 0 to 1. */
export function likelihoodWord(probability: number): string {
  check(probability);
  return scale.find(({ to }) => probability <= to)?.word ?? "almost certain";
}

/** How often out of twenty: "in about 18 of 20 cases like this", and its ends without a false 0 or 20. */
export function outOfTwenty(probability: number): string {
  check(probability);
  const times = Math.round(20 * probability);
  if (probability < 0.01) return "in fewer than 1 of 100 cases like this";
  if (times <= 0) return "in fewer than 1 of 20 cases like this";
  if (times >= 20) return "in more than 19 of 20 cases like this";
  return `in about ${times} of 20 cases like this`;
}

/** Word and number in one phrase: "very likely (in about 18 of 20 cases like this)". */
export const likelihood = (probability: number): string =>
  // The word is that of the number beside it: about 1 of 20 is called the same wherever it stands.
  `${likelihoodWord(probability > 0.025 && probability < 0.975 ? Math.round(20 * probability) / 20 : probability)} (${outOfTwenty(probability)})`;
