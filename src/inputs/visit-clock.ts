// The two clocks of a visit: the calendar and the odometer. A moment told by one is found on the other along a straight line, with an error.

import { codedError, impossible } from "../errors.ts";
import { given, parseQuantity } from "../units/parse.ts";
import { dateExample, dateExpected, dateSeconds } from "./dates.ts";

const DAY = 86400;

/** Both clocks. The calendar counts seconds from the midnight of the first date. */
export interface VisitClock {
  /** ISO date whose midnight is second 0. */
  readonly date: string;
  /** The visit [s]. */
  readonly at: number;
  /** Distance driven from second 0 to the visit [m]. */
  readonly distance: number;
  /** Odometer at second 0 [m]; null when nobody read it. */
  readonly odometer: number | null;
  /** Only the distance is known: the calendar is as uncertain as the miles of a week, and the clock runs by the miles. */
  readonly undated: boolean;
  /** Error of the visit's own moment [s]: its time of day may not be told. */
  readonly error: number;
}

/** A moment [s] and its error, a standard deviation [s]. */
export interface Moment {
  readonly at: number;
  readonly error: number;
  /** Told by the odometer: driven since second 0 [m], and the error of that [m]. */
  readonly driven?: { readonly by: number; readonly error: number };
}

export const momentExpected =
  'a date, an odometer reading with its unit, how long or how far ago, "yesterday" or "today", of which each is known on both clocks';
export const momentExample = '"2024-10-12", "61200 mi", "3 weeks ago" or "800 mi ago"';

/**
 * Weeks of driving differ by a third [-], each from the next at random: so a moment read off the odometer is uncertain by this share of a
 * week times the root of what weeks there are, share by share to both ends (a bridge of random steps). Assumed.
 */
const WEEKS_DIFFER = 1 / 3;
/** Standard deviation of a moment within its day, when only the day is known: a day wide, evenly [s]; and of a time of day that is told: assumed. */
export const WITHIN_DAY = DAY / Math.sqrt(12);
export const BY_THE_CLOCK = 1800;
/** An odometer reading is right to a mile [m]: common practice, it is read without its tenths. */
const A_MILE = 1609.344;
/** What somebody remembers as so long ago is right to this share of it [-]. Assumed. */
const MEMORY = 0.15;

/** Days told from the visit by a word of their own. */
const dayWords: Readonly<Record<string, string>> = { today: "0 h ago", yesterday: "1 day ago" };

/** Reads a moment; null for text that is none, or when the odometer was not read. */
export function momentOf(clock: VisitClock, told: unknown): Moment | null {
  if (typeof told !== "string") return null;
  const text = dayWords[told.trim().toLowerCase()] ?? told;
  const date = dateSeconds(text);
  if (!Number.isNaN(date)) {
    const at = date - dateSeconds(clock.date);
    return text.includes(":") ? { at, error: BY_THE_CLOCK } : { at: at + DAY / 2, error: WITHIN_DAY };
  }
  const ago = /^(.*\S)\s+ago$/.exec(text.trim());
  const words = ago?.[1] ?? text;
  const far = parseQuantity("distance", words);
  if ("value" in far) {
    if (ago === null && clock.odometer === null) return null;
    if (ago === null) return byDistance(clock, far.value - clock.odometer!);
    const { driven, ...moment } = byDistance(clock, clock.distance - far.value);
    return { ...moment, driven: { ...driven, error: Math.hypot(driven.error, MEMORY * far.value) } };
  }
  const long = parseQuantity("time", words);
  if (ago === null || "wrong" in long) return null;
  // Hours ago are told by the hour, days ago by the day.
  const least = long.value < DAY ? clock.error : WITHIN_DAY;
  return { at: clock.at - long.value, error: Math.max(least, MEMORY * long.value) };
}

/**
 * The moment at which so much had been driven since second 0 [m]. Within the day of either end the trips decide what the odometer says, and nothing of it
 * is lost on the way to the calendar: only from the day before on does it count that weeks differ.
 */
export function byDistance({ at, distance, undated }: VisitClock, driven: number): Required<Moment> {
  const share = driven / distance;
  const weeks = at / (7 * DAY);
  // Where only miles are known they are the clock: what is read off them is sure.
  const between = undated ? 0 : Math.max(0, share * (1 - share)) * weeks;
  const week = (7 * DAY * distance) / at;
  return {
    at: share * at,
    error: Math.hypot(WITHIN_DAY, WEEKS_DIFFER * 7 * DAY * Math.sqrt(between)),
    driven: {
      by: driven,
      error: Math.hypot(A_MILE, WEEKS_DIFFER * week * Math.sqrt(Math.max(0, between - 1 / 7))),
    },
  };
}

/** Why a text is no moment, in the words of the fault list. */
export function momentGiven(clock: VisitClock, text: unknown): string {
  const read = typeof text === "string" && "value" in parseQuantity("distance", text);
  return read && clock.odometer === null
    ? `${given(text)}, but the odometer at the last full and at the visit are not both told`
    : given(text);
}

/** ISO date of a moment of the visit's clock. Throws "impossible-input" for a clock without a date of the calendar, or a moment that no calendar reaches. */
export function dayOf({ date }: Pick<VisitClock, "date">, at: number): string {
  const first = dateSeconds(date);
  if (Number.isNaN(first))
    throw codedError("impossible-input", [
      { path: "clock.date", expected: dateExpected, given: given(date), example: dateExample },
    ]);
  const day = new Date((first + at) * 1000);
  if (Number.isNaN(day.getTime())) impossible("at", at, "seconds of the visit's clock, such as 86400");
  return day.toISOString().slice(0, 10);
}
