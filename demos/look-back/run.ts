// The look back from the command line to the files.

import { dirname, join, resolve } from "node:path";
import { readVisitFile } from "../../src/inputs/files.ts";
import type { ReadVisit } from "../../src/inputs/visit.ts";
import { answerOf } from "../../src/lookback/answer/answer.ts";
import { comingLeaks } from "../../src/lookback/coming.ts";
import { earlyAnswer } from "../../src/lookback/early.ts";
import { lookBack } from "../../src/lookback/lookback.ts";
import { deliver, obey } from "../report/command.ts";
import { argumentsFrom, usage, type Asked } from "./arguments.ts";
import { partBar } from "./bar.ts";
import { earlyWords } from "./early-words.ts";
import { dayIn } from "./moments.ts";
import { preparedWeek } from "./prepared.ts";

/** Runs what the words ask for; returns the exit code. */
export const run = (words: readonly string[], calledOff: AbortSignal): Promise<number> =>
  obey({ usage, understand: argumentsFrom, work: runAsked }, words, calledOff);

async function runAsked(asked: Asked, calledOff: AbortSignal): Promise<void> {
  const { caseFile, guesses, walks, workers, looks, out, system } = asked;
  const read = readVisitFile(caseFile);
  const seed = asked.seed ?? read.seed;
  console.error(
    `Looking back from "${read.visit.name}", ${dayIn(read, read.clock.at)}. Ctrl-C calls it off.`,
  );
  tellEarly(read, seed);
  const { visit, beliefs } = read;
  const prepared = await inPart("Preparing the week", (onProgress) =>
    preparedWeek(visit, join(dirname(resolve(out)), "prepared-weeks"), { onProgress, signal: calledOff }),
  );
  const posterior = await inPart("Asking every explanation", (onProgress) =>
    lookBack(visit, prepared, {
      guesses,
      walks,
      seed,
      beliefs,
      onProgress,
      signal: calledOff,
      ...(workers === null ? {} : { workers }),
    }),
  );
  // Drawing takes its time to load: what is wrong with the input is told before that.
  const { filesOf, screenText } = await import("./report.ts");
  const coming = { leaks: comingLeaks(visit, prepared, { seed, beliefs }), shield: visit.shield };
  const report = { telling: { read, answer: answerOf(posterior), looks }, coming, walks, seed, guesses };
  await deliver(out, filesOf(report, system), screenText(report, system), calledOff);
}

/** One part of the work with a bar of its own. */
async function inPart<T>(says: string, work: (tell: (share: number) => void) => Promise<T>): Promise<T> {
  const bar = partBar(says, process.stderr, () => performance.now());
  return work((share) => bar.tell(share)).finally(() => bar.clear());
}

/** What is said within a second. */
function tellEarly(read: ReadVisit, seed: number): void {
  const { opened } = earlyAnswer(read.visit, seed, read.beliefs);
  const says = earlyWords(read, opened);
  if (says !== "") console.error(says);
}
