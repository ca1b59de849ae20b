// What the user asked for on the command line.

import { join } from "node:path";
import { parseArgs } from "node:util";
import { commonFrom, commonOptions, type Common } from "../report/command.ts";

export interface Asked extends Common {
  readonly guesses: number;
  /** Null for the one that the visit's file says. */
  readonly seed: number | null;
  /** Guesses that are walked trip by trip, to see what became of the clutches. */
  readonly walks: number;
  readonly workers: number | null;
  /** Whether it is told how likely each earlier look should have found the leak. */
  readonly looks: boolean;
}

/** The visit that is looked back from when none is named. */
export const demoVisit = join(import.meta.dirname, "../../reference-data/visits/seep-behind-a-shield.json");

export const usage = `npm run lookback                              an invented visit: a slow seep behind a shield
npm run lookback -- VISIT.json                a visit of your own, or another of reference-data/visits
accepted besides: --guesses N (default 8000), --seed S (default: the file's), --walks W (default 6: so many guesses are
  driven trip by trip, to see what became of the clutches), --workers N (default: all cores),
  --looks (tell as well how likely each earlier look should have found the leak),
  --out DIR (default out/look-back; prepared weeks are kept in prepared-weeks beside DIR, about 10 MB each, and may be
  deleted), --units us|si, or --us (default) or --si, for the units that come first, --help`;

/** What was asked for, or null for help. Throws an ordinary error whose message says what is wrong. */
export function argumentsFrom(words: readonly string[]): Asked | null {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      guesses: { type: "string", default: "8000" },
      seed: { type: "string" },
      walks: { type: "string", default: "6" },
      workers: { type: "string" },
      looks: { type: "boolean", default: false },
      units: { type: "string" },
      ...commonOptions("out/look-back"),
    },
  });
  if (values.help) return null;
  const units = values.units?.toLowerCase();
  if (units !== undefined && units !== "us" && units !== "si")
    throw new Error(`--units needs us or si, not "${values.units!}".`);
  const common = commonFrom(
    positionals,
    { out: values.out, us: values.us || units === "us", si: values.si || units === "si" },
    demoVisit,
  );
  return {
    ...common,
    guesses: whole("guesses", values.guesses, 1000),
    seed: values.seed === undefined ? null : whole("seed", values.seed, 0),
    walks: whole("walks", values.walks, 0),
    workers: values.workers === undefined ? null : whole("workers", values.workers, 1),
    looks: values.looks,
  };
}

function whole(name: string, text: string, least: number): number {
  const value = Number(text);
  if (text.trim() === "" || !Number.isSafeInteger(value) || value < least)
    throw new Error(`--${name} needs a whole number, ${least} or more, not "${text}".`);
  return value;
}
