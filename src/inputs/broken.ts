// Which parts of a tree were read well enough to be looked at: a rule is tried only where there is something to look at.

import type * as v from "valibot";
import type { Fault } from "../errors.ts";
import { meantPaths, toldOnce, type UnknownKey } from "./misspelt.ts";

/**
 * Paths at which the shape itself is wrong, so that rules that look there would find nothing to look at. A key too many leaves the rest as it is,
 * unless it is one of `faults` that stands for a known one.
 */
export function brokenPaths(
  issues: readonly v.BaseIssue<unknown>[],
  faults: readonly UnknownKey[],
): readonly string[] {
  return [
    ...issues
      .filter((issue) => !(issue.type === "strict_object" && issue.expected === "never"))
      .map((issue) => (issue.path ?? []).map(({ key }) => String(key)).join(".")),
    ...meantPaths(faults),
  ];
}

/** A fault at or below the path, or above it, breaks the path. */
export function within(bad: string, path: string): boolean {
  return bad === path || bad.startsWith(`${path}.`) || path.startsWith(`${bad}.`) || bad === "";
}

export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Whether a tree has something at a path, whose keys are parted by dots. */
export function isThere(tree: unknown, path: string): boolean {
  let at: unknown = tree;
  for (const key of path.split(".")) {
    if (typeof at !== "object" || at === null || !Object.hasOwn(at, key)) return false;
    at = (at as Record<string, unknown>)[key];
  }
  return at !== undefined;
}

/** Each fault once, and each mistake: what a misspelt key makes missing is not told besides. */
export function distinct(faults: readonly UnknownKey[]): Fault[] {
  const seen = new Set<string>();
  return toldOnce(faults).filter(({ path, expected, given }) => {
    const key = `${path}\n${expected}\n${given}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
