// What a stand has lost by a moment of it; the march books the whole of it with the trip that ends it.

import { airOf, HOT_PART, WEEK, type March } from "./course.ts";
import { takeAge, takeOpening } from "./flow.ts";
import { takeAir, takeLevel } from "./reading.ts";
import { standLoses, takeStand } from "./stands.ts";

/** A leak that opens within so much of a stand's beginning [s] is open all of it, whichever way the sums are rounded. */
const AT_ONCE = 1e-3;

/** When the stand before a trip of a week begins [s since the start]: nothing stood before second 0. */
const standBegins = ({ order, startsAt, prepared }: March, week: number, trip: number): number =>
  Math.max(0, week * WEEK + startsAt[trip]! - prepared.occurrences[order[trip]!]!.stand);

/**
 * What the stand before a trip of a week has lost by a moment of it [kg]; `lacked` so much more than at first when it began [kg].
 * The march's reading stands elsewhere afterwards.
 */
export function standLost(march: March, week: number, trip: number, lacked: number, clock: number): number {
  const { leak, order, timeBefore, prepared, reading, opensAt, opensRunning } = march;
  const { standKind } = prepared.occurrences[order[trip]!]!;
  const stands = standBegins(march, week, trip);
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

/** A moment of a stand is found to so many seconds. */
const NEAR = 0.01;

/**
 * The moment by which a stand has lost a share of what it has lost by another moment of it [s since the start]: `standLost` read the other way, the share above 0 and up to 1. By false
 * position; an end that stays twice counts half, so that the other end moves too (the Illinois rule; Dowell and Jarratt, 1971; recalled).
 */
export function standLostWhen(
  march: March,
  week: number,
  trip: number,
  lacked: number,
  until: number,
  share: number,
): number {
  const whole = standLost(march, week, trip, lacked, until);
  const wanted = share * whole;
  let low = Math.max(standBegins(march, week, trip), march.opensAt);
  if (!(whole > 0)) return low;
  let high = until;
  let [under, over, side] = [-wanted, whole - wanted, 0];
  while (high - low > NEAR) {
    const straight = low - ((high - low) * under) / (over - under);
    const at = Math.max(low + 0.5 * NEAR, Math.min(high - 0.5 * NEAR, straight));
    const beyond = standLost(march, week, trip, lacked, at) - wanted;
    if (beyond < 0) {
      if (side < 0) over *= 0.5;
      [low, under, side] = [at, beyond, -1];
    } else {
      if (side > 0) under *= 0.5;
      [high, over, side] = [at, beyond, 1];
    }
  }
  return high;
}
