// What the user asked for on the command line.

import { join } from "node:path";
import { parseArgs } from "node:util";
import type { UnitSystem } from "../../src/units/show.ts";

export interface Asked {
  /** The case file, the drive that takes the place of its trips, the folder to write, whose units come first. */
  readonly caseFile: string;
  readonly trace: string | null;
  readonly out: string;
  readonly system: UnitSystem;
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
    options: {
      trace: { type: "string" },
      out: { type: "string", default: "out" },
      us: { type: "boolean", default: false },
      si: { type: "boolean", default: false },
      help: { type: "boolean", short: "h", default: false },
    },
  });
  if (values.help) return null;
  if (positionals.length > 1) throw new Error(`One case at a time, not ${positionals.join(", ")}.`);
  if (values.us && values.si) throw new Error("Either --us or --si, not both.");
  if (values.out === "") throw new Error("--out needs the name of a folder.");
  return {
    caseFile: positionals[0] ?? demoCase,
    trace: values.trace ?? null,
    out: values.out,
    system: values.si ? "SI" : "US",
  };
}
