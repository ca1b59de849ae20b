// Moments of a visit in words: dates and odometer readings never stand bare, and are no finer than the answer's spread.

import type { Spread } from "../../src/lookback/answer/spread.ts";
import { drivenBy, visitDay, type ReadVisit } from "../../src/inputs/visit.ts";
import { axis, type UnitSystem } from "../../src/units/show.ts";
import { lastPlace, toPlace } from "../../src/units/show-spread.ts";

const HOUR = 3600;
const DAY = 24 * HOUR;

export const dayIn = (read: ReadVisit, at: number): string => visitDay(read, at);

/** What an odometer is read to, in miles or kilometres. */
const READ_TO = 1;

/** A middle and its interval by the odometer: "56490 mi" and "56470 to 56500 mi", or "1290 mi after the last full" when nobody read it. */
export function odometerOf(
  read: ReadVisit,
  { middle, nineTenths }: Spread,
  system: UnitSystem,
): { middle: string; nineTenths: string } {
  const { factor, unit } = axis("distance", system);
  const values = [middle, ...nineTenths].map((at) => drivenBy(read, at) * factor);
  const place = lastPlace(values[2]! - values[1]!, READ_TO);
  const [about, from, to] = toPlace(values, place, READ_TO);
  const of = read.clock.odometer === null ? " after the last full" : "";
  return {
    middle: `${about!} ${unit}${of}`,
    nineTenths: from === to ? `at ${to!} ${unit}${of}` : `${from!} to ${to!} ${unit}${of}`,
  };
}

/** Units of time before the visit, each up to so wide a middle nine tenths: nothing is told finer than it is known. */
const scales = [
  { word: "hour", unit: HOUR, upTo: 1.5 * DAY },
  { word: "day", unit: DAY, upTo: 10 * DAY },
  { word: "week", unit: 7 * DAY, upTo: Infinity },
] as const;

/** A time of day is told to these [s], the coarser where a third of the interval allows it: nobody's clock in a visit is surer than the first. */
const clockSteps = [HOUR, 900] as const;

/** Whether an answer is known to hours: then its dates are told with the time of day. Never where the visit itself is told by its day only. */
const inHours = ({ clock }: ReadVisit, { nineTenths: [from, to] }: Spread): boolean =>
  to - from <= scales[0].upTo && clock.error < DAY / 8;

/** Day and time of day. */
export function momentIn(read: ReadVisit, at: number): string {
  const minute = Math.floor((((at % DAY) + DAY) % DAY) / 60);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${dayIn(read, at)} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

/** Middle and middle nine tenths as dates, the last without its day where that is the first's; `between` is both, or the one day that they share. */
export function datesOf(
  read: ReadVisit,
  spread: Spread,
): { middle: string; from: string; to: string; between: string } {
  const { middle, nineTenths } = spread;
  const byTheClock = inHours(read, spread);
  const step = clockSteps.find((each) => each <= (nineTenths[1] - nineTenths[0]) / 3) ?? clockSteps[1];
  const text = (at: number) => (byTheClock ? momentIn(read, Math.round(at / step) * step) : dayIn(read, at));
  const [from, end] = nineTenths.map(text) as [string, string];
  const to = byTheClock && from.slice(0, 10) === end.slice(0, 10) ? end.slice(11) : end;
  return { middle: text(middle), from, to, between: from === end ? `${from} alone` : `${from} and ${to}` };
}

/** Time before the visit. */
export function agesOf(
  read: ReadVisit,
  spread: Spread,
): { middle: string; half: string; nineTenths: string } {
  const { middle, half, nineTenths } = spread;
  const scale = scales.find(({ upTo }) => nineTenths[1] - nineTenths[0] <= upTo)!;
  const { unit, word: name } = scale.unit < DAY && !inHours(read, spread) ? scales[1] : scale;
  const count = (at: number) => Math.max(0, Math.round((read.clock.at - at) / unit));
  const word = (number: number) =>
    number === 0 ? `less than a ${name}` : `${number} ${name}${number === 1 ? "" : "s"}`;
  const about = (number: number) => (number === 0 ? word(0) : `about ${word(number)}`);
  // The later moment is the smaller age.
  const span = ([from, to]: readonly [number, number]) => {
    const [young, old] = [count(to), count(from)];
    if (young === old) return about(young);
    return young === 0 ? `up to ${word(old)}` : `between ${young} and ${word(old)}`;
  };
  return { middle: about(count(middle)), half: span(half), nineTenths: span(nineTenths) };
}

const waits = [
  { word: "min", unit: 60, upTo: 2 * HOUR },
  { word: "h", unit: HOUR, upTo: 2 * DAY },
  { word: "days", unit: DAY, upTo: 21 * DAY },
  { word: "weeks", unit: 7 * DAY, upTo: Infinity },
] as const;

/** Time from the opening to something: "5 min (3 to 9)". */
export function waitOf({ middle, nineTenths: [low, high] }: Spread): string {
  const { unit, word } = waits.find(({ upTo }) => high <= upTo)!;
  const values = [middle, low, high].map((wait) => wait / unit);
  const [about, from, to] = values.map((value) => String(Math.round(value)));
  if (to === "0") return `under 1 ${word.replace(/s$/, "")}`;
  const counted = about === "1" ? word.replace(/s$/, "") : word;
  return from === to ? `${about!} ${counted}` : `${about!} ${counted} (${from!} to ${to!})`;
}
