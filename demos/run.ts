// `npm run demo`: runs a case from full to its end, prints what happened, and writes the report to a folder.

import { join, resolve } from "node:path";
import { setImmediate } from "node:timers/promises";
import { faultText, isCoded } from "../src/errors.ts";
import { planOf } from "../src/inputs/plan.ts";
import { argumentsFrom, usage, type Asked } from "./report/arguments.ts";
import { computeInThread } from "./report/in-thread.ts";
import { loadCase } from "./report/load-case.ts";
import { progressBar } from "./report/progress-bar.ts";
import { filesOf, reportOf, screenText } from "./report/report.ts";
import { whyNot, writeFolder } from "./report/write-folder.ts";

const BAD_INPUT = 2;
const CALLED_OFF = 130;

const calledOff = new AbortController();
const callOff = () => calledOff.abort();
process.once("SIGINT", callOff);
process.once("SIGTERM", callOff);

process.exitCode = await main(process.argv.slice(2));

async function main(words: readonly string[]): Promise<number> {
  const asked = understood(words);
  if (typeof asked === "number") return asked;
  try {
    await run(asked);
    return 0;
  } catch (error) {
    if (calledOff.signal.aborted) {
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

async function run({ caseFile, trace, out, system }: Asked): Promise<void> {
  const loaded = loadCase({ caseFile, trace });
  const bar = progressBar(loaded.given, process.stderr);
  const computed = await computeInThread(
    planOf(loaded.given),
    (come) => bar.tell(come),
    calledOff.signal,
  ).finally(() => bar.clear());
  const report = reportOf(loaded, computed, system);
  const files = filesOf(report, system);
  await setImmediate(); // a Ctrl-C pressed while the pictures were drawn is heard here
  calledOff.signal.throwIfAborted();
  writeFolder(out, files);
  console.log(screenText(report, system));
  console.log(`Written: ${join(resolve(out), "report.html")} and ${files.size - 1} pictures beside it.`);
}
