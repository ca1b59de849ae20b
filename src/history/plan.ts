// What a history needs: the unit, the week that it drives, its calendar and its leak. And what no plan may lack.

import type { Week } from "../driving/pattern.ts";
import { codedError, finite, impossible, notNegative, positive } from "../errors.ts";
import type { Unit } from "../physics/build.ts";
import type { Towed } from "./towing.ts";

/** Fluid added: when [s since the start], how much [m³] at its temperature [K]. */
export interface TopUp {
  readonly at: number;
  readonly volume: number;
  readonly temperature: number;
}

/** Everything that a history needs. */
export interface Plan {
  readonly unit: Unit;
  readonly week: Week;
  /** Weekday (0 is Monday) and day of the year (0 is 1 January) on which it starts, at midnight. */
  readonly weekday: number;
  readonly dayOfYear: number;
  /** When the leak opens: after so many seconds (below 0: before the start), so many metres, or so many seconds of running. */
  readonly opens: { readonly after: number } | { readonly distance: number } | { readonly running: number };
  readonly topUps: readonly TopUp[];
  /** Longest time that it may take [s]. */
  readonly span: number;
  /** Fluid short of correct from the start [m³ at fill temperature]; negative for overfull. */
  readonly fillShort?: number;
  /**
   * How long the vehicle takes for its week, by its own clock [s]; a calendar week when missing. Trips stay as the week tells them; between them it stands for longer or
   * shorter than the clock says, and cools, drains and leaks for so long.
   */
  readonly weekLasts?: number;
  /** What is towed, and when. */
  readonly towed?: Towed;
  /** Steps while air is possible and while slipping [s]; halving them moves no event by a second. */
  readonly fine?: number;
  readonly finer?: number;
}

/** Idling in neutral before the first gear of a trip [s]. */
export const idleFirst = 2;

const WEEK = 7 * 86400;
/** A vehicle that is driven all day still stands for so much of what its week says: assumed. */
const LEAST_REST = 0.05;

/** How much longer a vehicle that drives for so long in a week [s] rests than its week says. */
export function restsOf({ weekLasts = WEEK }: Pick<Plan, "weekLasts">, drives: number): number {
  const rest = WEEK - drives;
  return weekLasts === WEEK || !(rest > 0) ? 1 : Math.max(LEAST_REST, (weekLasts - drives) / rest);
}

const parts = [
  ["unit"],
  ["unit", "build"],
  ["unit", "fluid"],
  ["unit", "driver"],
  ["unit", "surroundings"],
  ["week"],
  ["weekday"],
  ["dayOfYear"],
  ["opens"],
  ["topUps"],
  ["span"],
];

/** Refuses what lacks a part ("impossible-input"), and names the first; `name` is what it is called. */
function whole(
  name: string,
  given: unknown,
  paths: readonly (readonly string[])[],
  expected: string,
  example: string,
): void {
  const at = (from: unknown, key: string) =>
    typeof from === "object" && from !== null ? (Reflect.get(from, key) as unknown) : undefined;
  const missing = paths.find((path) => (path.reduce(at, given) ?? null) === null);
  if (missing === undefined) return;
  throw codedError("impossible-input", [
    { path: `${name}.${missing.join(".")}`, expected, given: "nothing", example },
  ]);
}

/** Refuses a unit without a build. */
export function wholeUnit(unit: unknown): void {
  const example = "planOf(readCase(json)).unit";
  whole("unit", unit, [["build"]], "a unit, as planOf makes it of a case", example);
}

/** Refuses a plan that lacks a part, and one whose numbers no history could have. */
export function wholePlan(plan: unknown): asserts plan is Plan {
  const example = "simulate(planOf(readCase(json)))";
  whole("plan", plan, parts, "every part of a plan, as planOf makes it of a case", example);
  possible(plan as Plan);
}

function possible({
  unit,
  weekday,
  dayOfYear,
  opens,
  topUps,
  span,
  fillShort = 0,
  weekLasts,
  fine,
  finer,
}: Plan): void {
  if (!(Number.isInteger(weekday) && weekday >= 0 && weekday <= 6))
    impossible("plan.weekday", weekday, "0 (Monday) to 6");
  finite("plan.dayOfYear", dayOfYear);
  for (const [key, value] of Object.entries(opens)) finite(`plan.opens.${key}`, value);
  for (const { at, volume, temperature } of topUps) {
    finite("plan.topUps.at", at, "s");
    finite("plan.topUps.volume", volume, "m³");
    positive("plan.topUps.temperature", temperature, "K");
  }
  notNegative("plan.span", span, "s");
  if (!(fillShort < unit.build.fill && fillShort > -Infinity))
    impossible("plan.fillShort", fillShort, "less than the unit's fill, in m³");
  if (weekLasts !== undefined) positive("plan.weekLasts", weekLasts, "s");
  if (fine !== undefined) positive("plan.fine", fine, "s");
  if (finer !== undefined) positive("plan.finer", finer, "s");
}

/** Air temperature on a day of the year [K]: coldest on 15 January. */
export function ambientOn(unit: Unit, dayOfYear: number): number {
  const { meanTemperature, yearlySwing } = unit.surroundings;
  return meanTemperature - yearlySwing * Math.cos((2 * Math.PI * (dayOfYear - 14)) / 365.25);
}
