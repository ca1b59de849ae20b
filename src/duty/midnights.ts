// What is lost at the midnights between weeks: the march books a stand with the trip that ends it, and this takes what the first of them loses before midnight.

import { WEEK, type March } from "./course.ts";
import { lostAt } from "./happen.ts";
import { standLost } from "./standing.ts";
import { spread } from "./week.ts";

/** Lost at the midnight before each of the first weeks, and at the one after the last of them [kg]. The march's reading stands elsewhere afterwards. */
export function lostAtMidnights(march: March, weeks: number): Float64Array {
  const lost = march.lost.slice(0, weeks + 1);
  if (march.leak === null || march.order.length === 0) return lost;
  for (let week = 1; week <= weeks; week++)
    lost[week] = march.opensAt < week * WEEK ? lostAtMidnight(march, week) : 0;
  march.opened = -1;
  return lost;
}

function lostAtMidnight(march: March, week: number): number {
  const { order, startsAt, prepared, lost } = march;
  const last = order.length - 1;
  const runs = WEEK - startsAt[last]!;
  if (runs < prepared.kinds[prepared.occurrences[order[last]!]!.kind]!.time) {
    // The week's last trip is on its way at midnight.
    spread(march, week - 1);
    return lostAt(march, week - 1, last, runs);
  }
  return lost[week]! + standLost(march, week, 0, lost[week]! - march.added[week]!, week * WEEK);
}
