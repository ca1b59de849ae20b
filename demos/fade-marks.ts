// What the picture of a fading pressure is marked with, on the page and in the report alike.

import type { Build } from "../src/physics/build.ts";
import { axis, type UnitSystem } from "../src/units/show.ts";

/** Where real causes sit [s]: over such a time the line pressure goes. The page's claims hold the middle one. */
export const places = [
  { time: 0.1, says: "a valve shuts" },
  { time: 0.3, says: "a line parts" },
  { time: 3600, says: "a seep" },
] as const;

/** Heat per kilogram and kelvin of plain steel [J/(kg K)], handbooks. */
export const steel = 480;
/** A rise [K] from warm to where paper linings begin to char. */
export const rise = 200;

/** Heat [J] that warms the steels by `rise`, of the clutch with the least steel among those that hold in that gear. */
export function warming({ gears, clutches }: Pick<Build, "gears" | "clutches">, gear: number): number {
  return steel * rise * Math.min(...gears[gear]!.holds.map(({ clutch }) => clutches[clutch]!.steelMass));
}

/** The same as a heat to compare with, in words. */
export function heats(build: Build, gear: number, system: UnitSystem) {
  const { factor, unit } = axis("temperatureDifference", system);
  return [{ energy: warming(build, gear), says: `warms a clutch's steels by ${rise * factor} ${unit}` }];
}
