// Moments of a visit in words: dates and odometer readings never stand bare, and are no finer than the answer's spread.

import type { Spread } from "../../src/lookback/answer/spread.ts";
import { drivenBy, visitDay, type ReadVisit } from "../../src/inputs/visit.ts";
import type { Tell } from "../report/said.ts";

const DAY = 86400;

export const dayIn = (read: ReadVisit, at: number): string => visitDay(read, at);

/** "61200 mi", or "1200 mi after the last full" when nobody read the odometer. To the kilometre. */
export function odometerIn(read: ReadVisit, at: number, tell: Tell): string {
  const words = tell(Math.round(drivenBy(read, at) / 1000) * 1000, "distance");
  return read.clock.odometer === null ? `${words} after the last full` : words;
}

/** Both ends of a span by the odometer. */
export function odometerSpan(read: ReadVisit, [from, to]: readonly [number, number], tell: Tell): string {
  const [a, b] = [from, to].map((at) => tell(Math.round(drivenBy(read, at) / 1000) * 1000, "distance"));
  return `${a!} to ${b!}${read.clock.odometer === null ? " after the last full" : ""}`;
}

const HOUR = 3600;

/** Units of time before the visit, each up to so wide a middle nine tenths: nothing is told finer than it is known. */
const scales = [
  { word: "hour", unit: HOUR, upTo: 1.5 * DAY },
  { word: "day", unit: DAY, upTo: 10 * DAY },
  { word: "week", unit: 7 * DAY, upTo: Infinity },
] as const;

/** Whether an answer is known to hours: then its dates are told with the time of day. */
const inHours = ({ nineTenths: [from, to] }: Spread): boolean => to - from <= scales[0].upTo;

/** Day and time of day. */
export function momentIn(read: ReadVisit, at: number): string {
  const minute = Math.floor((((at % DAY) + DAY) % DAY) / 60);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${dayIn(read, at)} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

/** Middle and middle nine tenths as dates. */
export function datesOf(read: ReadVisit, spread: Spread): { middle: string; from: string; to: string } {
  const text = (at: number) => (inHours(spread) ? momentIn(read, at) : dayIn(read, at));
  return { middle: text(spread.middle), from: text(spread.nineTenths[0]), to: text(spread.nineTenths[1]) };
}

/** Time before the visit. */
export function agesOf(spread: Spread, visit: number): { middle: string; half: string; nineTenths: string } {
  const { middle, half, nineTenths } = spread;
  const { unit, word: name } = scales.find(({ upTo }) => nineTenths[1] - nineTenths[0] <= upTo)!;
  const count = (at: number) => Math.max(0, Math.round((visit - at) / unit));
  const word = (number: number) => `${number} ${name}${number === 1 ? "" : "s"}`;
  // The later moment is the smaller age.
  const span = ([from, to]: readonly [number, number]) => {
    const [young, old] = [count(to), count(from)];
    return young === old ? `about ${word(young)}` : `between ${young} and ${word(old)}`;
  };
  return { middle: word(count(middle)), half: span(half), nineTenths: span(nineTenths) };
}
