// One week, trip by trip: walked from its beginning, or what was marched spread over its stands and trips.

import type { Plan } from "../history/simulate.ts";
import type { Leak, Unit } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { airOf, HOT_PART, turnTo, WEEK, type March } from "./course.ts";
import { takeAge, takeOpening, tripRunning, weekRunning } from "./flow.ts";
import { takeAir, takeLevel } from "./reading.ts";
import { standLoses, takeStand } from "./stands.ts";

/** A week whose loss grows by more than this share is walked: it grows from trip to trip. */
export const growthOfAWeek = 0.3;
/** So is one that loses more than this [kg]: each trip and stand begins with what those before it have left, and goes by that. */
export const muchInAWeek = 0.75;

/** Mass added [kg] by entries after a moment and up to another [s since the start]. */
function entered({ topUps }: Plan, { fluid }: Unit, from: number, to: number): number {
  let mass = 0;
  for (let i = 0; i < topUps.length; i++) {
    const { at, volume, temperature } = topUps[i]!;
    if (at > from && at <= to) mass += volume * density(fluid.density15, temperature);
  }
  return mass;
}

/**
 * Reads a week in which a leak opens once for each kind of trip and stand, if that tells less dearly what they lose: of an opening in the circuit that stays as it
 * is, when the pump feeds it alike whatever little the week loses. Whether it was read.
 */
export function readOnce(march: March, week: number): boolean {
  const { prepared, reading, leak, order, startsAt, opensAt } = march;
  if (leak === null || reading.grows || reading.place < 0) return false;
  let first = 0;
  while (first < order.length && week * WEEK + startsAt[first]! < opensAt) first++;
  if (2 * (order.length - first) <= prepared.kinds.length + prepared.standKinds.length) return false;
  const lacking = march.shortAtFirst + march.lost[week]! - march.added[week]!;
  takeAir(reading, airOf(march, week));
  takeLevel(reading, lacking);
  takeAge(reading, prepared.unit, week);
  takeOpening(reading, leak, 0, 0);
  const loses = (weekRunning(reading, prepared, leak) * (order.length - first)) / order.length;
  if (loses > muchInAWeek) return false;
  takeLevel(reading, lacking + 0.5 * loses);
  eachLoses(march, leak);
  return true;
}

/**
 * Walks one week trip by trip from what was lost at its beginning, whole trips and stands as they were read once if they were; leaves what is lost at each trip's start and end, and the next week's beginning.
 */
export function walkWeek(march: March, week: number, read = false): void {
  const { prepared, reading, leak, order, startsAt, timeBefore, lost, added, rate, plan } = march;
  const { occurrences, kinds, unit } = prepared;
  turnTo(march, week);
  const { lostAtStart, lostAtEnd, addedAtStart } = march;
  march.opened = -1;
  let now = lost[week]!;
  let fluid = added[week]!;
  takeAir(reading, airOf(march, week));
  let ended = -1e-6;
  const { grows } = reading;
  for (let i = 0; i < order.length; i++) {
    const { kind, standKind, stand } = occurrences[order[i]!]!;
    const { time } = kinds[kind]!;
    const clock = week * WEEK + startsAt[i]!;
    const running = week * march.weekTime + timeBefore[i]!;
    fluid += entered(plan, unit, week * WEEK + ended, clock);
    const leaks = leak !== null && march.opensAt < clock + time;
    const from = Math.max(0, march.opensRunning - running);
    if (leaks && read && clock - march.opensAt >= stand) now += march.perStand[standKind]!;
    else if (leaks) {
      takeLevel(reading, march.shortAtFirst + now - fluid);
      takeAge(reading, unit, week);
      now += standsAndGrows(march, leak, standKind, clock, running);
    }
    lostAtStart[i] = now;
    addedAtStart[i] = fluid;
    if (leaks && read && march.opensAt <= clock) now += march.perKind[kind]!;
    else if (leaks) {
      const opened = Math.max(0, march.opensAt - clock);
      const parts = grows ? partsOf(running + from - march.opensRunning, time - from) : 1;
      for (let p = 0; p < parts; p++) {
        const start = from + ((time - from) * p) / parts;
        const end = from + ((time - from) * (p + 1)) / parts;
        const age = running + 0.5 * (start + end) - march.opensRunning;
        const calendar = clock + 0.5 * (Math.max(opened, start) + end) - march.opensAt;
        takeOpening(reading, leak, Math.max(0, age), Math.max(0, calendar));
        now += tripLoses(march, kind, start, end);
      }
    }
    lostAtEnd[i] = now;
    ended = startsAt[i]! + time;
  }
  fluid += entered(plan, unit, week * WEEK + ended, (week + 1) * WEEK - 1e-6);
  lost[week + 1] = now;
  added[week + 1] = fluid;
  rate[week + 1] = now - lost[week]!;
}

