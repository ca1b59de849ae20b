// An interval in the reader's units: its digits follow its width, so that nothing is told finer than it is known.

import { impossible } from "../errors.ts";
import { scaleFor, type ShownKind, type UnitSystem } from "./show.ts";

/** The last place told is worth a third to a thirtieth of the interval. */
const PLACES = 3;

/**
 * Value of the last place that an interval of this width warrants: the largest power of ten up to a third of it, and never less than `least` (an odometer
 * is read to the mile). An interval without width warrants `least` alone. Throws "impossible-input" for a width below 0.
 */
export function lastPlace(width: number, least = 0): number {
  if (!(width >= 0)) impossible("width", width, "a width of 0 or more");
  if (!(width > 0 && Number.isFinite(width))) return least;
  return Math.max(least, 10 ** Math.floor(Math.log10(width / PLACES)));
}

/**
 * Values as text, to the last place that is given, as many decimals as it has. Where none of them lies on the other side of 0, a value keeps its first figure
 * even below that place: a span from 0.0007 to 0.04 does not begin at 0. Throws "impossible-input" for a place that is not above 0.
 */
export function toPlace(values: readonly number[], place: number, least = 0): string[] {
  if (!(place > 0)) impossible("place", place, "a place above 0");
  const oneSided = values.every((value) => value > 0) || values.every((value) => value < 0);
  const decimals = Math.max(0, Math.min(20, -Math.floor(Math.log10(place) + 1e-9)));
  return values.map((value) => {
    if (oneSided && Math.abs(value) < place && Math.abs(value) >= least)
      return String(Number(value.toPrecision(1)));
    const text = (Math.round(value / place) * place).toFixed(decimals);
    return Number(text) === 0 ? "0" : text;
  });
}

/**
 * Last places of values that stand beside each other: each its own, but where two would be told in the other order than they have (equal ones: in any), both get the finer of theirs.
 * A value that is none (null) keeps its place. `as` is what a value is told as to a place.
 */
export function placesInOrder(
  values: readonly (number | null)[],
  places: readonly number[],
  as = (value: number, place: number): number => Math.round(value / place) * place,
): number[] {
  const told = [...places];
  const turned = (i: number, j: number): boolean => {
    const [one, other] = [values[i] ?? null, values[j] ?? null];
    if (one === null || other === null || !(one <= other)) return false;
    return as(one, told[i]!) > as(other, told[j]!);
  };
  // What is made finer may stand wrong to a third: each turn makes one place finer, so it ends.
  for (let changed = true; changed;) {
    changed = false;
    for (let i = 0; i < told.length; i++)
      for (let j = 0; j < told.length; j++)
        if (turned(i, j)) {
          told[i] = told[j] = Math.min(told[i]!, told[j]!);
          changed = true;
        }
  }
  return told;
}

/** A middle, and the ends of its interval. */
export interface Interval {
  readonly middle: number;
  readonly nineTenths: readonly [number, number];
}

const topOf = (low: number, high: number): number => Math.max(Math.abs(low), Math.abs(high));

/** Numbers of one spread, its ends the last two, in one unit: `["5.0", "4.9", "5.2"]` and "qt". */
export interface ToldSpread {
  readonly texts: readonly string[];
  readonly unit: string;
}

/** What three figures of a value are told to, or all before the point: nothing is told finer. */
export const threeFigures = (value: number): number =>
  value > 0 ? Math.min(1, 10 ** (Math.floor(Math.log10(value)) - 2)) : 1;

/** A middle [SI] and its interval in the reader's unit, which is that for an amount of `size` [SI], its largest value when missing; three figures at most. */
export function showSpread(
  { middle, nineTenths: [low, high] }: Interval,
  kind: ShownKind,
  system: UnitSystem,
  size = topOf(low, high),
): ToldSpread {
  const [unit, factor, offset = 0] = scaleFor(size, kind, system);
  const values = [middle, low, high].map((value) => value * factor + offset);
  const largest = Math.max(...values.map(Math.abs));
  return { texts: toPlace(values, lastPlace(values[2]! - values[1]!, threeFigures(largest))), unit };
}
