// Laws used outside their range by what the guesses foretell: looked for in some of them, each of which stands for as much as any other.

import { usedByPlan, usedInBoth } from "../../duty/outside.ts";
import { outsideOf } from "../../history/outside.ts";
import { planOfGuess } from "../course.ts";
import { guessOf } from "../question.ts";
import type { Posterior } from "../posterior.ts";
import { someGuesses } from "./pool.ts";

const SOME = 40;

export function outsideIn(posterior: Posterior): string[] {
  const { visit, prepared } = posterior.bench;
  return outsideOf(
    someGuesses(posterior, SOME)
      .map(({ one, values }) =>
        usedByPlan(prepared, planOfGuess(visit, guessOf(visit, one.explanation, values))),
      )
      .reduce(usedInBoth, []),
  );
}
