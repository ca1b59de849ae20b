// Looking back: every explanation is asked, the evidence weighs them, and what they foretell together is the answer.

import { logSum } from "../chance/terms.ts";
import { explanationsOf, type CauseName, type Explanation } from "./causes.ts";
import { conflictsOf, type Conflict } from "./conflict.ts";
import { problemOf, type Bench } from "./question.ts";
import type { Draws } from "./sampler/problem.ts";
import { temperedAnswer, type SamplerOptions, type Step } from "./sampler/tempered.ts";

/** One explanation with what the sampler made of it. */
export interface Weighed {
  readonly explanation: Explanation;
  readonly draws: Draws;
  readonly steps: readonly Step[];
  /** Its share after the evidence. */
  readonly share: number;
}

export interface Posterior {
  readonly bench: Bench;
  readonly weighed: readonly Weighed[];
  /** Share of each cause after the evidence, the likeliest first. */
  readonly causes: readonly { readonly cause: CauseName; readonly share: number }[];
  readonly conflicts: readonly Conflict[];
  readonly trust: Trust;
}

/** Whether the numbers would come out the same again. */
export interface Trust {
  readonly word: "trust" | "run longer" | "evidence conflicts";
  /** The largest difference between two halves of the guesses, as a share of the spread. */
  readonly halves: number;
  readonly leastAccepted: number;
}

/** Guesses of the two halves differ by less than this share of the spread in an answer that may be trusted. */
const HALVES = 0.25;
const ACCEPTED = 0.05;

/** How many guesses each explanation gets: leaks that grow share most of them, what has few unknowns needs few. */
function guessesFor(explanations: readonly Explanation[], { cause }: Explanation, guesses: number): number {
  const slow = explanations.filter((other) => other.cause === "slow leak").length;
  const share = cause === "slow leak" ? 0.8 / slow : 0.2 / (explanations.length - slow);
  return Math.max(100, Math.round(guesses * share));
}

/** What the evidence makes of every explanation. The same seed gives the same numbers. */
export function lookBack(
  bench: Bench,
  options: SamplerOptions,
  explanations: readonly Explanation[] = explanationsOf(bench.visit),
): Posterior {
  const found = explanations.map((explanation, i) => ({
    explanation,
    answer: temperedAnswer(problemOf(bench, explanation), {
      ...options,
      guesses: guessesFor(explanations, explanation, options.guesses),
      seed: options.seed + 1000 * i,
    }),
  }));
  const logs = found.map(({ explanation, answer }) => Math.log(explanation.believed) + answer.logEvidence);
  const all = logSum(logs);
  const weighed = found.map(({ explanation, answer: { steps, ...draws } }, i): Weighed => ({
    explanation,
    draws,
    steps,
    share: all === -Infinity ? explanation.believed : Math.exp(logs[i]! - all),
  }));
  const conflicts = conflictsOf(bench, explanations, options.seed);
  return { bench, weighed, causes: byCause(weighed), conflicts, trust: trustIn(weighed, conflicts, all) };
}

function byCause(weighed: readonly Weighed[]) {
  const shares = new Map<CauseName, number>();
  for (const { explanation, share } of weighed)
    shares.set(explanation.cause, (shares.get(explanation.cause) ?? 0) + share);
  return [...shares].map(([cause, share]) => ({ cause, share })).sort((a, b) => b.share - a.share);
}

function trustIn(weighed: readonly Weighed[], conflicts: readonly Conflict[], all: number): Trust {
  const counts = weighed.filter(({ share }) => share > 0.05);
  const halves = Math.max(0, ...counts.map(({ draws }) => differenceOfHalves(draws)));
  const leastAccepted = Math.min(1, ...counts.flatMap(({ steps }) => steps.map(({ accepted }) => accepted)));
  const sure = halves < HALVES && leastAccepted > ACCEPTED;
  return {
    word: conflicts.length > 0 || all === -Infinity ? "evidence conflicts" : sure ? "trust" : "run longer",
    halves,
    leastAccepted,
  };
}

/** How far the means of the first and the second half of the guesses are apart, in standard deviations, the worst of the unknowns. */
function differenceOfHalves({ values, count, dimensions }: Draws): number {
  const half = count >> 1;
  let worst = 0;
  for (let j = 0; j < dimensions; j++) {
    const sums = [0, 0];
    let squares = 0;
    for (let i = 0; i < count; i++) {
      const value = values[i * dimensions + j]!;
      sums[i < half ? 0 : 1]! += value;
      squares += value * value;
    }
    const mean = (sums[0]! + sums[1]!) / count;
    const deviation = Math.sqrt(Math.max(0, squares / count - mean * mean));
    const apart = Math.abs(sums[0]! / half - sums[1]! / (count - half));
    if (deviation > 0) worst = Math.max(worst, apart / deviation);
  }
  return worst;
}
