// Laws used outside their range by a history of averages: what its week was seen to use in the air and at the losses that the plan met.

import { noneUsed, noteOpening, widen, type Used } from "../history/outside.ts";
import { openingLaws } from "../history/opening-laws.ts";
import { watchedLaws } from "../history/watched-laws.ts";
import { airAt, runningAt, WEEK, type March } from "./course.ts";
import type { Plan } from "../history/plan.ts";
import { lostBy } from "./handover.ts";
import { marched } from "./marched.ts";
import type { Climate, Prepared, UsedUpTo } from "./prepared.ts";

/** Weeks that are looked at together: the air changes little in them. */
const TOGETHER = 4;

const leavable = new WeakMap<Prepared, readonly number[]>();

/** Which of `watchedLaws` the prepared week leaves at all, at any loss and in any air: the others need no look. */
function leftAtAll(prepared: Prepared): readonly number[] {
  let known = leavable.get(prepared);
  if (known === undefined) {
    const last = prepared.climates.map(({ used }) => used.at(-1)!);
    known = watchedLaws.flatMap(({ range }, law) =>
      last.some(({ low, high }) => low[law]! < range.low || high[law]! > range.high) ? [law] : [],
    );
    leavable.set(prepared, known);
  }
  return known;
}

/**
 * What a plan used, of laws that may be left, until a moment [s since the start; s of running] by which so much was lost [kg]; `reached`:
 * the week in which its march stopped.
 */
export function usedBy(
  march: March,
  reached: number,
  clock: number,
  running: number,
  lost = clock < reached * WEEK ? lostBy(march, clock).lost : march.lost[reached]!,
): Used[] {
  const { shortAtFirst, added, prepared, leak, opensAt, opensRunning } = march;
  const laws = leftAtAll(prepared);
  const used = noneUsed(laws.map((law) => watchedLaws[law]!));
  const weeks = Math.min(reached, Math.ceil(clock / WEEK - 1e-9));
  let lacking = 0;
  for (let from = 0; from < weeks; from += TOGETHER) {
    const to = Math.min(from + TOGETHER, weeks);
    lacking = -Infinity;
    for (let week = from; week < to; week++)
      lacking = Math.max(lacking, shortAtFirst + Math.min(lost, march.lost[week + 1]!) - added[week]!);
    takeIn(used, laws, prepared.climates, airAt(march, from * WEEK), lacking);
  }
  if (weeks > 0) takeIn(used, laws, prepared.climates, airAt(march, Math.min(weeks * WEEK, clock)), lacking);
  if (leak === null || !(opensAt < clock)) return used;
  // What the laws of an opening are asked rises or falls all the way.
  const opening = noneUsed(openingLaws);
  noteOpening(opening, leak.opening, Math.max(0, -opensRunning), Math.max(0, -opensAt));
  noteOpening(opening, leak.opening, running - opensRunning, clock - opensAt);
  return [...used, ...opening];
}

/** What two walks used, each of its own laws. */
export function usedInBoth(first: readonly Used[], second: readonly Used[]): Used[] {
  const ranges = new Set([...first, ...second].map(({ range }) => range));
  return Array.from(ranges, (range) => {
    const both = [...first, ...second].filter((used) => used.range === range);
    return {
      range,
      low: Math.min(...both.map(({ low }) => low)),
      high: Math.max(...both.map(({ high }) => high)),
    };
  });
}

/** What a plan used to the end of its span or of its march, whatever came of it on the way. */
export function usedByPlan(prepared: Prepared, plan: Plan): Used[] {
  const { march, reached } = marched(prepared, plan);
  return usedBy(march, reached, plan.span, runningAt(march, plan.span));
}

/** What is used in air of a temperature [K] while so much is lacking [kg], between the airs that were prepared as on a straight line; air beyond them counts as the nearest. */
function takeIn(
  used: readonly Used[],
  laws: readonly number[],
  climates: readonly Climate[],
  air: number,
  lacking: number,
): void {
  let next = Math.min(1, climates.length - 1);
  while (next < climates.length - 1 && climates[next]!.air < air) next++;
  const cold = climates[Math.max(0, next - 1)]!;
  const warm = climates[next]!;
  const share = warm === cold ? 0 : Math.max(0, Math.min(1, (air - cold.air) / (warm.air - cold.air)));
  const inCold = upTo(cold, lacking);
  const inWarm = upTo(warm, lacking);
  for (let i = 0; i < laws.length; i++) {
    const law = laws[i]!;
    widen(used[i]!, between(inCold.low[law]!, inWarm.low[law]!, share));
    widen(used[i]!, between(inCold.high[law]!, inWarm.high[law]!, share));
  }
}

/** The first loss that was walked and is no less [kg lacking]; the last, where none is. */
function upTo({ used }: Climate, lacking: number): UsedUpTo {
  let row = 0;
  let last = used.length - 1;
  while (row < last) {
    const middle = (row + last) >> 1;
    if (used[middle]!.lacking < lacking) row = middle + 1;
    else last = middle;
  }
  return used[row]!;
}

/** A law that was used in one of the airs alone is told as there; undefined: in neither. */
function between(cold: number, warm: number, share: number): number | undefined {
  if (!Number.isFinite(cold)) return Number.isFinite(warm) ? warm : undefined;
  return Number.isFinite(warm) ? cold + (warm - cold) * share : cold;
}