/** Most parts in which a leak that has just opened grows through a trip or a stand. */
const MOST_PARTS = 4;

/** Parts of a time in which a leak of an age grows by little in each. */
const partsOf = (age: number, seconds: number): number =>
  Math.max(1, Math.min(MOST_PARTS, Math.ceil((2 * seconds) / (age + 0.5 * seconds))));

/** Mass lost in the stand before a trip [kg]: only a pit grows meanwhile. Air and level are taken. */
function standsAndGrows(march: March, leak: Leak, standKind: number, clock: number, running: number): number {
  const { reading, prepared, opensAt, opensRunning } = march;
  const { stand } = prepared.standKinds[standKind]!;
  const open = Math.min(stand, clock - opensAt);
  if (!(open > 0) || !takeStand(reading, prepared, leak, standKind)) return 0;
  const age = Math.max(0, running - opensRunning);
  const began = clock - open - opensAt;
  if (open === stand || leak.opening.kind !== "pit") {
    takeOpening(reading, leak, age, began + HOT_PART * open);
    return standLoses(reading, prepared, leak, open);
  }
  let lost = 0;
  for (let p = 0; p < MOST_PARTS; p++) {
    const start = (open * p) / MOST_PARTS;
    const end = (open * (p + 1)) / MOST_PARTS;
    takeOpening(reading, leak, age, began + 0.5 * (start + end));
    lost += standLoses(reading, prepared, leak, end) - standLoses(reading, prepared, leak, start);
  }
  return lost;
}

/** Spreads what a marched week loses over its stands and trips, growing evenly; a week that was walked, or has a date in it, as a walk does. */
export function spread(march: March, week: number): void {
  if (turnTo(march, week)) return;
  const { lost, added, rate, order, prepared, reading, leak, weekTime } = march;
  const { lostAtStart, lostAtEnd, addedAtStart } = march;
  const before = lost[week]!;
  const next = lost[week + 1]!;
  const fluid = added[week + 1]!;
  const slope = rate[week + 1]!;
  const grown = slope - rate[week]!;
  const even =
    leak !== null &&
    march.opensIn < week &&
    fluid === added[week]! &&
    Math.abs(grown) < growthOfAWeek * Math.max(slope, rate[week]!, 1e-12) &&
    next - before <= muchInAWeek;
  let walked = 0;
  if (even) {
    const { occurrences } = prepared;
    march.opened = -1;
    takeAir(reading, airOf(march, week));
    takeLevel(reading, march.shortAtFirst + 0.5 * (before + next) - fluid);
    const age = Math.max(0, (week + 0.5) * weekTime - march.opensRunning);
    takeAge(reading, prepared.unit, week);
    takeOpening(reading, leak, age, (week + 0.5) * WEEK - march.opensAt);
    eachLoses(march, leak);
    const calendar = byCalendar(leak);
    // What is read is that of the week's middle.
    const growth = (2 * grown) / Math.max(slope + rate[week]!, 1e-12);
    for (let i = 0; i < order.length; i++) {
      const { kind, standKind } = occurrences[order[i]!]!;
      walked += march.perStand[standKind]! * (1 + growth * (standsAt(march, i, calendar) - 0.5));
      lostAtStart[i] = before + walked;
      walked += march.perKind[kind]! * (1 + growth * (drivesAt(march, i, calendar) - 0.5));
      lostAtEnd[i] = before + walked;
      addedAtStart[i] = fluid;
    }
  } else {
    walkWeek(march, week);
    walked = lost[week + 1]! - before;
    lost[week + 1] = next;
    added[week + 1] = fluid;
    rate[week + 1] = slope;
  }
  const scale = walked > 0 ? (next - before) / walked : 1;
  for (let i = 0; i < order.length; i++) {
    lostAtStart[i] = before + (lostAtStart[i]! - before) * scale;
    lostAtEnd[i] = before + (lostAtEnd[i]! - before) * scale;
  }
}

