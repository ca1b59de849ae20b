// From when on a technician's check of the level would have shown that fluid was missing, whatever the driving looked like.

import { massAtLowMark } from "../../src/bay/hot-check.ts";
import type { History } from "../../src/history/simulate.ts";
import type { Unit } from "../../src/physics/build.ts";

/** The end of a trip: seconds since the start, of running, metres driven, kilograms lost. */
export interface FirstLow {
  readonly clock: number;
  readonly running: number;
  readonly distance: number;
  readonly lost: number;
}

/**
 * The first trip after which, and after every later one before the moment `until` [s since the start], the hot idling check of
 * what is left would have shown the stick under its low mark; null when the last of them still leaves it at the mark or over it.
 */
export function firstLow(unit: Unit, { trips }: Pick<History, "trips">, until = Infinity): FirstLow | null {
  const before = trips.filter(({ clock }) => clock <= until);
  const least = massAtLowMark(unit);
  const lastGood = before.findLastIndex(({ mass }) => mass >= least);
  return before[lastGood + 1] ?? null;
}
