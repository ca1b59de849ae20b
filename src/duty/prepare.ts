// Preparing a week: once for a build, its fluid, a driver, a week and its air, however many leaks are then asked about.

import type { Week } from "../driving/pattern.ts";
import type { Unit } from "../physics/build.ts";
import { bracketed, criticalLoss, estimateOf, happensAt } from "./critical.ts";
import { newFrozen, type Frozen } from "./frozen.ts";
import { kindsOf } from "./kinds.ts";
import { walkLevels, type WeekSeen } from "./levels.ts";
import { walkAftermath } from "./aftermath.ts";
import {
  levelStep,
  type Aftermath,
  type Candidate,
  type Climate,
  type Prepared,
  type Threshold,
} from "./prepared.ts";

/** Called with the share done; return false to cancel. */
export type Preparing = (share: number) => boolean;

/** Coldest and warmest air that the spans to be asked about meet [K]. */
export interface AirRange {
  readonly coldest: number;
  readonly warmest: number;
}

/** Up to this range of air [K] one climate will do, up to the next two. */
const ONE_CLIMATE = 0.5;
const TWO_CLIMATES = 3;

function airsOf({ surroundings: { meanTemperature, yearlySwing } }: Unit, within?: AirRange): number[] {
  const coldest = within?.coldest ?? meanTemperature - Math.abs(yearlySwing);
  const warmest = within?.warmest ?? meanTemperature + Math.abs(yearlySwing);
  const middle = 0.5 * (coldest + warmest);
  if (warmest - coldest <= ONE_CLIMATE) return [middle];
  return warmest - coldest <= TWO_CLIMATES ? [coldest, warmest] : [coldest, middle, warmest];
}

/** Moments that need this much more fluid lost than the earliest [kg] are never the first for a leak that lives twenty trips. */
const FIRST_WITHIN = 1.2;
/** An event is undone and comes back so often at most. */
const MOST_WINDOWS = 2;
/** No event has more moments than this that may be the first. */
const MOST_PLACES = 10;
/** Burns that are walked on from: so much more lost than at the first [kg], and no more than so many. */
const BURNS_WITHIN = 0.3;
const MOST_AFTERMATHS = 6;
/** How closely the critical loss of the earliest moment is found [kg], and of one that comes later, as a share of how much later. */
const FOUND_WITHIN = 0.001;
const LATER_WITHIN = 0.03;

/**
 * Walks the week with frozen losses in air of one to three temperatures (the year's coldest, mean and warmest) and finds what every
 * event takes. The unit's leak does not matter. Returns undefined when `preparing` said no.
 */
export function prepareDuty(
  unit: Unit,
  week: Week,
  preparing?: Preparing,
  within?: AirRange,
): Prepared | undefined {
  const kinds = kindsOf(week);
  const { build } = unit;
  const airs = airsOf(unit, within);
  const walked: { frozen: Frozen; climate: Climate; seen: WeekSeen }[] = [];
  for (const [i, air] of airs.entries()) {
    const frozen = newFrozen(unit, air);
    const going = (level: number) => preparing?.((0.7 * (i + level / 20)) / airs.length) !== false;
    const levels = walkLevels(frozen, kinds, going);
    if (levels === undefined) return undefined;
    walked.push({ frozen, ...levels });
  }
  const { watchers } = walked[0]!.frozen.measures;
  const thresholds: Threshold[] = [];
  for (const [event, { name, clutch, condition }] of watchers.entries()) {
    if (preparing?.(0.7 + (0.3 * event) / watchers.length) === false) return undefined;
    const places = new Map<string, { kind: number; piece: number; tolerance: number }>();
    for (const { frozen, seen } of walked)
      for (const place of firstPlaces(frozen, seen, kinds.kinds, event)) {
        const key = `${place.kind} ${place.piece}`;
        const other = places.get(key);
        if (other === undefined || place.tolerance < other.tolerance) places.set(key, place);
      }
    const candidates: Candidate[] = [];
    for (const { kind, piece, tolerance } of places.values()) {
      // More than once where more fluid lost undoes it for a while.
      let from = airs.map(() => 0);
      for (let window = 0; window < MOST_WINDOWS && from.some((loss) => loss < Infinity); window++) {
        const [critical, until, time] = [0, 0, 0].map(() => new Float64Array(airs.length)) as [
          Float64Array,
          Float64Array,
          Float64Array,
        ];
        from = walked.map(({ frozen, seen, climate }, i) => {
          const start = from[i]!;
          const found =
            start < Infinity
              ? criticalLoss(frozen, kinds.kinds[kind]!, piece, seen[kind]!, event, tolerance, start)
              : undefined;
          critical[i] = found?.critical ?? climate.levels * levelStep;
          until[i] = found?.until ?? Infinity;
          time[i] = found?.time ?? kinds.kinds[kind]!.pieceTimes[piece]!;
          return until[i]!;
        });
        candidates.push({ kind, piece, critical, until, time });
      }
    }
    if (candidates.length > 0)
      thresholds.push({ name, condition, candidates, ...(clutch === undefined ? {} : { clutch }) });
  }
  const aftermaths: Aftermath[] = [];
  const { frozen, seen } = walked[walked.length >> 1]!;
  for (const { kind, piece, critical } of burning(thresholds, build.lockUp.clutch.name, walked.length >> 1)) {
    if (preparing?.(0.95) === false) return undefined;
    aftermaths.push(walkAftermath(frozen, kinds, seen, kind, piece, critical));
  }
  const tight: Unit = { ...unit, leak: null };
  return { unit: tight, ...kinds, climates: walked.map(({ climate }) => climate), thresholds, aftermaths };
}

