// The loss from week to week. Whole weeks are marched together, by steps as long as growth and season allow (`stretch.ts`); a week in
// which the leak opens, parts or is topped up is walked trip by trip.

import type { Plan } from "../history/simulate.ts";
import { partsAt, WEEK, type March } from "./course.ts";
import { fullMass } from "./snapshot.ts";
import { littleAtFirst, stretch } from "./stretch.ts";
import { readOnce, walkWeek } from "./week.ts";

/** Marches on until so much is lacking [kg] or the span is over; returns the week in which it stopped. */
export function marchOn(march: March, enough: number): number {
  const { plan, lost, added, rate, weeks } = march;
  lost[0] = 0;
  added[0] = 0;
  rate[0] = 0;
  const most = fullMass(march.prepared.unit);
  const { opensIn } = march;
  const partsIn = Math.floor(partsAt(march) / WEEK);
  let week = 0;
  while (week < weeks) {
    const entry = nextEntry(plan, week * WEEK);
    const next = Math.min(
      weeks,
      week <= opensIn ? opensIn : Infinity,
      week <= partsIn ? partsIn : Infinity,
      Math.floor(entry / WEEK),
    );
    if (next > week) {
      if (week <= opensIn) {
        for (; week < next; week++) {
          lost[week + 1] = 0;
          added[week + 1] = added[week]!;
          rate[week + 1] = 0;
        }
      } else week = stretch(march, week, next, enough);
    } else {
      const undated = week !== partsIn && !(entry < (week + 1) * WEEK);
      if (!undated || !littleAtFirst(march, week)) walkWeek(march, week, undated && readOnce(march, week));
      week++;
    }
    if (march.shortAtFirst + lost[week]! - added[week]! > Math.min(enough, most)) break;
  }
  return week;
}

function nextEntry({ topUps }: Plan, from: number): number {
  let next = Infinity;
  for (let i = 0; i < topUps.length; i++)
    if (topUps[i]!.at >= from && topUps[i]!.at < next) next = topUps[i]!.at;
  return next;
}
