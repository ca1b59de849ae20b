// Preparing a week: once for a build, its fluid, a driver, a week and its air, however many leaks are then asked about.

import type { Week } from "../driving/pattern.ts";
import type { Unit } from "../physics/build.ts";
import { newFrozen, type Frozen } from "./frozen.ts";
import { kindsOf } from "./kinds.ts";
import { walkLevels, type KindSeen } from "./levels.ts";
import { walkAftermaths } from "./aftermath.ts";
import { momentsOf, slopesBetween } from "./moments.ts";
import { stickMoments } from "./stick.ts";
import type { Candidate, Climate, Prepared, Threshold } from "./prepared.ts";
import { fullMass } from "./snapshot.ts";

/** Called with the share done; return false to cancel. */
export type Preparing = (share: number) => boolean;

/** Coldest and warmest air that the spans to be asked about meet [K]. */
export interface AirRange {
  readonly coldest: number;
  readonly warmest: number;
}

/** Air of one temperature will do up to this range [K]; otherwise airs lie no further apart than that [K]. */
const SAME_AIR = 0.5;
const APART = 8;

function airsOf({ surroundings: { meanTemperature, yearlySwing } }: Unit, within?: AirRange): number[] {
  const coldest = within?.coldest ?? meanTemperature - Math.abs(yearlySwing);
  const warmest = within?.warmest ?? meanTemperature + Math.abs(yearlySwing);
  if (warmest - coldest <= SAME_AIR) return [0.5 * (coldest + warmest)];
  const steps = Math.ceil((warmest - coldest) / APART);
  return Array.from({ length: steps + 1 }, (_, i) => coldest + ((warmest - coldest) * i) / steps);
}

/** Shares of the work: the levels, and then the critical losses. */
const LEVELS = 0.8;

interface Walked {
  readonly frozen: Frozen;
  readonly climate: Climate;
  readonly seen: readonly KindSeen[];
}

/**
 * Walks the week with frozen losses in airs from the year's coldest to its warmest and finds what every event takes. The unit's leak
 * does not matter. Returns undefined when `preparing` said no.
 */
export function prepareDuty(
  unit: Unit,
  week: Week,
  preparing?: Preparing,
  within?: AirRange,
): Prepared | undefined {
  const kinds = kindsOf(week);
  const airs = airsOf(unit, within);
  const most = fullMass(unit);
  const walked: Walked[] = [];
  const byAir: Candidate[][][] = [];
  for (const [i, air] of airs.entries()) {
    const frozen = newFrozen(unit, air);
    const going = (share: number) => preparing?.((i + share) / airs.length) !== false;
    const levels = walkLevels(frozen, kinds, (lacking) => going((LEVELS * lacking) / most));
    if (levels === undefined) return undefined;
    walked.push({ frozen, ...levels });
    const { watchers } = frozen.measures;
    byAir.push([]);
    for (let event = 0; event < watchers.length; event++) {
      if (!going(LEVELS + ((1 - LEVELS) * event) / watchers.length)) return undefined;
      byAir[i]!.push(momentsOf(frozen, kinds, levels.seen, event));
    }
  }
  const { watchers } = walked[0]!.frozen.measures;
  const events = watchers.map((_, event) => byAir.map((ofAir) => ofAir[event]!));
  const aftermaths = walked.flatMap(({ frozen, seen }) => walkAftermaths(frozen, kinds, seen));
  const thresholds = slopesBetween(airs, events).flatMap((ofEvent, event): Threshold[] => {
    if (ofEvent.every((ofAir) => ofAir.length === 0)) return [];
    const { name, condition, clutch } = watchers[event]!;
    const more = clutch === undefined ? {} : { clutch };
    if (name !== "level below the low mark") return [{ name, condition, airs, moments: ofEvent, ...more }];
    const least = Math.min(...ofEvent.flat().map(({ critical }) => critical));
    const stick = stickMoments(unit, kinds, event, least, airs[0]!, airs.at(-1)!);
    return [{ name, condition, airs: stick.airs, moments: slopesBetween(stick.airs, [stick.moments])[0]! }];
  });
  const tight: Unit = { ...unit, leak: null };
  return { unit: tight, ...kinds, climates: walked.map(({ climate }) => climate), thresholds, aftermaths };
}
