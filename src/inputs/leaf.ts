// One number of a case file: text with its unit ("65 psi"), or the same with its origin and range.
// Reading a leaf never stops: what is wrong is kept with it, so that every fault of a case comes out together.

import * as v from "valibot";
import type { Fault } from "../errors.ts";
import { originKinds, type Origin, type Sourced } from "../sources/origin.ts";
import { exampleOf, quantityKinds, type Kind } from "../units/kinds.ts";
import { given, parseQuantity } from "../units/parse.ts";
import { anything, between, limitOf, type Limits, type Tell } from "./limits.ts";

type FaultWithoutPath = Omit<Fault, "path">;

/** A number that was read, with what was wrong with it; NaN when it could not be read. */
export interface Leaf extends Sourced {
  readonly leaf: true;
  readonly faults: readonly FaultWithoutPath[];
}

const originSchema = v.strictObject({
  kind: v.picklist(originKinds),
  source: v.pipe(v.string(), v.nonEmpty()),
  where: v.exactOptional(v.string()),
  because: v.exactOptional(v.string()),
});

// What a missing key is read as.
const nothing = Symbol("nothing");

type Read = (text: unknown) => { readonly value: number } | { readonly wrong: string };

function leafSchema(read: Read, expected: string, example: string, limits: Limits, unit: string, tell: Tell) {
  const words = limits.words(tell);
  const wanted = words === "" ? expected : `${expected}, ${words}`;
  const transform = (input: unknown): Leaf => {
    const faults: FaultWithoutPath[] = [];
    const fail = (what: string) => faults.push({ expected: wanted, given: what, example });
    const one = (text: unknown): number => {
      if (text === nothing) {
        fail("nothing");
        return Number.NaN;
      }
      const parsed = read(text);
      if ("wrong" in parsed) {
        fail(parsed.wrong);
        return Number.NaN;
      }
      if (limits.holds(parsed.value)) return parsed.value;
      fail(given(text));
      return Number.NaN; // so that no rule looks at it again
    };
    const sourced = isRecord(input) && "value" in input;
    const text = sourced ? input["value"] : input;
    const value = one(text);
    const range =
      sourced && input["range"] !== undefined ? readRange(input["range"], value, one, fail) : null;
    const origin = sourced && input["origin"] !== undefined ? readOrigin(input["origin"], faults) : null;
    if (sourced) {
      const known = new Set(["value", "origin", "range"]);
      for (const key of Object.keys(input).filter((name) => !known.has(name)))
        faults.push({ expected: "only value, origin and range", given: `the key "${key}"`, example: "" });
    }
    return {
      leaf: true,
      text: text === nothing ? "" : typeof text === "string" ? text : given(text),
      value,
      unit,
      whole: limits.whole === true,
      origin,
      range,
      faults,
    };
  };
  return v.optional(v.pipe(v.unknown(), v.transform(transform)), nothing as unknown as object);
}

/** A quantity that carries its unit; an example of its own where the kind's would mislead. */
export function quantity(kind: Kind, limits: Limits = anything, example = exampleOf(kind)) {
  return leafSchema(
    (text) => parseQuantity(kind, text),
    `${quantityKinds[kind].expected} with its unit`,
    example,
    limits,
    kind === "dripRate" ? "drops/min" : quantityKinds[kind].si,
    limitOf(kind),
  );
}

/** A number without dimension: 0.62, "0.62" or "62 %". */
export function plainNumber(example: string, limits: Limits = anything, expected = "a number without unit") {
  return leafSchema(readPlain, expected, example, limits, "", String);
}

/** 1 or "1", as other numbers without unit are written. */
export const wholeNumber = (words = "a whole number") =>
  v.pipe(
    v.union([v.number(), v.pipe(v.string(), v.regex(/^\s*[+-]?\d+\s*$/), v.transform(Number))], words),
    v.safeInteger(words),
  );

export const seed = () => {
  const words = "a whole number, 0 or more";
  return v.pipe(wholeNumber(words), v.minValue(0, words));
};

/** A share of one: 0.15 or "15 %". */
export const share = () => plainNumber('0.15 or "15 %"', between(0, 1));

/** A leaf that may be left out. */
export const orElse = <T>(schema: { readonly wrapped: v.GenericSchema<unknown, T> }, text: string) =>
  v.optional(schema.wrapped, text as object | string);

/** The number of 0.62, "0.62" or "62 %". */
export function readPlain(text: unknown): { value: number } | { wrong: string } {
  if (typeof text === "number") return Number.isFinite(text) ? { value: text } : { wrong: given(text) };
  const parts =
    typeof text === "string" ? /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(%?)\s*$/.exec(text) : null;
  if (!parts) return { wrong: given(text) };
  const value = Number(parts[1]) / (parts[2] === "%" ? 100 : 1);
  return Number.isFinite(value) ? { value } : { wrong: given(text) };
}

function readRange(
  range: unknown,
  value: number,
  one: (text: unknown) => number,
  fail: (what: string) => void,
): readonly [number, number] | null {
  if (!Array.isArray(range) || range.length !== 2) {
    fail(`the range ${given(range)}, which is not a pair [lowest, highest]`);
    return null;
  }
  const [low, high] = [one(range[0]), one(range[1])];
  if (low > high) fail(`the range ${given(range)}, whose ends are out of order`);
  else if (value < low || value > high) fail(`a value outside its own range ${given(range)}`);
  return [low, high];
}

function readOrigin(origin: unknown, faults: FaultWithoutPath[]): Origin | null {
  const parsed = v.safeParse(originSchema, origin);
  if (parsed.success) return parsed.output;
  faults.push({
    expected: `an origin: its kind (${originKinds.join(", ")}) and source`,
    given: given(origin),
    example: '{ "kind": "assumed", "source": "workshop", "because": "measured with a rule" }',
  });
  return null;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