/** Openings that grow by the calendar; others do while the engine runs. */
export const byCalendar = ({ opening }: Leak): boolean => opening.kind === "pit";

/** Where in its week a trip and the stand before it lose what they lose, as shares of the week's time, or of its running. */
export const drivesAt = (
  { prepared, order, startsAt, timeBefore, weekTime }: March,
  i: number,
  calendar: boolean,
): number => {
  const half = 0.5 * prepared.kinds[prepared.occurrences[order[i]!]!.kind]!.time;
  return calendar ? (startsAt[i]! + half) / WEEK : (timeBefore[i]! + half) / weekTime;
};
export const standsAt = (
  { prepared, order, startsAt, timeBefore, weekTime }: March,
  i: number,
  calendar: boolean,
): number =>
  calendar
    ? (startsAt[i]! - (1 - HOT_PART) * prepared.occurrences[order[i]!]!.stand) / WEEK
    : timeBefore[i]! / weekTime;

/** What a trip and a stand of each kind lose through the opening that was taken, at the level that was. */
export function eachLoses({ prepared, reading, perKind, perStand }: March, leak: Leak): void {
  const { kinds, standKinds } = prepared;
  for (let k = 0; k < kinds.length; k++)
    perKind[k] = tripRunning(reading, prepared, leak, k, kinds[k]!.pieces.length - 1);
  for (let s = 0; s < standKinds.length; s++)
    perStand[s] = takeStand(reading, prepared, leak, s)
      ? standLoses(reading, prepared, leak, standKinds[s]!.stand)
      : 0;
}

/** Mass lost between two moments of a trip [s since its start], through the opening that was taken. */
export function tripLoses(march: March, kind: number, from: number, to: number): number {
  return lostBy(march, kind, to) - lostBy(march, kind, from);
}

function lostBy({ reading, prepared, leak }: March, kind: number, time: number): number {
  if (leak === null || !(time > 0)) return 0;
  const { pieceTimes, time: whole } = prepared.kinds[kind]!;
  if (time >= whole) return tripRunning(reading, prepared, leak, kind, pieceTimes.length - 1);
  // Pieces last little more than a minute: it is not far from here.
  let p = Math.max(1, Math.min(pieceTimes.length - 1, Math.floor(time / 70)));
  while (p > 1 && pieceTimes[p - 1]! >= time) p--;
  while (p < pieceTimes.length - 1 && pieceTimes[p]! < time) p++;
  if (time === pieceTimes[p]) return tripRunning(reading, prepared, leak, kind, p);
  const before = tripRunning(reading, prepared, leak, kind, p - 1);
  const after = tripRunning(reading, prepared, leak, kind, p);
  return (
    before +
    ((after - before) * (Math.min(time, pieceTimes[p]!) - pieceTimes[p - 1]!)) /
      (pieceTimes[p]! - pieceTimes[p - 1]!)
  );
}
