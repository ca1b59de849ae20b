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
}

/**
 * Moments of a kind of trip by rising least loss, the numbers of each one after another: the least loss at which it can come in any air that it stands
 * for [kg lacking], then as in `Candidate`.
 */
type Moments = Float64Array;
const [LEAST, CRITICAL, UNTIL, TIME, COLDER, WARMER, FOLLOWS, NEXT] = [0, 1, 2, 3, 4, 5, 6, 7];

/** A trip that is looked into: lacking at its start and end [kg], what of that was not lost, and from when on [s] it goes as at the loss of a burn [kg]. */
interface Looked {
  week: number;
  trip: number;
  before: number;
  atStart: number;
  atEnd: number;
  burntAt: number;
  burntLost: number;
}

/** Events that are looked for: which have come, and where; kept from plan to plan. */
export interface Lookout {
  /** By event, air and kind of trip. */
  readonly moments: readonly (readonly (readonly Moments[])[])[];
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
  readonly looked: Looked;
}

export function newLookout({ kinds, thresholds, unit }: Prepared): Lookout {
  const moments = thresholds.map(({ airs, moments: byAir }) =>
    byAir.map((ofAir, a) => {
      const [down, up] = [halfway(airs, a, -1), halfway(airs, a, 1)];
      return kinds.map((_, k) =>
        sideBySide(
          ofAir.filter(({ kind }) => kind === k),
          down,
          up,
        ),
      );
    }),
  );
  const leastIn = moments.map((byAir) =>
    Float64Array.from(byAir, (byKind) => Math.min(...byKind.map((list) => list[LEAST] ?? Infinity))),
  );
  const least = Float64Array.from(leastIn, (byAir) => Math.min(...byAir));
  const count = thresholds.length;
  return {
    moments,
    leastIn,
    least,
    come: new Uint8Array(count),
    found: thresholds.map(() => ({ week: -1, trip: 0, time: 0, lost: 0 })),
    waiting: new Int32Array(count),
    waits: 0,
    fresh: new Int32Array(count),
    came: 0,
    burns: Uint8Array.from(thresholds, ({ name, clutch }) =>
      name === "damage 1" && clutch !== unit.build.lockUp.clutch.name ? 1 : 0,
    ),
    burnt: false,
    looked: { week: 0, trip: 0, before: 0, atStart: 0, atEnd: 0, burntAt: Infinity, burntLost: 0 },
    byLeast: Int32Array.from(least.keys()).sort((a, b) => least[a]! - least[b]!),
  };
}

/** Some moments as they are gone through, for airs so much colder and warmer than theirs [K]. */
function sideBySide(candidates: readonly Candidate[], down: number, up: number): Moments {
  const rows = candidates.map(({ critical, until, time, colder, warmer, follows }) => {
    const least = critical - Math.max(0, colder * down, -warmer * up);
    return [least, critical, until, time, colder, warmer, follows ? 1 : 0];
  });
  return Float64Array.from(rows.sort((a, b) => a[LEAST]! - b[LEAST]!).flat());
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
  const { shortAtFirst, order, lostAtStart, lostAtEnd, addedAtStart } = march;
  const { least, waiting, fresh, looked } = lookout;
  lookout.came = 0;
  for (let i = from; i < order.length; i++) {
    const before = shortAtFirst - addedAtStart[i]!;
    if (!(least[waiting[0]!]! <= before + lostAtEnd[i]!)) continue;
    looked.week = week;
    looked.trip = i;
    looked.before = before;
    looked.atStart = before + lostAtStart[i]!;
    looked.atEnd = before + lostAtEnd[i]!;
    looked.burntAt = Infinity;
    lookInto(march, lookout);
    const burn = firstBurn(lookout);
    if (burn !== null) {
      looked.burntAt = burn.time;
      looked.burntLost = burn.lost;
      lookInto(march, lookout);
    }
    if (lookout.came === 0) continue;
    for (let n = 0; n < lookout.came; n++) noLonger(lookout, fresh[n]!);
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

/** Looks for every event that has not come in the trip. */
function lookInto(march: March, lookout: Lookout): void {
  const { least, waiting, found, moments, fresh, looked } = lookout;
  const { thresholds, occurrences } = march.prepared;
  const { kind } = occurrences[march.order[looked.trip]!]!;
  const air = airAt(march, looked.week * WEEK + march.startsAt[looked.trip]!);
  let nodes: readonly number[] | undefined;
  let node = 0;
  lookout.came = 0;
  for (let w = 0; w < lookout.waits; w++) {
    const t = waiting[w]!;
    if (least[t]! > looked.atEnd) break;
    // Most events have the same airs.
    const { airs } = thresholds[t]!;
    if (airs !== nodes) node = nearest((nodes = airs), air);
    const list = moments[t]![node]![kind]!;
    if (comesIn(march, lookout, list, air - airs[node]!, found[t]!)) fresh[lookout.came++] = t;
  }
}

/** The first of some moments of the trip at which enough is lacking and not too much, in air so much warmer than theirs [K]. */
function comesIn(
  march: March,
  { looked, burnt }: Lookout,
  moments: Moments,
  warmer: number,
  at: Found,
): boolean {
  const { week, trip, before, atStart, atEnd, burntAt, burntLost } = looked;
  const side = warmer < 0 ? COLDER : WARMER;
  let first = Infinity;
  for (let m = 0; m < moments.length && moments[m + LEAST]! <= atEnd; m += NEXT) {
    const time = moments[m + TIME]!;
    if (time >= first) continue;
    const shift = warmer * moments[m + side]!;
    const from = moments[m + CRITICAL]! + shift;
    const until = moments[m + UNTIL]! + shift;
    if (from > atEnd || until < atStart) continue;
    const told = time > burntAt;
    if (moments[m + FOLLOWS] === 1 && !told && !burnt) continue;
    // Only a loss that passes an edge within the trip has to be known to the moment.
    if (told || from > atStart || until < atEnd) {
      const lacking = before + (told ? burntLost : lostIn(march, week, trip, time));
      if (lacking < from || lacking > until) continue;
    }
    first = time;
  }
  if (first === Infinity) return false;
  at.week = week;
  at.trip = trip;
  at.time = first;
  at.lost = lostIn(march, week, trip, first);
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
