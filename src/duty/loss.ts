// What a leak loses by averages, and nothing else: for callers who ask thousands of leaks how much is gone, and only some of them what that did.

import type { Plan } from "../history/simulate.ts";
import { bookedIn, WEEK, type March } from "./course.ts";
import { marched } from "./marched.ts";
import { fullMass } from "./snapshot.ts";
import type { Prepared } from "./prepared.ts";
import { standLost } from "./standing.ts";
import { spread } from "./week.ts";

/** A leak marched through its weeks; lent until the next one of the same prepared week. */
export interface DutyLoss {
  /** Fluid lost from second 0 to a moment [kg]; after the end of the march as at its end. */
  readonly lostBy: (clock: number) => number;
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
