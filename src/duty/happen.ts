// Which event happens when: in the first week in which enough is lacking, the first moment of its trips at which enough is lacking.

import type { EventName } from "../history/watch.ts";
import { takeAge, takeOpening } from "./flow.ts";
import { beyondAirs, takeAir, takeLevel } from "./reading.ts";
import { airAt, airOf, between, DAY, WEEK, type March } from "./course.ts";
import { tripLoses } from "./week.ts";
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

/** A moment, and the least loss at which it can come in any air that it stands for [kg lacking]. */
interface Moment {
  readonly candidate: Candidate;
  readonly least: number;
}

/** Events that are looked for: which have come, and where; kept from plan to plan. */
export interface Lookout {
  /** By event, air and kind of trip, by rising least loss. */
  readonly moments: readonly (readonly (readonly (readonly Moment[])[])[])[];
  /** By event and air: the least loss at which it can come in that air [kg lacking]. */
  readonly leastIn: readonly Float64Array[];
  /** By event: the least loss at which it can come in any air that was prepared [kg lacking]. */
  readonly least: Float64Array;
  readonly come: Uint8Array;
  readonly found: readonly Found[];
  /** Events that have not come, by rising least loss, and how many they are. */
  readonly waiting: Int32Array;
  waits: number;
  /** Events that came in the trip that was found last, and how many they are. */
  readonly fresh: Int32Array;
  came: number;
  readonly byLeast: Int32Array;
  /** Which events are a clutch of the gears burnt, and whether one has come. */
  readonly burns: Uint8Array;
  burnt: boolean;
}

export function newLookout({ kinds, thresholds, unit }: Prepared): Lookout {
  const moments = thresholds.map(({ airs, moments: byAir }) =>
    byAir.map((ofAir, a) => {
      const down = halfway(airs, a, -1);
      const up = halfway(airs, a, 1);
      const leastOf = ({ critical, colder, warmer }: Candidate) =>
        critical - Math.max(0, colder * down, -warmer * up);
      return kinds.map((_, k) =>
        ofAir
          .filter(({ kind }) => kind === k)
          .map((candidate) => ({ candidate, least: leastOf(candidate) }))
          .sort((a, b) => a.least - b.least),
      );
    }),
  );
  const leastIn = moments.map((byAir) =>
    Float64Array.from(byAir, (byKind) => Math.min(...byKind.flat().map((moment) => moment.least))),
  );
  const least = Float64Array.from(leastIn, (byAir) => Math.min(...byAir));
  const count = thresholds.length;
  return {
    moments,
    leastIn,
    least,
    come: new Uint8Array(count),
    found: thresholds.map(() => ({ week: -1, trip: 0, time: 0, lost: 0, candidate: null })),
    waiting: new Int32Array(count),
    waits: 0,
    fresh: new Int32Array(count),
    came: 0,
    burns: Uint8Array.from(thresholds, ({ name, clutch }) =>
      name === "damage 1" && clutch !== unit.build.lockUp.clutch.name ? 1 : 0,
    ),
    burnt: false,
    byLeast: Int32Array.from(least.keys()).sort((a, b) => least[a]! - least[b]!),
  };
}

/** Half of the way to the next air on one side [K]. */
function halfway(airs: readonly number[], at: number, side: -1 | 1): number {
  const next = airs[at + side];
  return next === undefined ? beyondAirs : 0.5 * Math.abs(next - airs[at]!);
}

/** Begins anew: nothing has come. */
export function beginLookout(lookout: Lookout): void {
  lookout.come.fill(0);
  lookout.burnt = false;
  lookout.waiting.set(lookout.byLeast);
  lookout.waits = lookout.waiting.length;
}

/** Takes an event off the list of those that are waited for. */
export function noLonger(lookout: Lookout, threshold: number): void {
  lookout.come[threshold] = 1;
  if (lookout.burns[threshold] === 1) lookout.burnt = true;
  const { waiting } = lookout;
  let kept = 0;
  for (let i = 0; i < lookout.waits; i++) if (waiting[i] !== threshold) waiting[kept++] = waiting[i]!;
  lookout.waits = kept;
}

/** Whether any event can still come in a week, in the air of its days. */
export function mayHappen(march: March, { least, leastIn, waiting, waits }: Lookout, week: number): boolean {
  const most = march.shortAtFirst + march.lost[week + 1]! - march.added[week]!;
  if (waits === 0 || least[waiting[0]!]! > most) return false;
  const { thresholds } = march.prepared;
  let coldest = Infinity;
  let warmest = -Infinity;
  for (let day = 0; day < 7; day++) {
    const air = airAt(march, week * WEEK + day * DAY);
    coldest = Math.min(coldest, air);
    warmest = Math.max(warmest, air);
  }
  for (let w = 0; w < waits && least[waiting[w]!]! <= most; w++) {
    const t = waiting[w]!;
    const { airs } = thresholds[t]!;
    for (let node = nearest(airs, coldest); node <= nearest(airs, warmest); node++)
      if (leastIn[t]![node]! <= most) return true;
  }
  return false;
}

/** The nearest of some airs, which rise [K]; the colder of two that are as near. */
function nearest(airs: readonly number[], air: number): number {
  let node = 0;
  while (node < airs.length - 1 && airs[node]! + airs[node + 1]! < 2 * air) node++;
  return node;
}

