// Which event happens when: in the first week in which enough is lacking, the first moment of its trips at which enough is lacking.

import type { EventName } from "../history/watch.ts";
import { takeAir, takeLevel, takeOpening, weekAgeing } from "./flow.ts";
import { airAt, between, spread, tripLoses, WEEK, type March } from "./march.ts";
import type { Candidate, Threshold } from "./prepared.ts";

/** An event of a duty-averaged history; names, clock, running, distance and lost as in the trip-resolved one. */
export interface DutyEvent {
  readonly name: EventName;
  readonly clutch?: string;
  readonly condition: string;
  /** Seconds since the start of the history, seconds of running, metres since the start. */
  readonly clock: number;
  readonly running: number;
  readonly distance: number;
  /** Fluid lost so far [kg]. */
  readonly lost: number;
}

/** Where in the weeks a moment lies. */
export interface Found {
  week: number;
  trip: number;
  /** Seconds since the start of the trip; negative in the stand before it. */
  time: number;
  lost: number;
  candidate: Candidate | null;
}

/** Least loss [kg] at which the event can happen in any air that the week was prepared for. */
export function leastCritical({ candidates }: Threshold): number {
  let least = Infinity;
  for (const { critical } of candidates) for (const value of critical) least = Math.min(least, value);
  return least;
}

/** Critical loss of a moment [kg] and its time in the trip [s], in the air whose weights were taken. */
function mixedAt(values: Float64Array, airs: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < airs.length; i++) sum += airs[i]! * values[i]!;
  return sum;
}

/** Looks for the event in a week; true and written to `out` when it happens there. The week must have been marched. */
export function happensIn(march: March, threshold: Threshold, week: number, out: Found): boolean {
  const { prepared, reading, shortAtFirst, order, lostAtStart, lostAtEnd, addedAtStart } = march;
  spread(march, week);
  for (let i = 0; i < order.length; i++) {
    takeAir(reading, prepared.climates, airAt(march, week * WEEK + march.startsAt[i]!));
    const { kind } = prepared.occurrences[order[i]!]!;
    const atStart = shortAtFirst + lostAtStart[i]! - addedAtStart[i]!;
    const atEnd = shortAtFirst + lostAtEnd[i]! - addedAtStart[i]!;
    let first: Candidate | null = null;
    let [firstTime, firstLost] = [Infinity, 0];
    for (const candidate of threshold.candidates) {
      if (candidate.kind !== kind) continue;
      const critical = mixedAt(candidate.critical, reading.airs);
      if (!(critical <= atEnd)) continue;
      const time = mixedAt(candidate.time, reading.airs);
      if (time >= firstTime) continue;
      const lost = atEnd > atStart ? lostAt(march, week, i, time) : lostAtStart[i]!;
      if (shortAtFirst + lost - addedAtStart[i]! < critical) continue;
      first = candidate;
      [firstTime, firstLost] = [time, lost];
    }
    if (first !== null) {
      out.week = week;
      out.trip = i;
      out.time = firstTime;
      out.lost = firstLost;
      out.candidate = first;
      return true;
    }
  }
  return false;
}

/** Lost at a moment of a trip of the week that was walked last [kg]. */
export function lostAt(march: March, week: number, trip: number, time: number): number {
  const { prepared, reading, leak, lostAtStart, lostAtEnd, order, shortAtFirst, addedAtStart } = march;
  if (leak === null) return lostAtStart[trip]!;
  const { kind } = prepared.occurrences[order[trip]!]!;
  const running = week * march.weekTime + march.timeBefore[trip]!;
  const whole = prepared.kinds[kind]!.time;
  takeLevel(reading, prepared.climates, shortAtFirst + lostAtStart[trip]! - addedAtStart[trip]!);
  const age = Math.max(0, running + 0.5 * whole - march.opensRunning);
  takeOpening(reading, prepared, leak, age, week * weekAgeing(reading, prepared));
  const from = Math.max(0, march.opensRunning - running);
  if (time <= from) return lostAtStart[trip]!;
  const all = tripLoses(march, kind, from, whole);
  const share = all > 0 ? tripLoses(march, kind, from, time) / all : 0;
  return lostAtStart[trip]! + (lostAtEnd[trip]! - lostAtStart[trip]!) * share;
}

/** The event at a moment that was found. */
export function eventOf(march: March, name: EventName, condition: string, clutch: string | undefined, found: Found): DutyEvent {
  const { prepared, order, startsAt, timeBefore, distanceBefore } = march;
  const { week, trip, time, lost } = found;
  const { pieceTimes, pieceDistances } = prepared.kinds[prepared.occurrences[order[trip]!]!.kind]!;
  return {
    name,
    condition,
    clock: week * WEEK + startsAt[trip]! + time,
    running: week * march.weekTime + timeBefore[trip]! + Math.max(0, time),
    distance: week * march.weekDistance + distanceBefore[trip]! + between(pieceTimes, pieceDistances, Math.max(0, time)),
    lost,
    ...(clutch === undefined ? {} : { clutch }),
  };
}
