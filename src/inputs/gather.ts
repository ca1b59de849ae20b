// From the tree that was read to plain SI numbers, with every leaf's fault and origin gathered by its path.

import type { BaseIssue, IssuePathItem } from "valibot";
import type { Fault } from "../errors.ts";
import type { Sourced } from "../sources/origin.ts";
import { given } from "../units/parse.ts";
import { acceptedBy, chosen, didYouMean, nearestFirst, schemaAt } from "./accepted.ts";
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

/** Faults of shape in the words of the fault list, with what the schema takes in their place. */
export const faultsOfShape = (schema: unknown, issues: readonly BaseIssue<unknown>[] = []): Fault[] =>
  issues.map((issue) => faultOf(issue, schema));

function faultOf(issue: BaseIssue<unknown>, schema: unknown): Fault {
  const steps = issue.path ?? [];
  const path = steps.reduce(
    (before, item) =>
      typeof item.key === "number" ? `${before}[${item.key}]` : join(before, String(item.key)),
    "",
  );
  if (issue.type === "strict_object" && issue.expected === "never") return unknownKey(path, schema, steps);
  if (issue.type === "union")
    return { path, expected: issue.message, given: given(issue.input), example: "" };
  const missing = issue.type === "strict_object" && issue.received === "undefined";
  const expected =
    acceptedBy(schemaAt(schema, steps)) ?? (missing ? "a value: it may not be missing" : inWords(issue));
  const words = expected.startsWith("one of") ? (expected.match(/"[^"]*"/g) ?? []) : [];
  const said = given(issue.input);
  const question = typeof issue.input === "string" ? didYouMean(words, said) : "";
  return { path, expected, given: `${said}${question}`, example: words[0] ?? "" };
}

function unknownKey(path: string, schema: unknown, steps: readonly IssuePathItem[]): Fault {
  const last = steps.at(-1)!;
  const key = String(last.key);
  const known = Object.keys(chosen(schemaAt(schema, steps.slice(0, -1)), last.input)?.entries ?? {});
  const keys = nearestFirst(known, key).join(", ");
  const expected =
    keys === "" ? "only keys that are known here" : `only the keys that are known here: ${keys}`;
  return { path, expected, given: `this key${didYouMean(known, key)}`, example: "" };
}

/** What an issue expects, words one after the other. */
function inWords({ expected, message }: BaseIssue<unknown>): string {
  if (expected === null) return message;
  const words = expected.replaceAll(/[()]/g, "").replaceAll(" | ", ", ");
  return words.startsWith('"') ? `one of ${words}` : words;
}

function join(path: string, key: string): string {
  return path === "" ? key : `${path}.${key}`;
}

function isLeaf(value: unknown): value is Leaf {
  return typeof value === "object" && value !== null && "leaf" in value && value.leaf === true;
}
