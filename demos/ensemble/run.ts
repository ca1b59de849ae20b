// From the command line to the files. Bad input is told, one line a fault, and ends with 2; nothing is written then.

import { join, resolve } from "node:path";
import { setImmediate } from "node:timers/promises";
import { ensemble, type Working } from "../../src/ensemble/ensemble.ts";
import { varianceStudy } from "../../src/ensemble/variance.ts";
import { faultText, isCoded } from "../../src/errors.ts";
import { loadCase } from "../report/load-case.ts";
import { whyNot, writeFolder } from "../report/write-folder.ts";
import { argumentsFrom, usage, type Asked } from "./arguments.ts";
import { memberBar } from "./bar.ts";

const BAD_INPUT = 2;
const CALLED_OFF = 130;

/** Runs what the words ask for; returns the exit code. */
export async function run(words: readonly string[], calledOff: AbortSignal): Promise<number> {
  let asked: Asked | null;
  try {
    asked = argumentsFrom(words);
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error);
    console.error(`${says.replace(/\. To specify a positional[^]*$/, ".")}\n\n${usage}`);
    return BAD_INPUT;
  }
  if (asked === null) {
    console.log(usage);
    return 0;
  }
  const objection = whyNot(asked.out);
  if (objection !== null) {
    console.error(objection);
    return BAD_INPUT;
  }
  try {
    await runAsked(asked, calledOff);
    return 0;
  } catch (error) {
    if (calledOff.aborted) {
      console.error("Called off; nothing was written.");
      return CALLED_OFF;
    }
    if (!isCoded(error)) throw error;
    console.error(error.faults.map(faultText).join("\n"));
    return BAD_INPUT;
  }
}

async function runAsked(asked: Asked, calledOff: AbortSignal): Promise<void> {
  const { caseFile, members, seed, workers, only, sobol, out, system } = asked;
  const loaded = loadCase({ caseFile, trace: null });
  console.error(`Running "${loaded.given.name}" ${members} times and once as written. Ctrl-C calls it off.`);
  const working = async <T>(work: (how: Working) => Promise<T>): Promise<T> => {
    const bar = memberBar(process.stderr, () => performance.now());
    const onProgress = (done: number, of: number) => bar.tell(done, of);
    return work({ ...(workers === null ? {} : { workers }), onProgress, signal: calledOff }).finally(() =>
      bar.clear(),
    );
  };
  const varying = only === null ? {} : { only };
  const result = await working((how) => ensemble(loaded.data, { ...varying, ...how, members, seed }));
  const study =
    sobol === 0
      ? null
      : await working((how) => varianceStudy(loaded.data, { ...varying, ...how, rows: sobol, seed }));
  // Drawing takes its time to load: what is wrong with the input is told before that.
  const { filesOf, reportOf, screenText } = await import("./report.ts");
  const report = reportOf(loaded, result, study);
  const files = filesOf(report, system);
  await setImmediate(); // a Ctrl-C pressed while the pictures were drawn is heard here
  calledOff.throwIfAborted();
  writeFolder(out, files);
  console.log(screenText(report, system));
  console.log(`Written: ${join(resolve(out), "report.html")} and ${files.size - 1} pictures beside it.`);
}
