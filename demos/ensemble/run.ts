// The ensemble from the command line to the files.

import { ensemble, type Working } from "../../src/ensemble/ensemble.ts";
import { varianceStudy } from "../../src/ensemble/variance.ts";
import { deliver, obey } from "../report/command.ts";
import { loadCase } from "../report/load-case.ts";
import { argumentsFrom, usage, type Asked } from "./arguments.ts";
import { memberBar } from "./bar.ts";

/** Runs what the words ask for; returns the exit code. */
export const run = (words: readonly string[], calledOff: AbortSignal): Promise<number> =>
  obey({ usage, understand: argumentsFrom, work: runAsked }, words, calledOff);

async function runAsked(asked: Asked, calledOff: AbortSignal): Promise<void> {
  const { caseFile, members, seed, workers, only, sobol, out, system } = asked;
  const loaded = loadCase({ caseFile, trace: null });
  console.error(`Running "${loaded.given.name}" ${members} times and once as written. Ctrl-C calls it off.`);
  const working = async <T>(work: (how: Working) => Promise<T>): Promise<T> => {
    const bar = memberBar(process.stderr, () => performance.now());
    if (process.stderr.isTTY) bar.tell(0, members + 1);
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
  await deliver(out, filesOf(report, system), screenText(report, system), calledOff);
}
