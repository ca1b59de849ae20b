// Explanations weighed against each other by how well each explains the evidence.

import { logSum } from "../chance/terms.ts";
import type { Explanation } from "./causes.ts";
import { columnsOf } from "./foretell.ts";
import type { Posterior, Run } from "./posterior.ts";
import type { Bench } from "./question.ts";
import type { Answered, Task } from "./workbench.ts";

/** A task with its answer; `explanation` of the task is its place among the explanations that are weighed. */
export interface Done {
  readonly task: Task;
  readonly answered: Answered;
}

/** Logarithm of the mean evidence of runs, each by its guesses. */
function meanEvidence(runs: readonly Run[]): number {
  if (runs.length === 0) return -Infinity;
  const all = runs.reduce((sum, { answer }) => sum + answer.count, 0);
  return logSum(runs.map(({ answer }) => answer.logEvidence + Math.log(answer.count / all)));
}

/** Every explanation with its runs and its share after the evidence. */
export function weigh(bench: Bench, explanations: readonly Explanation[], done: readonly Done[]): Posterior {
  const all = explanations.map((explanation, i) => {
    const runs = done
      .filter(({ task }) => task.explanation === i)
      .map(({ task: { seed }, answered }): Run => ({ seed, ...answered }));
    return { explanation, runs, logEvidence: meanEvidence(runs) };
  });
  const logs = all.map(({ explanation, logEvidence }) => Math.log(explanation.believed) + logEvidence);
  const sum = logSum(logs);
  return {
    bench,
    columns: columnsOf(bench),
    conflicts: [],
    walked: [],
    weighed: all.map((one, i) => ({
      ...one,
      share: sum === -Infinity ? one.explanation.believed : Math.exp(logs[i]! - sum),
    })),
  };
}
