// Preparing a week: once for a build, its fluid, a driver, a week and its air, however many leaks are then asked about.

import type { Week } from "../driving/pattern.ts";
import type { Unit } from "../physics/build.ts";
import { bracketed, criticalLoss } from "./critical.ts";
import { newFrozen, type Frozen } from "./frozen.ts";
import { kindsOf } from "./kinds.ts";
import { walkLevels, type WeekSeen } from "./levels.ts";
import type { Candidate, Climate, Prepared, Threshold } from "./prepared.ts";

/** Called with the share done; return false to cancel. */
export type Preparing = (share: number) => boolean;

/** Coldest and warmest air that the spans to be asked about meet [K]. */
export interface AirRange {
  readonly coldest: number;
  readonly warmest: number;
}

/** Up to this range of air [K] one climate will do, up to the next two. */
const ONE_CLIMATE = 2;
const TWO_CLIMATES = 8;

function airsOf({ surroundings: { meanTemperature, yearlySwing } }: Unit, within?: AirRange): number[] {
  const coldest = within?.coldest ?? meanTemperature - Math.abs(yearlySwing);
  const warmest = within?.warmest ?? meanTemperature + Math.abs(yearlySwing);
  const middle = 0.5 * (coldest + warmest);
  if (warmest - coldest <= ONE_CLIMATE) return [middle];
  return warmest - coldest <= TWO_CLIMATES ? [coldest, warmest] : [coldest, middle, warmest];
}

/** Moments that need this much more fluid lost than the earliest [kg] are never the first for a leak that lives twenty trips. */
const FIRST_WITHIN = 0.5;
/** How closely the critical loss of the earliest moment is found [kg], and of one that comes later, as a share of how much later. */
const FOUND_WITHIN = 0.001;
const LATER_WITHIN = 0.03;

/**
 * Walks the week with frozen losses in air of one to three temperatures (the year's coldest, mean and warmest) and finds what every
 * event takes. The unit's leak does not matter. Returns undefined when `preparing` said no.
 */
export function prepareDuty(unit: Unit, week: Week, preparing?: Preparing, within?: AirRange): Prepared | undefined {
  const kinds = kindsOf(week);
  const airs = airsOf(unit, within);
  const walked: { frozen: Frozen; climate: Climate; seen: WeekSeen }[] = [];
  for (const [i, air] of airs.entries()) {
    const frozen = newFrozen(unit, air);
    const burns = frozen.measures.watchers.map(({ name }) => name === "damage 1" || name === "no drive");
    const isLast = (held: Float64Array) => held.some((value, event) => burns[event]! && value > 0);
    const going = (level: number) => preparing?.((0.7 * (i + level / 20)) / airs.length) !== false;
    const levels = walkLevels(frozen, kinds, isLast, going);
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
      const critical = new Float64Array(airs.length);
      const time = new Float64Array(airs.length);
      walked.forEach(({ frozen, seen }, i) => {
        const found = criticalLoss(frozen, kinds.kinds[kind]!, piece, seen[kind]!, event, tolerance);
        critical[i] = found?.critical ?? Infinity;
        time[i] = found?.time ?? Number.NaN;
      });
      candidates.push({ kind, piece, critical, time });
    }
    if (candidates.length > 0) thresholds.push({ name, condition, candidates, ...(clutch === undefined ? {} : { clutch }) });
  }
  const tight: Unit = { ...unit, leak: null };
  return { unit: tight, ...kinds, climates: walked.map(({ climate }) => climate), thresholds, aftermaths: [] };
}

/** Pieces in which the event may come first in a week, and how closely each must be known [kg]. */
function firstPlaces(
  frozen: Frozen,
  seen: WeekSeen,
  kinds: Prepared["kinds"],
  event: number,
): { kind: number; piece: number; tolerance: number }[] {
  const places: { kind: number; piece: number; tolerance: number }[] = [];
  const found: { kind: number; piece: number; critical: number }[] = [];
  let least = Infinity;
  for (const { kind, piece, estimate, upper } of bracketed(seen, event)) {
    const pieceSeen = seen[kind]![piece]!;
    const low = upper > 0 ? pieceSeen.seen[upper - 1]!.lacking : 0;
    if (low > least + FIRST_WITHIN || estimate > least + FIRST_WITHIN + 0.1) continue;
    // One that comes later in the same trip and needs more is never the first.
    if (found.some((other) => other.kind === kind && other.piece < piece && other.critical <= low)) continue;
    const tolerance = Math.max(FOUND_WITHIN, least < Infinity ? LATER_WITHIN * (estimate - least) : 0);
    const at = criticalLoss(frozen, kinds[kind]!, piece, seen[kind]!, event, tolerance);
    if (at === undefined) continue;
    least = Math.min(least, at.critical);
    found.push({ kind, piece, critical: at.critical });
    places.push({ kind, piece, tolerance });
  }
  return places.filter(({ kind, piece }, i) => {
    const { critical } = found[i]!;
    return critical <= least + FIRST_WITHIN && !found.some((other) => other.kind === kind && other.piece < piece && other.critical <= critical);
  });
}
