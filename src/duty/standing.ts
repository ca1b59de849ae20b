// What a stand has lost by a moment of it; the march books the whole of it with the trip that ends it.

import { airOf, HOT_PART, WEEK, type March } from "./course.ts";
import { takeAge, takeOpening } from "./flow.ts";
import { takeAir, takeLevel } from "./reading.ts";
import { standLoses, takeStand } from "./stands.ts";

/** A leak that opens within so much of a stand's beginning [s] is open all of it, whichever way the sums are rounded. */
const AT_ONCE = 1e-3;

/**
 * What the stand before a trip of a week has lost by a moment of it [kg]; `lacked` so much more than at first when it began [kg]. Nothing stood before second 0.
 * The march's reading stands elsewhere afterwards.
 */
export function standLost(march: March, week: number, trip: number, lacked: number, clock: number): number {
  const { leak, order, startsAt, timeBefore, prepared, reading, opensAt, opensRunning } = march;
  const { standKind, stand } = prepared.occurrences[order[trip]!]!;
  const stands = Math.max(0, week * WEEK + startsAt[trip]! - stand);
  const stood = clock - stands;
  const open = opensAt > stands + AT_ONCE ? clock - opensAt : stood;
  if (leak === null || !(open > 0)) return 0;
  takeAir(reading, airOf(march, week));
  takeLevel(reading, march.shortAtFirst + lacked);
  if (!takeStand(reading, prepared, leak, standKind, stood)) return 0;
  const age = Math.max(0, week * march.weekTime + timeBefore[trip]! - opensRunning);
  const began = clock - open - opensAt;
  takeAge(reading, prepared.unit, week);
  takeOpening(reading, leak, age, began + HOT_PART * open);
  march.opened = -1;
  return standLoses(reading, prepared, leak, open);
}
