// What follows when a clutch has burnt: it is walked on at the loss at which it burns, with the linings as they are left, until the
// vehicle no longer drives or the trips that are looked at are over. That takes hours of running, while fluid is lost over weeks.

import { beginPiece } from "./critical.ts";
import { driveFrozen, standFrozen, type Frozen } from "./frozen.ts";
import type { Kinds } from "./kinds.ts";
import type { WeekSeen } from "./levels.ts";
import type { Aftermath } from "./prepared.ts";

/** Trips that are walked on, with the one in which it burns. */
const TRIPS = 5;
/** A hair more than the critical loss [kg], so that it does burn. */
const HAIR = 0.002;

/** Walks on from a piece in which a clutch burns when so much is lacking [kg]. */
export function walkAftermath(
  frozen: Frozen,
  kinds: Kinds,
  seen: WeekSeen,
  kind: number,
  piece: number,
  critical: number,
): Aftermath {
  const { watchers } = frozen.measures;
  const events: { event: number; after: number }[] = [];
  const over = () => events.some(({ event }) => watchers[event]!.name === "no drive");
  const first = Math.max(
    0,
    kinds.occurrences.findIndex((occurrence) => occurrence.kind === kind),
  );
  const start = beginPiece(frozen, seen[kind]!, piece, critical + HAIR);
  let time = 0;
  for (let i = 0; i < TRIPS && !over(); i++) {
    const trip = kinds.occurrences[(first + i) % kinds.occurrences.length]!;
    const driven = kinds.kinds[trip.kind]!;
    if (i > 0) standFrozen(frozen, trip.stand, () => {});
    const told = (_: number, held: Float64Array, since: Float64Array) => {
      for (let event = 0; event < held.length; event++)
        if (held[event]! > 0 && events.every((other) => other.event !== event))
          events.push({ event, after: time + since[event]! });
    };
    driveFrozen(frozen, driven, { told, step: () => !over() }, i === 0 ? start : 0, Infinity, 10, i === 0);
    time += driven.time;
  }
  return {
    kind,
    piece,
    critical,
    events: events
      .sort((a, b) => a.after - b.after)
      .map(({ event, after }) => {
        const { name, condition, clutch } = watchers[event]!;
        return { name, condition, after, ...(clutch === undefined ? {} : { clutch }) };
      }),
  };
}
