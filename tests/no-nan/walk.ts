// Bad numbers in place of good ones: each public function has arguments that it answers, and every number in them is spoilt in turn.
import { isCoded } from "../../src/errors.ts";

/** What a machine cannot have, and what lies at the ends of the numbers. */
export const bad = [NaN, Infinity, -Infinity, 0, -1, 1e300, -1e300, 1e-300];

/** Any function at all, of any arguments. */
type Anything = (...args: never[]) => unknown;

/** A question that spoils only the numbers it is given: for what takes a whole unit, a callback or a record to write to. */
export interface Question {
  readonly numbers: readonly unknown[];
  readonly ask: Anything;
}

export function asking<const A extends readonly unknown[]>(
  numbers: A,
  ask: (...numbers: A) => unknown,
): Question {
  return { numbers, ask: ask as Anything };
}

/** Why a function is asked nothing here. */
export interface Unasked {
  readonly because: string;
}

export const unasked = (because: string): Unasked => ({ because });

/** A row for every function of a namespace: one that is missing does not compile, and fails by name. */
export type Rows<N> = {
  readonly [K in keyof N as N[K] extends Anything ? K : never]: N[K] extends (...args: infer A) => unknown
    ? Readonly<A> | Question | Unasked
    : never;
};

type Path = readonly (string | number)[];

/** Places of an array that are spoilt: those after them are like them. */
const ENOUGH = 3;

/** Where the numbers are. */
function leaves(value: unknown, path: Path = []): Path[] {
  if (typeof value === "number") return [path];
  if (typeof value !== "object" || value === null) return [];
  const keys =
    ArrayBuffer.isView(value) || Array.isArray(value)
      ? Object.keys(value).slice(0, path.length === 0 ? Infinity : ENOUGH)
      : Object.keys(value);
  return keys.flatMap((key) => leaves(Reflect.get(value, key), [...path, key]));
}

/** The same with another number at one place. */
function spoilt(value: unknown, [key, ...rest]: Path, number: number): unknown {
  if (key === undefined) return number;
  const copy: object =
    value instanceof Float64Array
      ? value.slice()
      : Array.isArray(value)
        ? [...(value as unknown[])]
        : { ...(value as object) };
  Reflect.set(copy, key, spoilt(Reflect.get(copy, key), rest, number));
  return copy;
}

/** Whether something that is no number is in an answer, or is told in its words. */
function holdsNaN(answer: unknown, depth = 6): boolean {
  if (typeof answer === "number") return Number.isNaN(answer);
  if (typeof answer === "string") return answer.includes("NaN");
  if (typeof answer !== "object" || answer === null || depth === 0) return false;
  return Object.values(answer).some((part) => holdsNaN(part, depth - 1));
}

/** Every spoilt question that was answered with NaN or refused without a code. */
export function wrongAnswers(name: string, { numbers, ask }: Question): string[] {
  const asked = (given: unknown) => ask(...(given as never[]));
  if (holdsNaN(asked(numbers))) return [`${name}: NaN for its own example`];
  return leaves(numbers).flatMap((path) =>
    bad.flatMap((number) => {
      const where = `${name}(${path.join(".")} = ${number})`;
      try {
        return holdsNaN(asked(spoilt(numbers, path, number))) ? [`${where}: NaN`] : [];
      } catch (error) {
        return isCoded(error) ? [] : [`${where}: ${String(error)}`];
      }
    }),
  );
}