/** Looks through a week's trips from one of them on for events that have not come; returns the first trip in which some do (`fresh`), or their number. */
export function lookOn(march: March, lookout: Lookout, week: number, from: number): number {
  const { prepared, shortAtFirst, order, lostAtEnd, addedAtStart } = march;
  const { least, waiting, fresh, come } = lookout;
  lookout.came = 0;
  for (let i = from; i < order.length; i++) {
    const before = shortAtFirst - addedAtStart[i]!;
    const atEnd = before + lostAtEnd[i]!;
    if (!(least[waiting[0]!]! <= atEnd)) continue;
    const { kind } = prepared.occurrences[order[i]!]!;
    const air = airAt(march, week * WEEK + march.startsAt[i]!);
    lookInto(march, lookout, week, i, kind, air, before, atEnd, Infinity, 0);
    const burn = firstBurn(lookout);
    if (burn !== null) lookInto(march, lookout, week, i, kind, air, before, atEnd, burn.time, burn.lost);
    if (lookout.came === 0) continue;
    for (let n = 0; n < lookout.came; n++) {
      come[fresh[n]!] = 1;
      noLonger(lookout, fresh[n]!);
    }
    return i;
  }
  return order.length;
}

/** The first clutch that burns among the events that came in a trip. */
function firstBurn({ fresh, came, found, burns }: Lookout): Found | null {
  let first: Found | null = null;
  for (let n = 0; n < came; n++) {
    const at = found[fresh[n]!]!;
    if (burns[fresh[n]!] === 1 && (first === null || at.time < first.time)) first = at;
  }
  return first;
}

/** Looks for every event that has not come in one trip. From the time at which a clutch burnt on [s] the trip goes as it goes at the loss of that moment [kg]. */
function lookInto(
  march: March,
  lookout: Lookout,
  week: number,
  trip: number,
  kind: number,
  air: number,
  before: number,
  atEnd: number,
  burntAt: number,
  burntLost: number,
): void {
  const { least, waiting, found, moments, fresh } = lookout;
  const { thresholds } = march.prepared;
  lookout.came = 0;
  for (let w = 0; w < lookout.waits; w++) {
    const t = waiting[w]!;
    if (least[t]! > atEnd) break;
    const { airs } = thresholds[t]!;
    const node = nearest(airs, air);
    const warmer = air - airs[node]!;
    const list = moments[t]![node]![kind]!;
    if (comesIn(march, list, warmer, week, trip, before, atEnd, lookout.burnt, burntAt, burntLost, found[t]!))
      fresh[lookout.came++] = t;
  }
}

/** The first of some moments of a trip at which enough is lacking and not too much, in air so much warmer than theirs [K]. */
function comesIn(
  march: March,
  moments: readonly Moment[],
  warmer: number,
  week: number,
  trip: number,
  before: number,
  atEnd: number,
  burnt: boolean,
  burntAt: number,
  burntLost: number,
  at: Found,
): boolean {
  const atStart = before + march.lostAtStart[trip]!;
  let time = Infinity;
  for (let m = 0; m < moments.length; m++) {
    const { candidate, least } = moments[m]!;
    if (least > atEnd) break;
    if (candidate.time >= time) continue;
    const shift = warmer * (warmer < 0 ? candidate.colder : candidate.warmer);
    const from = candidate.critical + shift;
    const until = candidate.until + shift;
    if (from > atEnd || until < atStart) continue;
    const told = candidate.time > burntAt;
    if (candidate.follows && !told && !burnt) continue;
    // Only a loss that passes an edge within the trip has to be known to the moment.
    if (told || from > atStart || until < atEnd) {
      const lacking = before + (told ? burntLost : lostIn(march, week, trip, candidate.time));
      if (lacking < from || lacking > until) continue;
    }
    time = candidate.time;
    at.candidate = candidate;
  }
  if (time === Infinity) return false;
  at.week = week;
  at.trip = trip;
  at.time = time;
  at.lost = lostIn(march, week, trip, time);
  return true;
}

function lostIn(march: March, week: number, trip: number, time: number): number {
  const { lostAtStart, lostAtEnd } = march;
  return lostAtEnd[trip]! > lostAtStart[trip]! ? lostAt(march, week, trip, time) : lostAtStart[trip]!;
}

/** Lost at a moment of a trip of the week that was turned to last [kg]. */
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
    takeAir(reading, airOf(march, week));
    takeLevel(reading, shortAtFirst + lostAtStart[trip]! - addedAtStart[trip]!);
    const age = Math.max(0, running + 0.5 * whole - march.opensRunning);
    const calendar = Math.max(0, week * WEEK + march.startsAt[trip]! + 0.5 * whole - march.opensAt);
    takeAge(reading, prepared.unit, week);
    takeOpening(reading, leak, age, calendar);
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
  const clock = week * WEEK + startsAt[trip]! + time;
  const driven = Math.max(0, time);
  const running = week * march.weekTime + timeBefore[trip]! + driven;
  const distance =
    week * march.weekDistance + distanceBefore[trip]! + between(pieceTimes, pieceDistances, driven);
  return clutch === undefined
    ? { name, condition, clock, running, distance, lost }
    : { name, condition, clock, running, distance, lost, clutch };
}
