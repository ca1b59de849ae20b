// What a pair of hands does: it is told the case once, and then runs it at one draw after another.

import { codedError, isCoded, type ErrorCode, type Fault } from "../errors.ts";
import { simulate } from "../history/simulate.ts";
import type { Case } from "../inputs/case.ts";
import { planOf } from "../inputs/plan.ts";
import { variable, type Variable } from "./members.ts";
import { outcomeOf, type Outcome } from "./outcome.ts";
import type { Varying } from "./uncertain.ts";

/** What comes first: the case as plain data, and what of it varies. */
export interface Told {
  readonly caseData: unknown;
  readonly varying: Varying;
}

/** A draw to run; null for the case as written. */
export interface Task {
  readonly values: Float64Array | null;
}

/** The outcome, what was wrong with the input, or null for a draw that contradicts itself. */
export type Answer =
  { readonly outcome: Outcome | null } | { readonly code: ErrorCode; readonly faults: readonly Fault[] };

/** A workbench: answers what it is told first with nothing, and every task with what came of it. */
export function workbench(): (message: unknown) => Answer | null {
  let given: Variable | null = null;
  return (message) => {
    try {
      if (given === null) {
        const { caseData, varying } = message as Told;
        given = variable(caseData, varying);
        return null;
      }
      const { values } = message as Task;
      const at = values === null ? given.asWritten : given.at(values);
      return { outcome: at === null ? null : run(at) };
    } catch (error) {
      if (!isCoded(error)) throw error;
      return { code: error.code, faults: error.faults }; // an error loses its faults on the way between threads
    }
  };
}

const run = (given: Case): Outcome => outcomeOf(given, simulate(planOf(given)));

/** The outcome in an answer; throws the error that it tells of. */
export function outcomeIn(answer: Answer): Outcome | null {
  if ("faults" in answer) throw codedError(answer.code, answer.faults);
  return answer.outcome;
}
