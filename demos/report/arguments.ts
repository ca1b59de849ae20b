// What the user asked for on the command line.

import { join } from "node:path";
import { parseArgs } from "node:util";
import type { Mending } from "../../src/driving/mend.ts";
import { parseQuantity } from "../../src/units/parse.ts";
import { commonFrom, commonOptions, type Common } from "./command.ts";

export interface Asked extends Common {
  /** The drive that takes the place of the case's trips. */
  readonly trace: string | null;
  /** What of that drive may be mended. */
  readonly mend: Mending;
}

/** The case that is run when none is named. */
export const demoCase = join(import.meta.dirname, "../../reference-data/cases/demo.json");

export const usage = `npm run demo                                 runs the invented parcel van from full to burnt
npm run demo -- CASE.json                    runs a case of your own, or another of reference-data/cases (van and taxi)
npm run demo -- --trace drive.csv            drives every trip of the case along your own trace
  what of it may be mended, and is told then:  --merge-repeats (rows of one time become one, their mean),
  --bridge-gaps "20 s" (gaps up to so long while it moves become straight lines), --lead-in "1 m/s2" (a drive that
  begins at a speed is brought up to it from standstill)
accepted besides: --out DIR (default out), --us (default) or --si for the units that come first, --help`;

/** What was asked for, or null for help. Throws an ordinary error whose message says what is wrong. */
export function argumentsFrom(words: readonly string[]): Asked | null {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      trace: { type: "string" },
      "merge-repeats": { type: "boolean", default: false },
      "bridge-gaps": { type: "string" },
      "lead-in": { type: "string" },
      ...commonOptions("out"),
    },
  });
  if (values.help) return null;
  const mend: Mending = {
    ...(values["merge-repeats"] ? { mergeRepeats: true } : {}),
    ...amount("bridgeGaps", "time", "--bridge-gaps", values["bridge-gaps"], '"20 s"'),
    ...amount("leadIn", "acceleration", "--lead-in", values["lead-in"], '"1 m/s2"'),
  };
  if (values.trace === undefined && Object.keys(mend).length > 0)
    throw new Error(
      "--merge-repeats, --bridge-gaps and --lead-in mend the drive of --trace; the trips of a case name mergeRepeats, bridgeGaps and leadIn in its file.",
    );
  return { ...commonFrom(positionals, values, demoCase), trace: values.trace ?? null, mend };
}

/** A number above 0 with its unit, in SI under its key; nothing where it was not given. */
function amount(
  key: keyof Mending,
  kind: "time" | "acceleration",
  option: string,
  text: string | undefined,
  example: string,
): Mending {
  if (text === undefined) return {};
  const read = parseQuantity(kind, text);
  if ("value" in read && read.value > 0) return { [key]: read.value };
  const what = kind === "time" ? "a time" : "an acceleration";
  throw new Error(
    `${option} needs ${what} above 0 with its unit, such as ${example}, not ${"wrong" in read ? read.wrong : JSON.stringify(text)}.`,
  );
}
