// The learned trim over a week. It forgets within a trip or two, so at a frozen loss it goes round: each kind of trip leaves a share of
// the trim that it began with, and adds what its own late shifts teach.

import type { Occurrence } from "./kinds.ts";

/** Weeks after which the trim goes round [-]. */
const ROUNDS = 30;

/**
 * Trim [Pa] with which each kind of trip begins once the week has been driven again and again at one loss, mean over its occurrences:
 * a trip that begins with `trim` ends with `kept`·trim + `added`, within ± `limit`.
 */
export function trimGoingRound(
  occurrences: readonly Occurrence[],
  kept: Float64Array,
  added: Float64Array,
  limit: number,
  out: Float64Array,
): void {
  const count = new Float64Array(out.length);
  out.fill(0);
  let trim = 0;
  for (let round = 0; round < ROUNDS; round++)
    for (const { kind } of occurrences) {
      if (round === ROUNDS - 1) {
        out[kind]! += trim;
        count[kind]! += 1;
      }
      trim = Math.max(-limit, Math.min(limit, kept[kind]! * trim + added[kind]!));
    }
  for (let k = 0; k < out.length; k++) if (count[k]! > 0) out[k]! /= count[k]!;
}
