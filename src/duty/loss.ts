// What a leak loses by averages, and nothing else: for callers who ask thousands of leaks how much is gone, and only some of them what that did.

import { WEEK, type AveragedPlan, type March } from "./course.ts";
import { marched } from "./marched.ts";
import { fullMass } from "./snapshot.ts";
import type { Prepared } from "./prepared.ts";
import { spread } from "./week.ts";

/** A leak marched through its weeks; lent until the next one of the same prepared week. */
export interface DutyLoss {
  /** Fluid lost by a moment [kg]; after the end of the march as at its end. */
  readonly lostBy: (clock: number) => number;
  /** Whether more was lost before the end of the span than any event takes. */
  readonly ranOut: boolean;
}

/**
 * The loss of a plan whose week, build and air were prepared, as `dutyHistory` marches it. Nothing is handed over: a leak that is over within
 * some trips is averaged too, minute by minute of the trip it falls into.
 */
export function dutyLoss(prepared: Prepared, plan: AveragedPlan): DutyLoss {
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

/** Lost by a moment [kg]: within its week by trips and stands, within a trip by its minutes. */
function lostAt(march: March, reached: number, clock: number): number {
  const { lost, opensAt, order, startsAt, prepared } = march;
  if (clock <= opensAt) return 0;
  const week = Math.floor(clock / WEEK);
  if (week >= reached) return lost[reached]!;
  spread(march, week);
  const { lostAtStart, lostAtEnd } = march;
  const into = clock - week * WEEK;
  let from = Math.max(0, opensAt - week * WEEK);
  let before = lost[week]!;
  for (let i = 0; i < order.length; i++) {
    const { kind } = prepared.occurrences[order[i]!]!;
    const { time } = prepared.kinds[kind]!;
    const start = startsAt[i]!;
    const end = startsAt[i]! + time;
    if (into <= start) return along(from, before, start, lostAtStart[i]!, into);
    if (into < end) return along(Math.max(start, from), lostAtStart[i]!, end, lostAtEnd[i]!, into);
    [from, before] = [Math.max(from, end), lostAtEnd[i]!];
  }
  return along(from, before, WEEK, lost[week + 1]!, into);
}

/** A straight line between two moments, level before and after them. */
function along(from: number, low: number, to: number, high: number, at: number): number {
  return to > from ? low + ((high - low) * Math.max(0, Math.min(to, at) - from)) / (to - from) : high;
}
