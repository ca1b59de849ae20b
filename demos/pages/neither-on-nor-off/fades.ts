// The price of a pressure that goes: once, in a given time, or again and again.

import { fadeSweep, type Cruise, type FadeRow } from "../../../src/history/fade.ts";
import { axis, type UnitSystem } from "../../../src/units/show.ts";
import { rise, van } from "./bench.ts";
import { atFirst, caseOf } from "./van.ts";

/** The van in third gear at 50 km/h up a hill of one in twenty, warm. */
export const uphill: Cruise = { gear: 2, speed: 50 / 3.6, grade: 0.05, temperature: 358.15 };

const times = [0.05, 0.1, 0.2, 0.5, 1, 2, 3, 5, 10, 20, 60, 180, 600, 1800, 3600];

/** Heat for every time of the picture. */
export function fades(at: readonly number[] = times): FadeRow[] {
  return fadeSweep(caseOf(atFirst).unit, uphill, at);
}

/**
 * Where real causes sit: a valve of the control shuts in about a tenth of a second; with a line parted at full bore the
 * van goes from its first gulp to its first slip in some seconds, with a small hole in hours (a claim holds both).
 */
export const places = [
  { time: 0.1, says: "a valve shuts" },
  { time: 5, says: "a line parts" },
  { time: 3600, says: "a seep" },
] as const;

/** Heat [J] that warms the steels by `rise`, of the clutch with the least steel among those that hold in that gear. */
export function warming(): number {
  return (
    480 *
    Math.min(...van.gears[uphill.gear]!.holds.map(({ clutch }) => van.clutches[clutch]!.steelMass)) *
    rise
  );
}

/** The same as a heat to compare with, in words. */
export function heats(system: UnitSystem): readonly { readonly energy: number; readonly says: string }[] {
  const { factor, unit } = axis("temperatureDifference", system);
  return [{ energy: warming(), says: `warms a clutch's steels by ${rise * factor} ${unit}` }];
}
