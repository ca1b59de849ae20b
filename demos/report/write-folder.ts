// Writing the report so that a failed run leaves what was there, and nothing of the user's is ever swept away.

import { randomUUID } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";

const REPORT = "report.html";
/** The last line of a report names all files that were written with it. */
const written = (names: readonly string[]) => `\n<!-- written with this report: ${names.join(" ")} -->\n`;
const writtenLine = /\n<!-- written with this report: (.*) -->\n$/;

/**
 * Why a folder must not be replaced, or null when it may: it is new and can be made, or its files are those of an earlier run, by the
 * list in that run's report.
 */
export function whyNot(folder: string): string | null {
  const unwritable = cannotWrite(folder);
  if (unwritable !== null || !existsSync(folder)) return unwritable;
  const names = filesIn(folder);
  const list = names.includes(REPORT) ? writtenLine.exec(readFileSync(join(folder, REPORT), "utf8")) : null;
  const own = list === null ? [] : list[1]!.split(" ");
  const foreign = names.filter((name) => !own.includes(name));
  if (foreign.length === 0) return null;
  return `${folder} holds ${foreign.slice(0, 3).join(", ")}, which this program did not write. Name another folder.`;
}

/** Tries to make and remove a folder where this one, or the first of its parents that is missing, would be made. */
function cannotWrite(folder: string): string | null {
  let place = resolve(folder);
  if (existsSync(place) && !statSync(place).isDirectory()) return `${folder} is a file, not a folder.`;
  do place = dirname(place);
  while (!existsSync(place));
  try {
    rmSync(mkdtempSync(join(place, ".try-")), { recursive: true });
    return null;
  } catch (error) {
    const why = error instanceof Error && "code" in error ? String(error.code) : String(error);
    return `${folder} cannot be written: nothing can be made in ${place} (${why}). Name another folder.`;
  }
}

/**
 * Writes all files into a temporary folder beside it, then puts that in the folder's place. Folders inside it are not this
 * program's: they move along.
 */
export function writeFolder(folder: string, files: ReadonlyMap<string, string>): void {
  const path = existsSync(folder) ? realpathSync(folder) : resolve(folder);
  const temporary = join(dirname(path), `.${basename(path)}-${randomUUID()}`);
  const old = `${temporary}-old`;
  mkdirSync(temporary, { recursive: true });
  try {
    for (const [name, text] of files) {
      const signed = name === REPORT ? text + written([...files.keys()]) : text;
      writeFileSync(join(temporary, name), signed, { flush: true });
    }
    if (existsSync(path)) renameSync(path, old);
    try {
      renameSync(temporary, path);
    } catch (error) {
      if (existsSync(old)) renameSync(old, path);
      throw error;
    }
  } finally {
    rmSync(temporary, { recursive: true, force: true });
  }
  if (!existsSync(old)) return;
  for (const name of foldersIn(old)) renameSync(join(old, name), join(path, name));
  rmSync(old, { recursive: true });
}

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map(({ name }) => name);

const foldersIn = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);