/** The moments at which a clutch of the gears burns first, each kind of trip by itself, and not much later than the earliest. */
function burning(thresholds: readonly Threshold[], lockUp: string, climate: number) {
  const burns = thresholds
    .filter(({ name, clutch }) => name === "damage 1" && clutch !== lockUp)
    .flatMap(({ candidates }) =>
      candidates.map(({ kind, piece, critical }) => ({ kind, piece, critical: critical[climate]! })),
    )
    .filter(({ critical }) => critical < Infinity)
    .sort((a, b) => a.critical - b.critical);
  const least = burns[0]?.critical ?? 0;
  return burns
    .filter(
      ({ kind, piece, critical }, i) =>
        critical < least + BURNS_WITHIN &&
        burns.findIndex((other) => other.kind === kind && other.piece === piece) === i,
    )
    .slice(0, MOST_AFTERMATHS);
}

/** Pieces in which the event may come first in a week, and how closely each must be known [kg]. */
function firstPlaces(
  frozen: Frozen,
  seen: WeekSeen,
  kinds: Prepared["kinds"],
  event: number,
): { kind: number; piece: number; tolerance: number }[] {
  const found: { kind: number; piece: number; tolerance: number; critical: number }[] = [];
  const all = bracketed(seen, event);
  let least = all[0]?.estimate ?? Infinity;
  // Trip by trip in the order of the pieces: a later one counts only if it needs less.
  all.sort((a, b) => a.kind - b.kind || a.piece - b.piece);
  for (const { kind, piece } of all) {
    const pieces = seen[kind]!;
    const now = estimateOf(pieces[piece]!, event);
    if (now === undefined || now.estimate > least + FIRST_WITHIN) continue;
    const low = now.upper > 0 ? pieces[piece]!.seen[now.upper - 1]!.lacking : 0;
    const tolerance = Math.max(FOUND_WITHIN, LATER_WITHIN * (now.estimate - least));
    let before = Infinity;
    for (const other of found) if (other.kind === kind) before = Math.min(before, other.critical);
    if (before <= low + tolerance) continue;
    if (before < Infinity && !happensAt(frozen, kinds[kind]!, piece, pieces, event, before - tolerance))
      continue;
    const at = criticalLoss(frozen, kinds[kind]!, piece, pieces, event, tolerance);
    if (at === undefined || at.critical >= before) continue;
    least = Math.min(least, at.critical);
    found.push({ kind, piece, tolerance, critical: at.critical });
  }
  return found
    .filter(({ critical }) => critical <= least + FIRST_WITHIN)
    .sort((a, b) => a.critical - b.critical)
    .slice(0, MOST_PLACES);
}
