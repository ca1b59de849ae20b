// Finds every list of checks in this folder, so that none is forgotten when a link gains one.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Check } from "./check.ts";

const folder = import.meta.dirname;

/** Names, without ending, of the files that hold checks: the ones that export `checks`. */
export function checkFiles(): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"))
    .filter((name) => /^export const checks\b/m.test(readFileSync(join(folder, name), "utf8")))
    .map((name) => name.slice(0, -".ts".length))
    .sort();
}

/** The checks of one file. */
export async function checksOf(file: string): Promise<readonly Check[]> {
  const module = (await import(pathToFileURL(join(folder, `${file}.ts`)).href)) as {
    checks: readonly Check[];
  };
  return module.checks;
}

/** All checks of all links. */
export async function allChecks(): Promise<readonly Check[]> {
  return (await Promise.all(checkFiles().map(checksOf))).flat();
}

/**
 * The document that a source names, without the place in it: two examples of one book are one source.
 * `"Holman, Heat Transfer, 10th ed., 2009, example 10-9"` gives `"Holman, Heat Transfer, 10th ed., 2009"`.
 */
export function documentOf(source: string): string {
  return source.replace(placeInDocument, "");
}

const words =
  "example|table|chapter|section|problem|page|equation|figure|abstract|appendix|annex|article|entry|step|procedure|clause|question|inputs?|formula|limit|summary|definition";
const placeInDocument = new RegExp(`, (?:(?:[a-z-]+ )?(?:${words})\\b|ch\\. |p\\. |§).*$`, "i");
