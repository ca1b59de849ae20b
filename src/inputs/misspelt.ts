// A key that is not known, told once: with what is known, the one that was meant, and without that one being told as missing too.

import type { Fault } from "../errors.ts";
import { given } from "../units/parse.ts";
import { nearest, nearestFirst } from "./accepted.ts";

/** The fault of a key that is not known; `meant` is the path of a known key that is hardly spelled otherwise and that is not there. */
export interface UnknownKey extends Fault {
  readonly meant?: string;
}

/** Tells of a key at a path in an object that has the keys `beside` it. `expected` says what is known where the keys alone do not. */
export function unknownKey(
  path: string,
  key: string,
  known: readonly string[],
  beside: readonly string[],
  expected = known.length === 0
    ? "no key: none is known here"
    : `one of the keys ${nearestFirst(known, key).join(", ")}`,
): UnknownKey {
  const absent = nearest(
    known.filter((one) => !beside.includes(one)),
    key,
  );
  const near = absent ?? nearest(known, key);
  const question = near === undefined ? "" : `: did you mean ${given(near)}?`;
  return {
    path,
    expected,
    given: `${given(key)}, which is not known${question}`,
    example: "",
    ...(absent === undefined ? {} : { meant: `${path.slice(0, path.length - key.length)}${absent}` }),
  };
}

/** Paths, with all keys parted by dots, of what is there under another name: no rule can look at it. */
export const meantPaths = (faults: readonly UnknownKey[]): readonly string[] =>
  faults.flatMap(({ meant }) => (meant === undefined ? [] : [meant.replaceAll(/\[(\d+)\]/g, ".$1")]));

/** The faults without those that a misspelt key has besides its own: that what it stands for is missing, or that none of several was given. */
export function toldOnce(faults: readonly UnknownKey[]): Fault[] {
  const meant = new Set(faults.flatMap((fault) => fault.meant ?? []));
  const around = new Set([...meant].map((path) => path.slice(0, Math.max(0, path.lastIndexOf(".")))));
  return faults
    .filter(
      ({ path, given: what }) =>
        !(meant.has(path) && what === "nothing") && !(around.has(path) && what === "none of them"),
    )
    .map(({ meant: _, ...fault }) => fault);
}
