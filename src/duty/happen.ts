// Which event happens when: in the first week in which enough is lacking, the first moment of its trips at which enough is lacking.

import type { EventName } from "../history/watch.ts";
import { takeOpening, weekAgeing } from "./flow.ts";
import { takeAir, takeLevel } from "./reading.ts";
import { airAt, between, WEEK, type March } from "./course.ts";
import { spread, tripLoses } from "./week.ts";
import type { Candidate, Prepared } from "./prepared.ts";

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

/** A moment of one kind of trip and the event that comes there. */
interface Moment {
  readonly threshold: number;
  readonly candidate: Candidate;
  readonly least: number;
}

/** Events that are looked for: which have come, and where; kept from plan to plan. */
export interface Lookout {
  /** By kind of trip, by rising least loss. */
  readonly moments: readonly (readonly Moment[])[];
  /** By event: the least loss at which it can come in any air that was prepared [kg lacking]. */
  readonly least: Float64Array;
  readonly come: Uint8Array;
  readonly found: readonly Found[];
}

const leastOf = ({ critical }: Candidate): number =>
  critical.reduce((least, value) => Math.min(least, value), Infinity);

export function newLookout({ kinds, thresholds }: Prepared): Lookout {
  const all = thresholds.flatMap(({ candidates }, threshold) =>
    candidates.map((candidate) => ({ threshold, candidate, least: leastOf(candidate) })),
  );
  return {
    moments: kinds.map((_, k) =>
      all.filter(({ candidate }) => candidate.kind === k).sort((a, b) => a.least - b.least),
    ),
    least: Float64Array.from(thresholds, ({ candidates }) => Math.min(...candidates.map(leastOf))),
    come: new Uint8Array(thresholds.length),
    found: thresholds.map(() => ({ week: -1, trip: 0, time: 0, lost: 0, candidate: null })),
  };
}

/** A critical loss [kg] or a time in the trip [s], in the air whose weights were taken. */
function mixedAt(values: Float64Array, airs: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < airs.length; i++) sum += airs[i]! * values[i]!;
  return sum;
}

/** Up to which loss the moment brings its event: the nearest climate says whether there is an end at all. */
function endOf(until: Float64Array, airs: Float64Array): number {
  let nearest = 0;
  for (let i = 1; i < airs.length; i++) if (airs[i]! > airs[nearest]!) nearest = i;
  const end = until[nearest]!;
  if (end === Infinity) return Infinity;
  let sum = 0;
  for (let i = 0; i < airs.length; i++) sum += airs[i]! * (until[i]! < Infinity ? until[i]! : end);
  return sum;
}

/** Looks through a marched week for every event that has not come; true when one does: `found` has its week then. */
export function lookThrough(march: March, lookout: Lookout, week: number): boolean {
  const { prepared, reading, shortAtFirst, order, lostAtStart, lostAtEnd, addedAtStart } = march;
  const { moments, least, come, found } = lookout;
  const most = shortAtFirst + march.lost[week + 1]! - march.added[week]!;
  let possible = false;
  for (let t = 0; t < come.length && !possible; t++) possible = come[t] === 0 && least[t]! <= most;
  if (!possible) return false;
  spread(march, week);
  let some = false;
  for (let i = 0; i < order.length; i++) {
    const list = moments[prepared.occurrences[order[i]!]!.kind]!;
    const before = shortAtFirst - addedAtStart[i]!;
    const atEnd = before + lostAtEnd[i]!;
    let taken = false;
    for (let m = 0; m < list.length; m++) {
      const { threshold, candidate, least: needs } = list[m]!;
      if (needs > atEnd) break;
      const at = found[threshold]!;
      // Once it has come, only an earlier moment of the same trip counts.
      if (come[threshold] === 1 && (at.week !== week || at.trip !== i)) continue;
      if (!taken) takeAir(reading, prepared.climates, airAt(march, week * WEEK + march.startsAt[i]!));
      taken = true;
      const critical = mixedAt(candidate.critical, reading.airs);
      if (critical > atEnd) continue;
      const time = mixedAt(candidate.time, reading.airs);
      if (come[threshold] === 1 && time >= at.time) continue;
      const lost = lostAtEnd[i]! > lostAtStart[i]! ? lostAt(march, week, i, time) : lostAtStart[i]!;
      if (before + lost < critical || before + lost > endOf(candidate.until, reading.airs)) continue;
      come[threshold] = 1;
      at.week = week;
      at.trip = i;
      at.time = time;
      at.lost = lost;
      at.candidate = candidate;
      some = true;
    }
  }
  return some;
}

/** Lost at a moment of a trip of the week that was walked last [kg]. */
export function lostAt(march: March, week: number, trip: number, time: number): number {
  const { prepared, reading, leak, lostAtStart, lostAtEnd, order, shortAtFirst, addedAtStart } = march;
  if (leak === null) return lostAtStart[trip]!;
  const { kind } = prepared.occurrences[order[trip]!]!;
  const running = week * march.weekTime + march.timeBefore[trip]!;
  const whole = prepared.kinds[kind]!.time;
  const from = Math.max(0, march.opensRunning - running);
  if (time <= from) return lostAtStart[trip]!;
  const place = week * order.length + trip;
  if (march.opened !== place) {
    march.opened = place;
    takeLevel(reading, prepared.climates, shortAtFirst + lostAtStart[trip]! - addedAtStart[trip]!);
    const age = Math.max(0, running + 0.5 * whole - march.opensRunning);
    const calendar = Math.max(0, week * WEEK + march.startsAt[trip]! + 0.5 * whole - march.opensAt);
    takeOpening(reading, prepared, leak, age, calendar, week * weekAgeing(reading, prepared));
    march.tripLoss = tripLoses(march, kind, from, whole);
  }
  const share = march.tripLoss > 0 ? tripLoses(march, kind, from, time) / march.tripLoss : 0;
  return lostAtStart[trip]! + (lostAtEnd[trip]! - lostAtStart[trip]!) * share;
}

/** The event at a moment that was found. */
export function eventOf(
  march: March,
  name: EventName,
  condition: string,
  clutch: string | undefined,
  found: Found,
): DutyEvent {
  const { prepared, order, startsAt, timeBefore, distanceBefore } = march;
  const { week, trip, time, lost } = found;
  const { pieceTimes, pieceDistances } = prepared.kinds[prepared.occurrences[order[trip]!]!.kind]!;
  return {
    name,
    condition,
    clock: week * WEEK + startsAt[trip]! + time,
    running: week * march.weekTime + timeBefore[trip]! + Math.max(0, time),
    distance:
      week * march.weekDistance +
      distanceBefore[trip]! +
      between(pieceTimes, pieceDistances, Math.max(0, time)),
    lost,
    ...(clutch === undefined ? {} : { clutch }),
  };
}
