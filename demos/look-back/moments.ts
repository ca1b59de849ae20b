// Moments of a visit in words: dates and odometer readings never stand bare, and are no finer than the answer's spread.

import type { Spread } from "../../src/lookback/answer/spread.ts";
import { drivenBy, visitDay, type ReadVisit } from "../../src/inputs/visit.ts";
import { axis, type UnitSystem } from "../../src/units/show.ts";
import { lastPlace, placesInOrder, toPlace } from "../../src/units/show-spread.ts";

const HOUR = 3600;
const DAY = 24 * HOUR;

export const dayIn = (read: ReadVisit, at: number): string => visitDay(read, at);

/** An odometer is read to a mile [m], or told to one unit: what is closer together is one reading. */
const READ_TO = 1609.344;

/** Moments that stand beside each other, null where there is none to tell. */
type Beside = readonly (Spread | null)[];

/** A middle and its interval by the odometer. */
export interface Driven {
  readonly middle: string;
  readonly nineTenths: string;
}

/**
 * Middles and their intervals by the odometer: "56490 mi" and "56470 to 56500 mi", or "1290 mi after the last full" when nobody read it; "at 56490 mi" where both
 * ends are one reading. None is told on the wrong side of another.
 */
export function odometersOf(read: ReadVisit, spreads: Beside, system: UnitSystem): (Driven | null)[] {
  const { factor, unit } = axis("distance", system);
  const driven = spreads.map(
    (spread) => spread && [spread.middle, ...spread.nineTenths].map((at) => drivenBy(read, at) * factor),
  );
  const places = placesInOrder(
    driven.map((values) => values && values[0]!),
    driven.map((values) => (values === null ? 1 : lastPlace(values[2]! - values[1]!, 1))),
    (value, place) => Number(toPlace([value], place, 1)[0]),
  );
  const of = read.clock.odometer === null ? " after the last full" : "";
  return driven.map((values, i) => {
    if (values === null) return null;
    const [about, from, to] = toPlace(values, places[i]!, 1);
    const one = Number(to) - Number(from) <= Math.round(READ_TO * factor);
    return {
      middle: `${about!} ${unit}${of}`,
      nineTenths: `${one ? `at ${about!}` : `${from!} to ${to!}`} ${unit}${of}`,
    };
  });
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

/** A middle and its middle nine tenths as dates, the last without its day where that is the first's; `between` is both, or the one day that they share. */
export interface Dates {
  readonly middle: string;
  readonly from: string;
  readonly to: string;
  readonly between: string;
}

/** Dates, with the time of day where that is known. No middle is told on the wrong side of another. */
export function datesOf(read: ReadVisit, spreads: Beside): (Dates | null)[] {
  const steps = placesInOrder(
    spreads.map((spread) => (spread !== null && inHours(read, spread) ? spread.middle : null)),
    spreads.map((spread) => (spread === null ? DAY : clockStep(spread))),
  );
  return spreads.map((spread, i) => {
    if (spread === null) return null;
    const byTheClock = inHours(read, spread);
    const text = (at: number) =>
      byTheClock ? momentIn(read, Math.round(at / steps[i]!) * steps[i]!) : dayIn(read, at);
    const [from, end] = spread.nineTenths.map(text) as [string, string];
    const to = byTheClock && from.slice(0, 10) === end.slice(0, 10) ? end.slice(11) : end;
    const between = from === end ? `${from} alone` : `${from} and ${to}`;
    return { middle: text(spread.middle), from, to, between };
  });
}

const clockStep = ({ nineTenths: [from, to] }: Spread): number =>
  clockSteps.find((each) => each <= (to - from) / 3) ?? clockSteps[1];

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

/** Times from the opening to something: "5 min (3 to 9)". None is told on the wrong side of another. */
export function waitsOf(spreads: Beside): (string | null)[] {
  const units = placesInOrder(
    spreads.map((spread) => spread && spread.middle),
    spreads.map((spread) =>
      spread === null ? Infinity : waits.find(({ upTo }) => spread.nineTenths[1] <= upTo)!.unit,
    ),
  );
  return spreads.map((spread, i) => spread && waitOf(spread, units[i]!));
}

function waitOf({ middle, nineTenths }: Spread, unit: number): string {
  const { word } = waits.find((each) => each.unit === unit)!;
  const [about, from, to] = [middle, ...nineTenths].map((wait) => String(Math.round(wait / unit)));
  if (to === "0") return `under 1 ${word.replace(/s$/, "")}`;
  const counted = about === "1" ? word.replace(/s$/, "") : word;
  return from === to ? `${about!} ${counted}` : `${about!} ${counted} (${from!} to ${to!})`;
}
