// How far along its driving the vehicle is: what the trips of its week bring by a moment of the visit's clock, in seconds of running or in metres.

import { kindsOf, type TripKind } from "../duty/kinds.ts";
import type { Visit } from "./visit.ts";

const WEEK = 7 * 86400;

type Driving = Pick<Visit, "week" | "weekday">;

/** The sum of what each trip brings, by a moment; within a trip in even steps of its time. */
function alongTrips({ week, weekday }: Driving, of: (kind: TripKind) => number): (clock: number) => number {
  const { kinds, occurrences } = kindsOf(week);
  const trips = occurrences.map(({ startsAt, kind }) => ({
    at: (startsAt - weekday * 86400 + WEEK) % WEEK,
    time: kinds[kind]!.time,
    brings: of(kinds[kind]!),
  }));
  const whole = trips.reduce((sum, { brings }) => sum + brings, 0);
  return (clock) => {
    const weeks = Math.floor(clock / WEEK);
    const into = clock - weeks * WEEK;
    let sum = weeks * whole;
    for (const { at, time, brings } of trips) sum += brings * Math.max(0, Math.min(1, (into - at) / time));
    return sum;
  };
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
  const { kinds, occurrences } = kindsOf(week);
  const trips = occurrences
    .map(({ startsAt, kind }) => ({
      from: (startsAt - weekday * 86400 + WEEK) % WEEK,
      time: kinds[kind]!.time,
    }))
    .sort((a, b) => b.from - a.from);
  const whole = trips.reduce((sum, { time }) => sum + time, 0);
  const run = runningOf({ week, weekday })(at);
  return (age) => {
    if (!(whole > 0)) return at - age;
    const then = run - (age / WEEK) * whole;
    const weeks = Math.floor(then / whole);
    let left = (weeks + 1) * whole - then; // of that week's running
    for (const { from, time } of trips) {
      if (left <= time) return weeks * WEEK + from + time - left;
      left -= time;
    }
    return weeks * WEEK;
  };
}

/** Share of the way from second 0 to the visit that is driven by a moment [-]: trip by trip, so that nothing is driven overnight. */
export function wayOf(visit: Driving & Pick<Visit, "at">): (clock: number) => number {
  const driven = alongTrips(visit, ({ pieceDistances }) => pieceDistances.at(-1)!);
  const [first, all] = [driven(0), driven(visit.at) - driven(0)];
  return (clock) => (all > 0 ? (driven(clock) - first) / all : clock / visit.at);
}
