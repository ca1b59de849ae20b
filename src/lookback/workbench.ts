// What a pair of hands does: it is told the visit once, and then makes guesses for one explanation after another, or walks one trip by trip.

import type { Prepared } from "../duty/prepared.ts";
import { simulate, type ClutchFate } from "../history/simulate.ts";
import { explanationsOf, type Beliefs, type Explanation } from "./causes.ts";
import { walkOfGuess } from "./course.ts";
import { foretell } from "./foretell.ts";
import { benchOf, guessOf, problemOf, type Bench } from "./question.ts";
import { temperedAnswer, type SamplerOptions, type TemperedAnswer } from "./sampler/tempered.ts";
import { warmUp } from "./sampler/warm-up.ts";
import type { Shown } from "./shown.ts";
import type { Visit } from "./visit.ts";

/** What comes first. */
export interface Told {
  readonly visit: Visit;
  /** The week that is prepared, or that it is the one of the visit before. */
  readonly prepared: Prepared | "as before";
  readonly shown: Shown;
  readonly beliefs: Beliefs;
}

/** One task: guesses for an explanation by its place among all, with what they foretell. */
export interface Task extends SamplerOptions {
  readonly explanation: number;
  readonly foretells: boolean;
  /** Places of the only evidence that counts; all of it when missing. */
  readonly only?: readonly number[];
}

export interface Answered {
  readonly answer: TemperedAnswer;
  /** Rows of what each guess foretells; empty when not asked. */
  readonly foretold: Float64Array;
}

/** Another task: a guess walked trip by trip to the visit; answered with its clutches. */
export interface Walk {
  readonly explanation: number;
  readonly values: Float64Array;
}

interface Known {
  readonly bench: Bench;
  readonly explanations: readonly Explanation[];
}

/** Answers what it is told of a visit with nothing, and every task that follows; told of another visit it begins anew. */
export function workbench(): (message: unknown) => Answered | readonly ClutchFate[] | null {
  let known: Known | undefined;
  return (message) => {
    if (known !== undefined && !isTold(message))
      return isWalk(message) ? walked(known, message) : guessed(known, message as Task);
    const { visit, prepared, shown, beliefs } = message as Told;
    const bench = benchOf(visit, prepared === "as before" ? known!.bench.prepared : prepared, shown);
    known = { bench, explanations: explanationsOf(visit, beliefs) };
    for (const explanation of known.explanations)
      foretell(bench, explanation, warmUp(problemOf(bench, explanation)));
    return null;
  };
}

const isTold = (message: unknown): message is Told => "visit" in (message as object);
const isWalk = (message: unknown): message is Walk => "values" in (message as object);

function guessed(
  { bench, explanations }: Known,
  { explanation: which, foretells, only, ...options }: Task,
): Answered {
  const explanation = explanations[which]!;
  const evidence = only?.map((i) => bench.visit.evidence[i]!);
  const answer = temperedAnswer(problemOf(bench, explanation, evidence), options);
  return { answer, foretold: foretells ? foretell(bench, explanation, answer) : new Float64Array(0) };
}

function walked(
  { bench: { visit }, explanations }: Known,
  { explanation, values }: Walk,
): readonly ClutchFate[] {
  return simulate(walkOfGuess(visit, guessOf(visit, explanations[explanation]!, values))).clutches;
}
