// What the user asked for on the command line.

import { join } from "node:path";
import { parseArgs } from "node:util";
import { commonFrom, commonOptions, type Common } from "./command.ts";

export interface Asked extends Common {
  /** The drive that takes the place of the case's trips. */
  readonly trace: string | null;
}

/** The case that is run when none is named. */
export const demoCase = join(import.meta.dirname, "../../reference-data/cases/demo.json");

export const usage = `npm run demo                                 runs the invented parcel van from full to burnt
npm run demo -- CASE.json                    runs a case of your own, or another of reference-data/cases (van and taxi)
npm run demo -- --trace drive.csv            drives every trip of the case along your own trace
accepted besides: --out DIR (default out), --us (default) or --si for the units that come first, --help`;

/** What was asked for, or null for help. Throws an ordinary error whose message says what is wrong. */
export function argumentsFrom(words: readonly string[]): Asked | null {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: { trace: { type: "string" }, ...commonOptions("out") },
  });
  if (values.help) return null;
  return { ...commonFrom(positionals, values, demoCase), trace: values.trace ?? null };
}
