// What the user asked for on the command line.

import { parseArgs } from "node:util";
import { demoCase } from "../report/arguments.ts";
import { commonFrom, commonOptions, type Common } from "../report/command.ts";

export interface Asked extends Common {
  readonly members: number;
  readonly seed: number;
  readonly workers: number | null;
  /** Parts of the case that are varied; null for all. */
  readonly only: readonly string[] | null;
  /** Rows of a Sobol design; 0 for none. */
  readonly sobol: number;
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
      ...commonOptions("out/ensemble"),
    },
  });
  if (values.help) return null;
  const rows = whole("sobol", values.sobol, 0);
  if (rows === 1) throw new Error("--sobol needs 2 rows or more.");
  return {
    ...commonFrom(positionals, values, demoCase),
    members: whole("members", values.members, 1),
    seed: whole("seed", values.seed, 0),
    workers: values.workers === undefined ? null : whole("workers", values.workers, 1),
    only: values.only === undefined ? null : values.only.split(",").map((part) => part.trim()),
    sobol: rows,
  };
}

function whole(name: string, text: string, least: number): number {
  const value = Number(text);
  if (text.trim() === "" || !Number.isSafeInteger(value) || value < least)
    throw new Error(`--${name} needs a whole number, ${least} or more, not "${text}".`);
  return value;
}
