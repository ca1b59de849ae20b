// Preparing a week: once for a build, its fluid, a driver, a week and its air, however many leaks are then asked about.

import type { Week } from "../driving/pattern.ts";
import { impossible, positive } from "../errors.ts";
import { wholeUnit } from "../history/plan.ts";
import type { Unit } from "../physics/build.ts";
import { newFrozen } from "./frozen.ts";
import { kindsOf, type Kinds } from "./kinds.ts";
import { walkLevels } from "./levels.ts";
import { walkAftermaths } from "./aftermath.ts";
import { findEdges, momentsOf, slopesBetween } from "./moments.ts";
import { stickMoments, type StickMoments } from "./stick.ts";
import type { Aftermath, Candidate, Climate, Prepared, Threshold } from "./prepared.ts";
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

/** Refuses a unit and a week that lack what is walked. */
export function checkAsked(unit: Unit, week: Week): void {
  wholeUnit(unit);
  if (!Array.isArray((week as Partial<Week> | null)?.days))
    impossible("week.days", Number.NaN, "the trips of each weekday, as weekOf makes them");
}

/** Airs that a week is walked in [K], rising. */
export function airsOf({ surroundings }: Unit, within?: AirRange): number[] {
  const { meanTemperature = Number.NaN, yearlySwing = Number.NaN } = (surroundings ?? {}) as Partial<
    Unit["surroundings"]
  >;
  const coldest = within?.coldest ?? meanTemperature - Math.abs(yearlySwing);
  const warmest = within?.warmest ?? meanTemperature + Math.abs(yearlySwing);
  positive("coldest air", coldest, "K");
  if (!(warmest >= coldest && warmest < Infinity))
    impossible("warmest air", warmest, `a temperature from the coldest, ${coldest} K, on`);
  if (warmest - coldest <= SAME_AIR) return [0.5 * (coldest + warmest)];
  const steps = Math.ceil((warmest - coldest) / APART);
  return Array.from({ length: steps + 1 }, (_, i) => coldest + ((warmest - coldest) * i) / steps);
}

/** Shares of the work: the levels, and then the critical losses. */
const LEVELS = 0.8;

/** What was found of the week in air of one temperature; each event with its moments. */
export interface InAir {
  readonly air: number;
  readonly climate: Climate;
  readonly events: readonly Watched[];
  readonly aftermaths: readonly Aftermath[];
}

type Watched = Pick<Threshold, "name" | "condition" | "clutch"> & { readonly moments: readonly Candidate[] };

/** Walks the week in air of one temperature [K]; undefined when `going`, told the share done, said no. */
export function walkInAir(
  unit: Unit,
  kinds: Kinds,
  air: number,
  going: (share: number) => boolean,
): InAir | undefined {
  const frozen = newFrozen(unit, air);
  const most = fullMass(unit);
  const levels = walkLevels(frozen, kinds, (lacking) => going((LEVELS * lacking) / most));
  if (levels === undefined) return undefined;
  const { climate, seen } = levels;
  const events: Watched[] = [];
  const { watchers } = frozen.measures;
  for (const event of watchers.keys()) {
    if (!going(LEVELS + ((1 - LEVELS) * event) / watchers.length)) return undefined;
    findEdges(frozen, kinds, seen, event);
  }
  for (const [event, { name, condition, clutch }] of watchers.entries()) {
    const moments = momentsOf(frozen, seen, event);
    events.push({ name, condition, moments, ...(clutch === undefined ? {} : { clutch }) });
  }
  return { air, climate, events, aftermaths: walkAftermaths(frozen, kinds, seen, climate.used) };
}

/** What the stick is asked: which event it is, and the least loss at which it happened in any air [kg lacking]; undefined if in none. */
export function stickAsked(parts: readonly InAir[]): { event: number; least: number } | undefined {
  const event = parts[0]!.events.findIndex(({ name }) => name === "level below the low mark");
  const least = Math.min(
    ...parts.flatMap(({ events }) => events[event]!.moments.map(({ critical }) => critical)),
  );
  return least < Infinity ? { event, least } : undefined;
}

/** Everything that was found, put together; the stick has airs of its own. */
export function together(
  unit: Unit,
  kinds: Kinds,
  parts: readonly InAir[],
  stick: StickMoments | undefined,
): Prepared {
  const airs = parts.map(({ air }) => air);
  const byEvent = parts[0]!.events.map((_, event) => parts.map(({ events }) => events[event]!.moments));
  const thresholds = slopesBetween(airs, byEvent).flatMap((moments, event): Threshold[] => {
    if (moments.every((ofAir) => ofAir.length === 0)) return [];
    const { moments: _, ...watched } = parts[0]!.events[event]!;
    if (watched.name !== "level below the low mark" || stick === undefined)
      return [{ ...watched, airs, moments }];
    return [{ ...watched, airs: stick.airs, moments: slopesBetween(stick.airs, [stick.moments])[0]! }];
  });
  return {
    unit: { ...unit, leak: null },
    ...kinds,
    climates: parts.map(({ climate }) => climate),
    thresholds,
    aftermaths: parts.flatMap(({ aftermaths }) => aftermaths),
  };
}

/**
 * What a week does to a unit at every loss, walked with the loss frozen, level by level, in airs from the coldest to the warmest: `dutyHistory` and `lookBack` answer
 * one leak after another from it. `unit` and `week` are those of a plan, SI; the unit's leak does not matter. `preparing` is told the share done (0 to 1) and calls it off by
 * answering false: then the result is undefined. `within` is the coldest and the warmest air that will be asked about [K], above 0 and in this order, else the year's of the
 * unit's surroundings; air more than 3 K beyond them counts as 3 K beyond. The result is plain data, SI: airs [K] at most 8 K apart, in each the tables by lacking fluid [kg]
 * (levels 0.25 kg apart and closer), and of every event the losses [kg] at which it comes. Good where the laws of a history are; a week without trips is one of stands. Takes
 * about six seconds of processor time for each air; `prepareWeek` does the same, to the bit, on all cores. Errors ("impossible-input"): a unit without a build or surroundings, a week without
 * days, air that is none. Source: no law of its own; how far its averages are from `simulate` is measured by `npm run agree` (DEVELOPERS.md, Two fidelities).
 */
export function prepareDuty(
  unit: Unit,
  week: Week,
  preparing?: Preparing,
  within?: AirRange,
): Prepared | undefined {
  checkAsked(unit, week);
  const kinds = kindsOf(week);
  const airs = airsOf(unit, within);
  const parts: InAir[] = [];
  for (const [i, air] of airs.entries()) {
    const part = walkInAir(unit, kinds, air, (share) => preparing?.((i + share) / airs.length) !== false);
    if (part === undefined) return undefined;
    parts.push(part);
  }
  const asked = stickAsked(parts);
  const stick = asked && stickMoments(unit, kinds, asked.event, asked.least, airs[0]!, airs.at(-1)!);
  return together(unit, kinds, parts, stick);
}
