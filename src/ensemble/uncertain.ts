// The numbers of a case that are not known for sure: each with the range in which the truth may lie, and who says so.

import { codedError, type Fault } from "../errors.ts";
import { readCase } from "../inputs/case.ts";
import { given } from "../units/parse.ts";
import type { Origin, Sourced } from "../sources/origin.ts";

/** A number with a range, SI. Within it every value is as likely as any other; on a logarithmic scale if `logarithmic`. */
export interface Uncertain {
  /** Where it stands in the case: "build.pump.dissolved". */
  readonly path: string;
  readonly unit: string;
  /** As written in the case. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** The range spans more than a decade: drawn evenly in its logarithm. */
  readonly logarithmic: boolean;
  readonly whole: boolean;
  readonly origin: Origin | null;
}

/** What is varied: ranges added, narrowed or (null) taken away, and the parts of the case to which it is limited. */
export interface Varying {
  /** By path, as written in a case: `{ "build.pump.dissolved": [0.3, 0.7], "leak.creepTime": ["60 h", "90 h"] }`. */
  readonly ranges?: Readonly<Record<string, readonly [unknown, unknown] | null>>;
  /** Beginnings of paths, such as "build" or "leak.creepTime"; everything with a range when missing. */
  readonly only?: readonly string[];
  /**
   * True: every member gets the litres of the fill, drawn if they have a range. Else, as in a shop, each is filled until it
   * idles hot at the level of the unit as written, and the fill follows from what its other parts hold.
   */
  readonly filledByVolume?: boolean;
  /** True: draws whose full, tight unit would starve its cooler or draw air are members too. */
  readonly unsoundToo?: boolean;
}

const DECADE = 10;

/**
 * All numbers of a case (plain data, as `readCase` takes it) that carry a range wider than nothing, in the order of the
 * case. The week stays as it is. Throws "bad-case" for what `readCase` refuses, for a range that does not hold the value,
 * for a path without a number, and for an `only` that no range lies in.
 */
export function uncertain(caseData: unknown, varying: Varying = {}): readonly Uncertain[] {
  return uncertainOf(readCase(withRanges(caseData, varying.ranges ?? {})).origins, varying.only);
}

/** The same from the numbers of a case that was read already. */
export function uncertainOf(
  origins: Readonly<Record<string, Sourced>>,
  only?: readonly string[],
): readonly Uncertain[] {
  const all = Object.entries(origins).flatMap(([path, { value, unit, whole, origin, range }]) => {
    if (range === null || !(range[1] > range[0]) || isIn(path, "week")) return [];
    const [low, high] = range;
    return [{ path, unit, value, low, high, logarithmic: low > 0 && high / low > DECADE, whole, origin }];
  });
  if (only === undefined) return all;
  const idle = only.filter((part) => !all.some(({ path }) => isIn(path, part)));
  if (idle.length > 0)
    throw codedError(
      "bad-case",
      idle.map((path) => ({
        path,
        expected: "a part of the case with a range in it",
        given: "no range",
        example: '"build"',
      })),
    );
  return all.filter(({ path }) => only.some((part) => isIn(path, part)));
}

/** Where a share u of the range lies, u from 0 to below 1. */
export function valueAt({ low, high, logarithmic, whole }: Uncertain, u: number): number {
  if (whole) return low + Math.floor(u * (high - low + 1));
  const value = logarithmic ? low * Math.exp(u * Math.log(high / low)) : low + u * (high - low);
  return Math.min(high, Math.max(low, value));
}

/** The case data with ranges put in, changed or taken away; what was given stays as it is. Throws "bad-case" as above. */
export function withRanges(caseData: unknown, ranges: NonNullable<Varying["ranges"]>): unknown {
  const faults: Fault[] = [];
  let data = caseData;
  for (const [path, range] of Object.entries(ranges)) {
    const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
    const changed = changedAt(data, keys, (leaf) => {
      const { range: _before, ...rest } = isRecord(leaf) ? leaf : { value: leaf };
      return range === null ? rest : { ...rest, range };
    });
    if (changed === undefined)
      faults.push({
        path,
        expected: "a number that the case gives",
        given: given(undefined),
        example: '"build.pump.dissolved"',
      });
    else data = changed;
  }
  if (faults.length > 0) throw codedError("bad-case", faults);
  return data;
}

const isIn = (path: string, part: string): boolean =>
  path === part || path.startsWith(`${part}.`) || path.startsWith(`${part}[`);

/** A copy of the data with the leaf at the end of the keys changed; undefined when there is none. */
function changedAt(data: unknown, keys: readonly string[], change: (leaf: unknown) => unknown): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return isLeaf(data) ? change(data) : undefined;
  if (!isRecord(data) && !Array.isArray(data)) return undefined;
  if (!Object.hasOwn(data, key)) return undefined;
  const inside = changedAt((data as Record<string, unknown>)[key], rest, change);
  if (inside === undefined) return undefined;
  return Array.isArray(data) ? data.with(Number(key), inside) : { ...data, [key]: inside };
}

function isLeaf(data: unknown): boolean {
  return typeof data === "string" || typeof data === "number" || (isRecord(data) && "value" in data);
}

function isRecord(data: unknown): data is Record<string, unknown> {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}
