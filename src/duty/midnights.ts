// What is lost at the midnights between weeks: the march books a stand with the trip that ends it, and this takes what the first of them loses before midnight.

import { airOf, HOT_PART, WEEK, type March } from "./course.ts";
import { leaksParked, standLoses, takeOpening, weekAgeing } from "./flow.ts";
import { lostAt } from "./happen.ts";
import { takeAir, takeLevel } from "./reading.ts";
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
  const { leak, order, startsAt, prepared, reading, opensAt, opensRunning } = march;
  if (leak === null) return 0;
  const last = order.length - 1;
  const runs = WEEK - startsAt[last]!;
  if (runs < prepared.kinds[prepared.occurrences[order[last]!]!.kind]!.time) {
    // The week's last trip is on its way at midnight.
    spread(march, week - 1);
    return lostAt(march, week - 1, last, runs);
  }
  const { standKind, stand } = prepared.occurrences[order[0]!]!;
  const stood = stand - startsAt[0]!;
  const open = Math.min(stood, week * WEEK - opensAt);
  const before = march.lost[week]!;
  takeAir(reading, airOf(march, week));
  takeLevel(reading, march.shortAtFirst + before - march.added[week]!);
  if (!leaksParked(reading, prepared, leak, standKind, stood)) return before;
  const age = Math.max(0, week * march.weekTime - opensRunning);
  const began = week * WEEK - open - opensAt;
  takeOpening(reading, prepared.unit, leak, age, began + HOT_PART * open, week * weekAgeing(reading));
  return before + standLoses(reading, prepared, leak, standKind, open, stood);
}
