// When the stick reads under its low mark: it can be read only hot, idling and level, so a degree of air decides whether a trip has such a
// moment at all. Little is lacking by then and nothing else happens, so such weeks are walked quickly, in airs close to each other.

import type { Unit } from "../physics/build.ts";
import { driveFrozen, newFrozen, standFrozen } from "./frozen.ts";
import { COLD_AFTER, type Kinds } from "./kinds.ts";
import { nothingSeen } from "./levels.ts";
import { firstWindows, momentOf } from "./moments.ts";
import type { Candidate } from "./prepared.ts";
import { lack, restore, snapshotOf, type Snapshot } from "./snapshot.ts";

/** Airs lie no further apart than this [K], and a moment that one has and the next has not is found to within this. */
const APART = 2;
const FOUND_WITHIN = 0.25;
/** No more airs than this. */
const MOST = 32;
/** Losses walked, from the least at which the stick is under its mark in any air [kg]. */
const LOSSES = [-0.06, 0.25];

/** Moments of the event by air, in airs that rise [K]. */
export interface StickMoments {
  readonly airs: readonly number[];
  readonly moments: readonly (readonly Candidate[])[];
}

/** Moments of the event by air, for airs in a range [K]; `least`: the least loss at which it happens in any air [kg lacking]. */
export function stickMoments(
  unit: Unit,
  kinds: Kinds,
  event: number,
  least: number,
  coldest: number,
  warmest: number,
): StickMoments {
  const losses = LOSSES.map((more) => Math.max(0, least + more));
  const at = (air: number) => ({ air, moments: momentsIn(unit, kinds, event, losses, air) });
  const steps = Math.ceil((warmest - coldest) / APART);
  const known = Array.from({ length: steps + 1 }, (_, i) =>
    at(coldest + (steps > 0 ? ((warmest - coldest) * i) / steps : 0)),
  );
  for (let i = 0; i < known.length - 1;) {
    const low = known[i]!;
    const high = known[i + 1]!;
    const same = placesOf(low.moments) === placesOf(high.moments);
    if (same || high.air - low.air <= FOUND_WITHIN || known.length >= MOST) i++;
    else known.splice(i + 1, 0, at(0.5 * (low.air + high.air)));
  }
  return { airs: known.map(({ air }) => air), moments: known.map(({ moments }) => moments) };
}

const placesOf = (moments: readonly Candidate[]): string =>
  moments
    .map(({ kind, piece }) => `${kind} ${piece}`)
    .sort()
    .join();

function momentsIn(
  unit: Unit,
  kinds: Kinds,
  event: number,
  losses: readonly number[],
  air: number,
): Candidate[] {
  const frozen = newFrozen(unit, air);
  const seen = kinds.kinds.map(nothingSeen);
  lack(unit, frozen.walk.state, losses[0]!);
  const ends: Snapshot[] = [];
  // Where a kind of trip follows soon on one that comes later, the week is driven once before. Who has stood for long is as cold whatever came before.
  if (kinds.kinds.some(({ before, stand }, k) => before >= k && stand < COLD_AFTER))
    for (const kind of kinds.kinds) {
      standFrozen(frozen, kind.stand, () => {});
      driveFrozen(frozen, kind, {});
      ends.push(snapshotOf(frozen.walk));
    }
  for (const lacking of losses)
    for (const [k, kind] of kinds.kinds.entries()) {
      const before = ends[kind.before];
      if (before !== undefined) restore(frozen.walk, before);
      lack(unit, frozen.walk.state, lacking);
      standFrozen(frozen, kind.stand, () => {});
      driveFrozen(frozen, kind, {
        told: (piece, held, since) =>
          seen[k]!.pieces[piece]!.seen.push({ lacking, held: held.slice(), since: since.slice() }),
      });
      ends[k] = snapshotOf(frozen.walk);
    }
  return seen.flatMap(({ pieces }, k) => firstWindows(pieces, event, k).map(momentOf));
}
