// What the commands share from their words to their exit code.

import { setImmediate } from "node:timers/promises";
import { join, resolve } from "node:path";
import { faultsText, isCoded, type CodedError } from "../../src/errors.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { whyNot, writeFolder } from "./write-folder.ts";

const BAD_INPUT = 2;
const CALLED_OFF = 130;

/** What every command is told: the case file, the folder to write, whose units come first. */
export interface Common {
  readonly caseFile: string;
  readonly out: string;
  readonly system: UnitSystem;
}

/** The options of every command, for `parseArgs`. */
export const commonOptions = (out: string) =>
  ({
    out: { type: "string", default: out },
    us: { type: "boolean", default: false },
    si: { type: "boolean", default: false },
    help: { type: "boolean", short: "h", default: false },
  }) as const;

/** What those options said. Throws an ordinary error whose message says what is wrong. */
export function commonFrom(
  positionals: readonly string[],
  values: { readonly out: string; readonly us: boolean; readonly si: boolean },
  usual: string,
): Common {
  if (positionals.length > 1) throw new Error(`One file at a time, not ${positionals.join(", ")}.`);
  if (values.us && values.si) throw new Error("Either --us or --si, not both.");
  if (values.out === "") throw new Error("--out needs the name of a folder.");
  return { caseFile: positionals[0] ?? usual, out: values.out, system: values.si ? "SI" : "US" };
}

/** What Node says of words it cannot read, without its advice on dashes. */
const plain = (says: string): string =>
  says
    .replace(/\. To specify a positional[^]*$/, ".")
    .replace(/ argument is ambiguous\.[^]*$/, " needs a value, and none that begins with a dash.");

export interface Command<Asked extends Common> {
  readonly usage: string;
  /** What the words ask for; null for help. */
  readonly understand: (words: readonly string[]) => Asked | null;
  readonly work: (asked: Asked, calledOff: AbortSignal) => Promise<void>;
  /** What else to say about input that was refused. */
  readonly besides?: (asked: Asked, error: CodedError) => string | null;
}

/**
 * Runs a command and returns its exit code. Bad input is told, one line a fault, and ends with 2; what is called off ends with
 * 130; in both cases nothing is written.
 */
export async function obey<Asked extends Common>(
  { usage, understand, work, besides }: Command<Asked>,
  words: readonly string[],
  calledOff: AbortSignal,
): Promise<number> {
  let asked: Asked | null;
  try {
    asked = understand(words);
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error);
    console.error(`${plain(says)}\n\n${usage}`);
    return BAD_INPUT;
  }
  if (asked === null) {
    console.log(usage);
    return 0;
  }
  const objection = whyNot(asked.out);
  if (objection !== null) {
    console.error(objection);
    return BAD_INPUT;
  }
  try {
    await work(asked, calledOff);
    return 0;
  } catch (error) {
    if (calledOff.aborted) {
      console.error("Called off; nothing was written.");
      return CALLED_OFF;
    }
    if (!isCoded(error)) throw error;
    console.error(faultsText(error.faults));
    const more = besides?.(asked, error) ?? null;
    if (more !== null) console.error(more);
    return BAD_INPUT;
  }
}

/** Writes the files, prints the text and says where the files are; a Ctrl-C pressed while they were drawn is heard first. */
export async function deliver(
  out: string,
  files: ReadonlyMap<string, string>,
  screen: string,
  calledOff: AbortSignal,
): Promise<void> {
  await setImmediate();
  calledOff.throwIfAborted();
  writeFolder(out, files);
  console.log(screen);
  const pictures = [...files.keys()].filter((name) => name.endsWith(".svg"));
  const data = [...files.keys()].filter((name) => name !== "report.html" && !pictures.includes(name));
  const beside = [...data, `${pictures.length} pictures`].join(" and ");
  console.log(`Written: ${join(resolve(out), "report.html")} and ${beside} beside it.`);
}
