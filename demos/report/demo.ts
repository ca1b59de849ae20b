// The demo from the command line to the files.

import { planOf } from "../../src/inputs/plan.ts";
import { argumentsFrom, usage, type Asked } from "./arguments.ts";
import { deliver, obey } from "./command.ts";
import { computeInThread } from "./in-thread.ts";
import { loadCase } from "./load-case.ts";
import { progressBar } from "./progress-bar.ts";

/** Runs what the words ask for; returns the exit code. */
export const demo = (words: readonly string[], calledOff: AbortSignal): Promise<number> =>
  obey(
    {
      usage,
      understand: argumentsFrom,
      work: run,
      besides: ({ trace }, { faults }) => {
        if (trace === null) return null;
        if (faults.some(({ path }) => path.startsWith("week.days")))
          return "The trace is driven on every trip of the case: a longer one needs a case whose trips start further apart.";
        return faults.some(({ expected }) => /mergeRepeats|bridgeGaps/.test(expected))
          ? 'On the command line mergeRepeats is --merge-repeats, and bridgeGaps --bridge-gaps "20 s", or how long you will have it.'
          : null;
      },
    },
    words,
    calledOff,
  );

async function run({ caseFile, trace, mend, out, system }: Asked, calledOff: AbortSignal): Promise<void> {
  const loaded = loadCase({ caseFile, trace, mend });
  const bar = progressBar(loaded.given, process.stderr);
  const computed = await computeInThread(planOf(loaded.given), (come) => bar.tell(come), calledOff).finally(
    () => bar.clear(),
  );
  // Drawing takes its time to load: what is wrong with the input is told before that.
  const { filesOf, reportOf, screenText } = await import("./report.ts");
  const report = reportOf(loaded, computed, system);
  await deliver(out, filesOf(report, system), screenText(report, system), calledOff);
}
