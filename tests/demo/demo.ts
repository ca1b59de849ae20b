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

/** Runs the demo; `meanwhile` sees what it says on standard error and may end it with a signal. */
export function runDemo(
  words: readonly string[],
  meanwhile: (said: string, end: (signal: NodeJS.Signals) => void) => void = () => {},
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--import", "tsx", "demos/run.ts", ...words], { cwd: root });
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
