// What a leak loses by averages, and nothing else: for callers who ask thousands of leaks how much is gone, and only some of them what that did.

import type { Plan } from "../history/simulate.ts";
import { bookedIn, WEEK, type March } from "./course.ts";
import { marched } from "./marched.ts";
import { fullMass } from "./snapshot.ts";
import type { Prepared } from "./prepared.ts";
import { standLost, standLostWhen } from "./standing.ts";
import { spread } from "./week.ts";

/** A leak marched through its weeks; lent until the next one of the same prepared week. */
export interface DutyLoss {
  /** Fluid lost from second 0 to a moment [kg]; after the end of the march as at its end. */
  readonly lostBy: (clock: number) => number;
  /** The first moment by which so much was lost [s], in a stand to a hundredth of a second; 0 of nothing, Infinity where that is not by the end of the march. */
  readonly lostWhen: (mass: number) => number;
  /** Whether more was lost before the end of the span than any event takes. */
  readonly ranOut: boolean;
}

/**
 * The loss of a plan whose week, build and air were prepared, as `dutyHistory` marches it. Nothing is handed over: a leak that is over within
 * some trips is averaged too, minute by minute of the trip it falls into.
 */
export function dutyLoss(prepared: Prepared, plan: Plan): DutyLoss {
  const { march, reached } = marched(prepared, plan);
  const most = mostLost(march);
  return {
    lostBy: (clock) => Math.min(lostAt(march, reached, clock), most + addedBy(march, reached, clock)),
    lostWhen: (mass) => Math.max(whenLost(march, reached, mass), whenAdded(march, reached, most, mass)),
    ranOut: reached < march.weeks,
  };
}

/**
 * The most that can be lost [kg] before anything is added: what converter, cooler and passages hold does not come back to the pan to be lost, and what
 * stands under the pickup's mouth is not drawn: beyond the rest the pump delivers nothing but air.
 */
function mostLost({ prepared: { unit }, leak, shortAtFirst }: March): number {
  const { converter, coolerAndLines, passages } = unit.build.holdUp;
  const { pan, pickup } = unit.build.sump;
  const drawn = leak?.place !== "pan" && leak?.place !== "pan-seam";
  const under = drawn ? pan.free * pan.length * pan.width * pickup.height : 0;
  const held = (converter + coolerAndLines + passages + under) * unit.fluid.density15;
  return fullMass(unit) - held - shortAtFirst;
}

/** Added by the week of a moment [kg]. */
const addedBy = ({ added }: March, reached: number, clock: number): number =>
  added[Math.max(0, Math.min(reached, Math.floor(clock / WEEK)))]!;

/** The beginning of the first week in which there is so much to be lost, of what there was at first and what was added [s]; Infinity: not by the end of the march. */
function whenAdded({ added }: March, reached: number, most: number, mass: number): number {
  let week = 0;
  while (week <= reached && most + added[week]! < mass) week++;
  return week <= reached ? week * WEEK : Infinity;
}

/** Lost by a moment [kg]: within a trip evenly, within a stand as what stands over the hole runs out of it, hot at first. */
function lostAt(march: March, reached: number, clock: number): number {
  const { lost, added, opensAt, order, startsAt, prepared } = march;
  if (clock <= Math.max(0, opensAt)) return 0;
  const at = Math.min(clock, reached * WEEK);
  const week = bookedIn(march, at);
  if (week >= reached) {
    const before = lost[reached]!;
    if (order.length === 0 || week > reached) return before;
    // No trip was marched that would end this stand.
    return before + standLost(march, reached, 0, before - added[reached]!, at);
  }
  spread(march, week);
  const { lostAtStart, lostAtEnd, addedAtStart } = march;
  const into = at - week * WEEK;
  let before = lost[week]!;
  for (let i = 0; i < order.length; i++) {
    const start = startsAt[i]!;
    const { time } = prepared.kinds[prepared.occurrences[order[i]!]!.kind]!;
    if (into < start) {
      const lacked = before - addedAtStart[i]!;
      const whole = standLost(march, week, i, lacked, week * WEEK + start);
      const share = whole > 0 ? standLost(march, week, i, lacked, at) / whole : 1;
      return before + (lostAtStart[i]! - before) * share;
    }
    if (into < start + time) {
      const from = Math.max(start, opensAt - week * WEEK);
      return lostAtStart[i]! + ((lostAtEnd[i]! - lostAtStart[i]!) * (into - from)) / (start + time - from);
    }
    before = lostAtEnd[i]!;
  }
  return before;
}

/** Moments are rounded: what is later than another by no more than this is the same [s]. */
const ROUNDED = 1e-6;

/** `lostAt` read the other way: the first moment by which so much is lost [s]. */
function whenLost(march: March, reached: number, mass: number): number {
  const { lost, added, opensAt, order, startsAt, prepared } = march;
  if (!(mass > 0)) return 0;
  const end = reached * WEEK;
  let week = 0;
  while (week < reached && lost[week + 1]! < mass) week++;
  let before = lost[week]!;
  if (week === reached) {
    if (order.length === 0) return Infinity;
    const lacked = before - added[week]!;
    const whole = standLost(march, week, 0, lacked, end);
    return mass > before + whole
      ? Infinity
      : standLostWhen(march, week, 0, lacked, end, Math.min(1, (mass - before) / whole));
  }
  spread(march, week);
  const { lostAtStart, lostAtEnd, addedAtStart } = march;
  // Rounding may leave the last trip of a week short of it.
  let i = 0;
  while (i < order.length - 1 && lostAtEnd[i]! < mass) before = lostAtEnd[i++]!;
  const start = week * WEEK + startsAt[i]!;
  if (mass <= lostAtStart[i]!) {
    const share = (mass - before) / (lostAtStart[i]! - before);
    return standLostWhen(march, week, i, before - addedAtStart[i]!, start, share);
  }
  const { time } = prepared.kinds[prepared.occurrences[order[i]!]!.kind]!;
  const from = Math.max(start, opensAt);
  const share = Math.min(1, (mass - lostAtStart[i]!) / (lostAtEnd[i]! - lostAtStart[i]!));
  const clock = from + (start + time - from) * share;
  return clock < end + ROUNDED ? Math.min(clock, end) : Infinity;
}
