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

const metres = ({ pieceDistances }: TripKind): number => pieceDistances.at(-1)!;

/** Share of the way from second 0 to the visit that is driven by a moment [-]: trip by trip, so that nothing is driven overnight. */
export function wayOf(visit: Driving & Pick<Visit, "at">): (clock: number) => number {
  const driven = alongTrips(visit, metres);
  const all = driven(visit.at);
  return (clock) => (all > 0 ? driven(clock) / all : clock / visit.at);
}

/** Sums of metres are rounded: what is over the end of a trip by no more than this share is its end. */
const ROUNDED = 1e-9;

/** `wayOf` read the other way: the first moment by which a share of the way is driven [s], always in a trip or at its end. */
export function wayBack(visit: Driving & Pick<Visit, "at">): (share: number) => number {
  const driven = alongTrips(visit, metres);
  const all = driven(visit.at);
  if (!(all > 0)) return (share) => share * visit.at;
  const trips = comingFrom(visit).map(({ from, lasts, kind }) => ({ from, lasts, brings: metres(kind) }));
  const whole = trips.reduce((sum, { brings }) => sum + brings, 0);
  // Weeks are counted from the start of a trip, over which none can run.
  const first = driven(trips[0]!.from);
  return (share) => {
    const then = share * all - first;
    const weeks = Math.ceil(then / whole - ROUNDED) - 1;
    let left = then - weeks * whole; // of that week's metres
    let end = 0;
    for (const { from, lasts, brings } of trips) {
      if (!(brings > 0)) continue;
      if (left <= brings * (1 + ROUNDED)) return weeks * WEEK + from + lasts * Math.min(1, left / brings);
      left -= brings;
      end = from + lasts;
    }
    return weeks * WEEK + end;
  };
}

/**
 * The way of a vehicle that stood from a moment on (Infinity: it drove to the visit): all of it lies before that, however long the week's trips would have gone on.
 */
export const wayUntil =
  (way: (clock: number) => number, stood: number): ((clock: number) => number) =>
  (clock) => {
    const whole = way(stood);
    return stood < Infinity && whole > 0 ? way(Math.min(clock, stood)) / whole : way(clock);
  };

/** The way of a visit (`wayOf`), and the same read the other way (`wayBack`). */
export interface Ways {
  readonly way: (clock: number) => number;
  readonly wayBack: (share: number) => number;
}

/** The moment by the miles of a clock that went on to the visit for a moment of a vehicle that stood before that [s]. */
export function milesOf({ way, wayBack }: Ways, stood: number, visited: number, clock: number): number {
  if (!(stood < visited) || !(clock > 0 && clock < Infinity)) return clock;
  const then = wayBack(wayUntil(way, stood)(clock));
  return Math.min(visited, Math.max(Math.min(clock, stood), then));
}
