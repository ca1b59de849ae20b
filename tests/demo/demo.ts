// The demo as a user starts it: another process, its exit code and what it prints.
import { spawn } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { caseData } from "../../src/inputs/files.ts";
import { caseFile, referenceData } from "../inputs/shipped.ts";

export const root = join(import.meta.dirname, "../..");

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A fresh folder of this test's own. */
export const freshFolder = (): string => mkdtempSync(join(tmpdir(), "sumpfall-demo-"));

/** Sees what a program says on standard error, and may end it with a signal. */
export type Meanwhile = (said: string, end: (signal: NodeJS.Signals) => void) => void;

/** Runs a program of demos/ as npm does; `before` are words for node itself. */
export function runProgram(
  program: "run" | "ensemble" | "look-back",
  words: readonly string[],
  meanwhile: Meanwhile = () => {},
  before: readonly string[] = [],
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...before, `demos/${program}.mjs`, ...words], { cwd: root });
    let [out, err] = ["", ""];
    child.stdout.on("data", (part: Buffer) => (out += part.toString()));
    child.stderr.on("data", (part: Buffer) => {
      err += part.toString();
      meanwhile(err, (signal) => child.kill(signal));
    });
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
  });
}

/** Runs the demo. */
export const runDemo = (words: readonly string[], meanwhile?: Meanwhile): Promise<Ran> =>
  runProgram("run", words, meanwhile);

type Data = Record<string, unknown>;

/** A short case in a folder: the demo's van for three days, with some places changed as in `changed` of shipped.ts. */
export function shortCase(folder: string, changes: Data = {}): string {
  const build = relative(folder, join(referenceData, "parcel-van/build.json"));
  const data = {
    ...(caseData(caseFile("demo")) as Data),
    build,
    span: "3 days",
    opens: { after: "0 s" },
    ...changes,
  };
  const path = join(folder, "short.json");
  writeFileSync(path, JSON.stringify(data));
  return path;
}
