// What follows when a clutch has burnt and the vehicle still drives: it is walked on at the loss at which it burns, with the linings as
// they are left, until it no longer drives or the trips that are looked at are over.

import { newOutside } from "../history/outside.ts";
import { beginPiece } from "./critical.ts";
import { driveFrozen, standFrozen, type Frozen } from "./frozen.ts";
import type { Kinds } from "./kinds.ts";
import type { KindSeen } from "./levels.ts";
import type { Aftermath, UsedUpTo } from "./prepared.ts";
import { alsoUsed } from "./used.ts";

/** Trips that are walked on after the one in which it burns. */
const TRIPS = 3;
/** Levels of a kind of trip from which it is walked on. */
const MOST = 2;

/**
 * What follows in the later trips, for each kind of trip from the first levels at which a clutch burns and the vehicle drives on; laws that
 * are used there go to what is `used` at that loss.
 */
export function walkAftermaths(
  frozen: Frozen,
  kinds: Kinds,
  seen: readonly KindSeen[],
  used: readonly UsedUpTo[],
): Aftermath[] {
  return seen.flatMap((trip, kind) => {
    const drivesOn = trip.levels.filter((lacking) => {
      const happens = (event: number) =>
        trip.pieces.some((piece) =>
          piece.seen.some((shown) => shown.lacking === lacking && shown.held[event]! > 0),
        );
      return frozen.burns.some(happens) && !happens(frozen.noDrive);
    });
    return drivesOn
      .slice(0, MOST)
      .flatMap((lacking) => walkAftermath(frozen, kinds, trip, kind, lacking, used) ?? []);
  });
}

/** Walks on from a trip in which a clutch burns. */
function walkAftermath(
  frozen: Frozen,
  kinds: Kinds,
  trip: KindSeen,
  kind: number,
  lacking: number,
  used: readonly UsedUpTo[],
): Aftermath | undefined {
  const { watchers } = frozen.measures;
  const come = new Set<number>();
  const later: { event: number; after: number }[] = [];
  const first = Math.max(
    0,
    kinds.occurrences.findIndex((occurrence) => occurrence.kind === kind),
  );
  let burnsAt = Number.NaN;
  let time = 0;
  beginPiece(frozen, trip, 0, lacking);
  const outside = newOutside(frozen.walk.now.temperature);
  for (let i = 0; i <= TRIPS && !come.has(frozen.noDrive); i++) {
    const driven = kinds.kinds[kinds.occurrences[(first + i) % kinds.occurrences.length]!.kind]!;
    if (i > 0) standFrozen(frozen, driven.stand, () => {});
    const told = (_: number, held: Float64Array, since: Float64Array) => {
      for (let event = 0; event < held.length; event++)
        if (held[event]! > 0 && !come.has(event)) {
          come.add(event);
          if (i > 0) later.push({ event, after: time + since[event]! - burnsAt });
          else if (frozen.burns.includes(event) && !(burnsAt <= since[event]!)) burnsAt = since[event]!;
        }
    };
    driveFrozen(frozen, driven, { told, outside }, 0, Infinity, 10, i === 0);
    time += driven.time;
  }
  alsoUsed(used, lacking, outside);
  if (later.length === 0 || Number.isNaN(burnsAt)) return undefined;
  return {
    air: frozen.walk.road.ambient,
    kind,
    lacking,
    events: later
      .sort((a, b) => a.after - b.after)
      .map(({ event, after }) => {
        const { name, condition, clutch } = watchers[event]!;
        return { name, condition, after, ...(clutch === undefined ? {} : { clutch }) };
      }),
  };
}
