// From the tree that was read to plain SI numbers, with every leaf's fault and origin gathered by its path.

import type { BaseIssue, IssuePathItem } from "valibot";
import type { Fault } from "../errors.ts";
import type { Sourced } from "../sources/origin.ts";
import { given } from "../units/parse.ts";
import { acceptedBy, chosen, didYouMean, nearest, schemaAt } from "./accepted.ts";
import { isRecord } from "./broken.ts";
import type { Leaf } from "./leaf.ts";
import { unknownKey, type UnknownKey } from "./misspelt.ts";

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
export const faultsOfShape = (schema: unknown, issues: readonly BaseIssue<unknown>[] = []): UnknownKey[] =>
  issues.flatMap((issue) => faultsOf(issue, schema));

function faultsOf(issue: BaseIssue<unknown>, schema: unknown): UnknownKey[] {
  const steps: readonly IssuePathItem[] = issue.path ?? [];
  const pathOf = (some: readonly IssuePathItem[]) =>
    some.reduce(
      (before, item) =>
        typeof item.key === "number" ? `${before}[${item.key}]` : join(before, String(item.key)),
      "",
    );
  const path = pathOf(steps);
  const last = steps.at(-1);
  const beside = isRecord(last?.input) ? Object.keys(last.input) : [];
  const around = pathOf(steps.slice(0, -1));
  // One issue stands for all keys of an object that are not known.
  if (issue.type === "strict_object" && issue.expected === "never") {
    const known = Object.keys(chosen(schemaAt(schema, steps.slice(0, -1)), last!.input)?.entries ?? {});
    return beside
      .filter((key) => !known.includes(key))
      .map((key) => unknownKey(join(around, key), key, known, beside));
  }
  if (issue.type === "union")
    return [{ path, expected: issue.message, given: given(issue.input), example: "" }];
  const missing = issue.type === "strict_object" && issue.received === "undefined";
  const expected =
    acceptedBy(schemaAt(schema, steps)) ?? (missing ? "a value: it may not be missing" : inWords(issue));
  // Without the word that tells of which kind it is no key is known beside it: a word under nearly that name is what was meant.
  const kind = String(last?.key);
  const other =
    issue.type === "variant" && !beside.includes(kind)
      ? beside.find((key) => nearest([kind], key) !== undefined)
      : undefined;
  if (other !== undefined)
    return [unknownKey(join(around, other), other, [kind], beside, `the key ${kind}, ${expected}`)];
  const words = expected.startsWith("one of") ? (expected.match(/"[^"]*"/g) ?? []) : [];
  const said = given(issue.input);
  const question = typeof issue.input === "string" ? didYouMean(words, said) : "";
  return [{ path, expected, given: `${said}${question}`, example: words[0] ?? "" }];
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
