// Members: cases that differ in their uncertain numbers only, spread evenly over all that these may be.

import { impossible, isCoded } from "../errors.ts";
import { caseReader, type Case } from "../inputs/case.ts";
import type { Drawn } from "../inputs/gather.ts";
import { fillFor, fullDepth } from "./filled.ts";
import { scrambledHalton } from "./sequence.ts";
import { isSound } from "./sound.ts";
import { uncertainOf, valueAt, withRanges, type Uncertain, type Varying } from "./uncertain.ts";

/** One draw: its place among the points of the sequence, and a value [SI] for each input. */
export interface Member {
  readonly point: number;
  readonly values: Float64Array;
}

export interface Members {
  readonly inputs: readonly Uncertain[];
  readonly members: readonly Member[];
  /** Draws on the way that contradict themselves (a converter larger than the fill): no such unit can be built. */
  readonly refused: number;
  /** Draws passed over because the full, tight unit would starve its cooler or draw air: nobody would have built it so. */
  readonly unsound: number;
}

/** A case with its inputs, ready to be built at any values of them. */
export interface Variable {
  readonly inputs: readonly Uncertain[];
  readonly asWritten: Case;
  /** Only sound units are drawn: the unit as written is one, and nothing else was asked for. */
  readonly soundOnly: boolean;
  /** The case at values of the inputs; null where they contradict each other. */
  readonly at: (values: Float64Array) => Case | null;
}

const FILL = "build.fill";

/** Reads a case once, to be varied. Throws "bad-case" as `uncertain` does. */
export function variable(
  caseData: unknown,
  { ranges = {}, only, filledByVolume = false, unsoundToo = false }: Varying = {},
): Variable {
  const read = caseReader(withRanges(caseData, ranges));
  const asWritten = read();
  const inputs = uncertainOf(asWritten.origins, only).filter(({ path }) => filledByVolume || path !== FILL);
  const full = filledByVolume ? 0 : fullDepth(asWritten.unit);
  return {
    inputs,
    asWritten,
    soundOnly: !unsoundToo && !filledByVolume && isSound(asWritten.unit),
    at(values) {
      const drawn: Drawn = Object.fromEntries(inputs.map(({ path }, i) => [path, values[i]!]));
      try {
        const poured = read(drawn);
        if (filledByVolume) return poured;
        const fill = fillFor(poured.unit, full);
        return fill === null ? null : read({ ...drawn, [FILL]: fill });
      } catch (error) {
        if (isCoded(error)) return null;
        throw error;
      }
    },
  };
}

/**
 * The first n draws of the case that a unit can have, from a scrambled Halton sequence: the same for a seed, whoever asks,
 * and the first 50 of 200 are the 50. Log-uniform where a range spans more than a decade, else uniform, and each
 * independent of the others. n and seed are whole numbers from 0. Throws "bad-case" as `uncertain` does, and
 * "impossible-input" when of a thousand draws and more not one in a hundred can be.
 */
export function members(caseData: unknown, n: number, seed: number, varying: Varying = {}): Members {
  return membersOf(variable(caseData, varying), n, seed);
}

export function membersOf(given: Variable, n: number, seed: number): Members {
  const drawing = draw(given, n, seed);
  for (;;) {
    const { done, value } = drawing.next();
    if (done === true) return value;
  }
}

/** The same, with a pause after each draw in which a call-off can be heard. */
export function* draw(
  { inputs, at, soundOnly }: Variable,
  n: number,
  seed: number,
): Generator<void, Members, void> {
  if (!Number.isInteger(n) || n < 0) impossible("members", n, "a whole number, 0 or more");
  const sequence = scrambledHalton(inputs.length, seed);
  const found: Member[] = [];
  const share = new Float64Array(inputs.length);
  let [point, unsound] = [0, 0];
  for (; found.length < n; point++) {
    if (point >= 1000 && found.length < point / 100)
      impossible(
        "ranges",
        found.length / point,
        "ranges of which more than one draw in a hundred can be a unit",
      );
    sequence(point, share);
    const values = valuesAt(inputs, share);
    const drawn = at(values);
    if (drawn !== null && soundOnly && !isSound(drawn.unit)) unsound++;
    else if (drawn !== null) found.push({ point, values });
    yield;
  }
  return { inputs, members: found, refused: point - n - unsound, unsound };
}

/** Values of the inputs at shares of their ranges. */
export function valuesAt(inputs: readonly Uncertain[], share: Float64Array): Float64Array {
  return Float64Array.from(inputs, (input, i) => valueAt(input, share[i]!));
}
