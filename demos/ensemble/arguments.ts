// What the user asked for on the command line.

import { parseArgs } from "node:util";
import type { UnitSystem } from "../../src/units/show.ts";
import { demoCase } from "../report/arguments.ts";

export interface Asked {
  readonly caseFile: string;
  readonly members: number;
  readonly seed: number;
  readonly workers: number | null;
  /** Parts of the case that are varied; null for all. */
  readonly only: readonly string[] | null;
  /** Rows of a Sobol design; 0 for none. */
  readonly sobol: number;
  readonly out: string;
  readonly system: UnitSystem;
}

export const usage = `npm run ensemble                              runs the invented parcel van over all that is uncertain in it
npm run ensemble -- CASE.json                 runs a case of your own
accepted besides: --members N (default 50), --seed S (default 1), --workers W (default: all cores),
  --only build,leak.creepTime (parts of the case that vary; default: every number with a range),
  --sobol ROWS (Sobol indices besides, at ROWS times as many histories as inputs, and two more),
  --out DIR (default out/ensemble), --us (default) or --si for the units that come first, --help`;

/** What was asked for, or null for help. Throws an ordinary error whose message says what is wrong. */
export function argumentsFrom(words: readonly string[]): Asked | null {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      members: { type: "string", default: "50" },
      seed: { type: "string", default: "1" },
      workers: { type: "string" },
      only: { type: "string" },
      sobol: { type: "string", default: "0" },
      out: { type: "string", default: "out/ensemble" },
      us: { type: "boolean", default: false },
      si: { type: "boolean", default: false },
      help: { type: "boolean", short: "h", default: false },
    },
  });
  if (values.help) return null;
  if (positionals.length > 1) throw new Error(`One case at a time, not ${positionals.join(", ")}.`);
  if (values.us && values.si) throw new Error("Either --us or --si, not both.");
  if (values.out === "") throw new Error("--out needs the name of a folder.");
  const rows = whole("sobol", values.sobol, 0);
  if (rows === 1) throw new Error("--sobol needs 2 rows or more.");
  return {
    caseFile: positionals[0] ?? demoCase,
    members: whole("members", values.members, 1),
    seed: whole("seed", values.seed, 0),
    workers: values.workers === undefined ? null : whole("workers", values.workers, 1),
    only: values.only === undefined ? null : values.only.split(",").map((part) => part.trim()),
    sobol: rows,
    out: values.out,
    system: values.si ? "SI" : "US",
  };
}

function whole(name: string, text: string, least: number): number {
  const value = Number(text);
  if (text.trim() === "" || !Number.isSafeInteger(value) || value < least)
    throw new Error(`--${name} needs a whole number, ${least} or more, not "${text}".`);
  return value;
}
