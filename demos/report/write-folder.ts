// Writing the report so that a failed run leaves what was there, and nothing of the user's is ever swept away.

import { randomUUID } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";

const own = /^(?:report\.html|[a-z0-9-]+\.svg)$/;

/** Why a folder must not be replaced, or null when it may: it is new, or its files are those of an earlier run. */
export function whyNot(folder: string): string | null {
  if (!existsSync(folder)) return null;
  if (!statSync(folder).isDirectory()) return `${folder} is a file, not a folder.`;
  const names = filesIn(folder);
  const foreign = names.filter((name) => !own.test(name));
  if (foreign.length > 0)
    return `${folder} holds ${foreign.slice(0, 3).join(", ")}, which this program did not write. Name another folder.`;
  if (names.length > 0 && !names.includes("report.html"))
    return `${folder} holds pictures, but no report of this program. Name another folder.`;
  return null;
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
    for (const [name, text] of files) writeFileSync(join(temporary, name), text, { flush: true });
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
