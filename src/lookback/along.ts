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

/** Share of the way from second 0 to the visit that is driven by a moment [-]: trip by trip, so that nothing is driven overnight. */
export function wayOf(visit: Driving & Pick<Visit, "at">): (clock: number) => number {
  const driven = alongTrips(visit, ({ pieceDistances }) => pieceDistances.at(-1)!);
  const [first, all] = [driven(0), driven(visit.at) - driven(0)];
  return (clock) => (all > 0 ? (driven(clock) - first) / all : clock / visit.at);
}
