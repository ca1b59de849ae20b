// From the tree that was read to plain SI numbers, with every leaf's fault and origin gathered by its path.

import type { BaseIssue } from "valibot";
import type { Fault } from "../errors.ts";
import type { Sourced } from "../sources/origin.ts";
import { given } from "../units/parse.ts";
import type { Leaf } from "./leaf.ts";

/** The tree with each leaf replaced by its SI number. */
export type Plain<T> = T extends Leaf
  ? number
  : T extends readonly (infer U)[]
    ? readonly Plain<U>[]
    : T extends object
      ? { readonly [K in keyof T]: Plain<T[K]> }
      : T;

/** SI numbers that take the place of those written, by their path in the case. */
export type Drawn = Readonly<Record<string, number>>;

/**
 * Adds what is wrong with the leaves to `faults` and where they come from to `origins`, which tell what was written. A
 * leaf whose path is in `drawn` gets the value from there.
 */
export function plain<T>(
  tree: T,
  path: string,
  faults: Fault[],
  origins: Record<string, Sourced>,
  drawn: Drawn = {},
): Plain<T> {
  if (isLeaf(tree)) {
    for (const fault of tree.faults) faults.push({ path, ...fault });
    const { text, value, unit, whole, origin, range } = tree;
    origins[path] = { text, value, unit, whole, origin, range };
    return (Object.hasOwn(drawn, path) ? drawn[path] : value) as Plain<T>;
  }
  if (Array.isArray(tree))
    return tree.map((item: unknown, i) => plain(item, `${path}[${i}]`, faults, origins, drawn)) as Plain<T>;
  if (typeof tree === "object" && tree !== null)
    return Object.fromEntries(
      Object.entries(tree).map(([key, item]) => [key, plain(item, join(path, key), faults, origins, drawn)]),
    ) as Plain<T>;
  return tree as Plain<T>;
}

/** A structural fault in the words of the fault list. */
export function faultOf(issue: BaseIssue<unknown>): Fault {
  const path = (issue.path ?? []).reduce(
    (before, item) =>
      typeof item.key === "number" ? `${before}[${item.key}]` : join(before, String(item.key)),
    "",
  );
  if (issue.type === "strict_object" && issue.expected === "never")
    return { path, expected: "only keys that are known here", given: "this key", example: "" };
  if (issue.type === "strict_object" && issue.received === "undefined")
    return { path, expected: "a value: it may not be missing", given: "nothing", example: "" };
  if (issue.type === "union")
    return { path, expected: issue.message, given: given(issue.input), example: "" };
  const named = (issue.expected ?? "").startsWith("(") || (issue.expected ?? "").startsWith('"');
  return {
    path,
    expected: named ? `one of ${issue.expected}` : (issue.expected ?? issue.message),
    given: given(issue.input),
    example: "",
  };
}

function join(path: string, key: string): string {
  return path === "" ? key : `${path}.${key}`;
}

function isLeaf(value: unknown): value is Leaf {
  return typeof value === "object" && value !== null && "leaf" in value && value.leaf === true;
}
