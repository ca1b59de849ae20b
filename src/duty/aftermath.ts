// What follows when a clutch has burnt and the vehicle still drives: it is walked on at the loss at which it burns, with the linings as
// they are left, until it no longer drives or the trips that are looked at are over.

import { beginPiece } from "./critical.ts";
import { driveFrozen, standFrozen, type Frozen } from "./frozen.ts";
import type { Kinds } from "./kinds.ts";
import type { WeekSeen } from "./levels.ts";
import type { Aftermath, Candidate } from "./prepared.ts";

/** Trips that are walked on after the one in which it burns. */
const TRIPS = 4;
/** A hair more than the critical loss [kg], so that it does burn. */
const HAIR = 0.002;

/** Walks on from a moment at which a clutch burns; undefined when the vehicle does not drive on after that trip. */
export function walkAftermath(
  frozen: Frozen,
  kinds: Kinds,
  week: WeekSeen,
  { kind, piece, critical, time: burnsAt }: Candidate,
): Aftermath | undefined {
  const { watchers } = frozen.measures;
  const come = new Set<number>();
  const later: { event: number; after: number }[] = [];
  const first = Math.max(
    0,
    kinds.occurrences.findIndex((occurrence) => occurrence.kind === kind),
  );
  const start = beginPiece(frozen, week, kind, piece, critical + HAIR);
  let time = 0;
  for (let i = 0; i <= TRIPS; i++) {
    const trip = kinds.occurrences[(first + i) % kinds.occurrences.length]!;
    const driven = kinds.kinds[trip.kind]!;
    if (i > 0) standFrozen(frozen, driven.stand, () => {});
    const told = (_: number, held: Float64Array, since: Float64Array) => {
      for (let event = 0; event < held.length; event++)
        if (held[event]! > 0 && !come.has(event)) {
          come.add(event);
          if (i > 0) later.push({ event, after: time + since[event]! - burnsAt });
        }
    };
    driveFrozen(frozen, driven, { told }, i === 0 ? start : 0, Infinity, 10, i === 0);
    if (come.has(frozen.noDrive)) break;
    time += driven.time;
  }
  if (later.length === 0) return undefined;
  return {
    air: frozen.walk.road.ambient,
    kind,
    piece,
    critical,
    events: later
      .sort((a, b) => a.after - b.after)
      .map(({ event, after }) => {
        const { name, condition, clutch } = watchers[event]!;
        return { name, condition, after, ...(clutch === undefined ? {} : { clutch }) };
      }),
  };
}
