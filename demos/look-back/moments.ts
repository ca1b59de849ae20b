// Moments of a visit in words: dates and odometer readings never stand bare, and are no finer than the answer's spread.

import type { Spread } from "../../src/lookback/answer/spread.ts";
import { visitDay, type ReadVisit } from "../../src/inputs/visit.ts";
import { drivenBy } from "../../src/inputs/visit-clock.ts";
import type { Tell } from "../report/said.ts";

const DAY = 86400;

export const dayIn = (read: ReadVisit, at: number): string => visitDay(read, at);

/** "61200 mi", or "1200 mi after the last full" when nobody read the odometer. To the kilometre. */
export function odometerIn({ clock }: ReadVisit, at: number, tell: Tell): string {
  const words = tell(Math.round(drivenBy(clock, at) / 1000) * 1000, "distance");
  return clock.odometer === null ? `${words} after the last full` : words;
}

/** Both ends of a span by the odometer. */
export function odometerSpan(
  { clock }: ReadVisit,
  [from, to]: readonly [number, number],
  tell: Tell,
): string {
  const [a, b] = [from, to].map((at) => tell(Math.round(drivenBy(clock, at) / 1000) * 1000, "distance"));
  return `${a!} to ${b!}${clock.odometer === null ? " after the last full" : ""}`;
}

/** Days before the visit, in weeks where the middle nine tenths are wider than ten days. */
export function agesOf({ middle, half, nineTenths }: Spread, visit: number) {
  const wide = nineTenths[1] - nineTenths[0] > 10 * DAY;
  const unit = wide ? 7 * DAY : DAY;
  const count = (at: number) => Math.max(0, Math.round((visit - at) / unit));
  const word = (number: number) => `${number} ${wide ? "week" : "day"}${number === 1 ? "" : "s"}`;
  // The later moment is the smaller age.
  const span = ([from, to]: readonly [number, number]) => {
    const [young, old] = [count(to), count(from)];
    return young === old ? `about ${word(young)}` : `between ${young} and ${word(old)}`;
  };
  return { middle: word(count(middle)), half: span(half), nineTenths: span(nineTenths) };
}
