// The demo from the command line to the files. Bad input is told, one line a fault, and ends with 2; nothing is written then.

import { join, resolve } from "node:path";
import { setImmediate } from "node:timers/promises";
import { faultText, isCoded } from "../../src/errors.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { argumentsFrom, usage, type Asked } from "./arguments.ts";
import { computeInThread } from "./in-thread.ts";
import { loadCase } from "./load-case.ts";
import { progressBar } from "./progress-bar.ts";
import { whyNot, writeFolder } from "./write-folder.ts";

const BAD_INPUT = 2;
const CALLED_OFF = 130;

/** Runs what the words ask for; returns the exit code. */
export async function demo(words: readonly string[], calledOff: AbortSignal): Promise<number> {
  const asked = understood(words);
  if (typeof asked === "number") return asked;
  try {
    await run(asked, calledOff);
    return 0;
  } catch (error) {
    if (calledOff.aborted) {
      console.error("Called off; nothing was written.");
      return CALLED_OFF;
    }
    if (!isCoded(error)) throw error;
    console.error(error.faults.map(faultText).join("\n"));
    if (asked.trace !== null && error.faults.some(({ path }) => path.startsWith("week.days")))
      console.error(
        "The trace is driven on every trip of the case: a longer one needs a case whose trips start further apart.",
      );
    return BAD_INPUT;
  }
}

function understood(words: readonly string[]): Asked | number {
  try {
    const asked = argumentsFrom(words);
    if (asked === null) {
      console.log(usage);
      return 0;
    }
    const objection = whyNot(asked.out);
    if (objection === null) return asked;
    console.error(objection);
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error);
    console.error(`${says.replace(/\. To specify a positional[^]*$/, ".")}\n\n${usage}`);
  }
  return BAD_INPUT;
}

async function run({ caseFile, trace, out, system }: Asked, calledOff: AbortSignal): Promise<void> {
  const loaded = loadCase({ caseFile, trace });
  const bar = progressBar(loaded.given, process.stderr);
  const computed = await computeInThread(planOf(loaded.given), (come) => bar.tell(come), calledOff).finally(
    () => bar.clear(),
  );
  // Drawing takes its time to load: what is wrong with the input is told before that.
  const { filesOf, reportOf, screenText } = await import("./report.ts");
  const report = reportOf(loaded, computed, system);
  const files = filesOf(report, system);
  await setImmediate(); // a Ctrl-C pressed while the pictures were drawn is heard here
  calledOff.throwIfAborted();
  writeFolder(out, files);
  console.log(screenText(report, system));
  console.log(`Written: ${join(resolve(out), "report.html")} and ${files.size - 1} pictures beside it.`);
}
