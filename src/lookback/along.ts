// How far along its driving the vehicle is: what the trips of its week bring by a moment of the visit's clock, in seconds of running or in metres.

import { kindsOf, type TripKind } from "../duty/kinds.ts";
import type { Visit } from "./visit.ts";

const WEEK = 7 * 86400;

type Driving = Pick<Visit, "week" | "weekday">;

/** A trip of the week, from the visit's weekday on: when it starts, how long it lasts by the clock [s], and its kind. */
interface Coming {
  readonly from: number;
  readonly lasts: number;
  readonly kind: TripKind;
}

/** The week's trips in the order in which they come. One lasts until the next begins at most, so that there is never more than one on the way. */
function comingFrom({ week, weekday }: Driving): Coming[] {
  const { kinds, occurrences } = kindsOf(week);
  const trips = occurrences
    .map(({ startsAt, kind }) => ({ from: (startsAt - weekday * 86400 + WEEK) % WEEK, kind: kinds[kind]! }))
    .sort((a, b) => a.from - b.from);
  return trips.map(({ from, kind }, i) => {
    const next = trips[i + 1]?.from ?? trips[0]!.from + WEEK;
    return { from, lasts: Math.min(kind.time, next - from), kind };
  });
}

/**
 * The sum of what each trip brings, by a moment, from the visit's second 0 on; within a trip in even steps of its time. The last trip of the
 * week may run into the next one.
 */
function alongTrips(visit: Driving, of: (kind: TripKind) => number): (clock: number) => number {
  const trips = comingFrom(visit).map(({ from, lasts, kind }) => ({ from, lasts, brings: of(kind) }));
  const begun = (clock: number) => {
    const weeks = Math.floor(clock / WEEK);
    const into = clock - weeks * WEEK;
    let sum = 0;
    for (const { from, lasts, brings } of trips) {
      // All that have begun by then, less what the one on the way still brings.
      const since = into < from ? into - from + WEEK : into - from;
      sum += brings * (into < from ? weeks : weeks + 1);
      if (since < lasts) sum -= brings * (1 - since / lasts);
    }
    return sum;
  };
  const first = begun(0);
  return (clock) => begun(clock) - first;
}

/** Running seconds by a moment, of the week as told. */
export const runningOf = (visit: Driving): ((clock: number) => number) =>
  alongTrips(visit, ({ time }) => time);

const knownBack = new WeakMap<Driving, (age: number) => number>();

/**
 * The moment from which on so much was driven until the visit, told in seconds as if a week's driving took the whole week: always in a trip, however long the vehicle
 * stood since.
 */
export function drivenBack(visit: Driving & Pick<Visit, "at">): (age: number) => number {
  let back = knownBack.get(visit);
  if (back === undefined) knownBack.set(visit, (back = backFrom(visit)));
  return back;
}

function backFrom({ week, weekday, at }: Driving & Pick<Visit, "at">): (age: number) => number {
  const trips = comingFrom({ week, weekday });
  const whole = trips.reduce((sum, { kind }) => sum + kind.time, 0);
  if (!(whole > 0)) return (age) => at - age;
  const running = runningOf({ week, weekday });
  // Weeks are counted from the start of a trip, over which none can run.
  const first = trips[0]!.from;
  const run = running(at) - running(first);
  trips.reverse();
  return (age) => {
    const then = run - (age / WEEK) * whole;
    const weeks = Math.ceil(then / whole) - 1;
    let left = (weeks + 1) * whole - then; // of that week's running
    for (const { from, lasts, kind } of trips) {
      if (left < kind.time) return weeks * WEEK + from + lasts * (1 - left / kind.time);
      left -= kind.time;
    }
    return weeks * WEEK + first;
  };
}

/** Share of the way from second 0 to the visit that is driven by a moment [-]: trip by trip, so that nothing is driven overnight. */
export function wayOf(visit: Driving & Pick<Visit, "at">): (clock: number) => number {
  const driven = alongTrips(visit, ({ pieceDistances }) => pieceDistances.at(-1)!);
  const all = driven(visit.at);
  return (clock) => (all > 0 ? driven(clock) / all : clock / visit.at);
}

/** Halvings by which a moment is found: to seconds of a day, to a minute of a season. */
const HALVINGS = 16;

/**
 * The way of a vehicle that stood from a moment on (Infinity: it drove to the visit): all of it lies before that, however long the week's trips would have gone on.
 */
export const wayUntil =
  (way: (clock: number) => number, stood: number): ((clock: number) => number) =>
  (clock) => {
    const whole = way(stood);
    return stood < Infinity && whole > 0 ? way(Math.min(clock, stood)) / whole : way(clock);
  };

/** The moment by the miles of a clock that went on to the visit for a moment of a vehicle that stood before that [s]. */
export function milesOf(
  way: (clock: number) => number,
  stood: number,
  visited: number,
  clock: number,
): number {
  if (!(stood < visited) || !(clock > 0 && clock < Infinity)) return clock;
  const share = wayUntil(way, stood)(clock);
  let [low, high] = [Math.min(clock, stood), visited];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (low + high);
    if (way(middle) < share) low = middle;
    else high = middle;
  }
  return high;
}
