// What a pair of hands does: it is told the visit once, and then makes guesses for one explanation after another, or tells what guesses foretell.

import type { Prepared } from "../duty/prepared.ts";
import { explanationsOf, type Beliefs } from "./causes.ts";
import { foretell } from "./foretell.ts";
import { benchOf, problemOf } from "./question.ts";
import { temperedAnswer, type SamplerOptions, type TemperedAnswer } from "./sampler/tempered.ts";
import type { Shown } from "./shown.ts";
import type { Visit } from "./visit.ts";

/** What comes first. */
export interface Told {
  readonly visit: Visit;
  readonly prepared: Prepared;
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

/** Answers what it is told first with nothing, and every task with guesses. */
export function workbench(): (message: unknown) => Answered | null {
  let known:
    { bench: ReturnType<typeof benchOf>; explanations: ReturnType<typeof explanationsOf> } | undefined;
  return (message) => {
    if (known === undefined) {
      const { visit, prepared, shown, beliefs } = message as Told;
      known = { bench: benchOf(visit, prepared, shown), explanations: explanationsOf(visit, beliefs) };
      return null;
    }
    const { explanation: which, foretells, only, ...options } = message as Task;
    const { bench } = known;
    const explanation = known.explanations[which]!;
    const evidence = only?.map((i) => bench.visit.evidence[i]!);
    const answer = temperedAnswer(problemOf(bench, explanation, evidence), options);
    const { values, count } = answer;
    return {
      answer,
      foretold: foretells ? foretell(bench, explanation, values, count) : new Float64Array(0),
    };
  };
}
