// The hot idling check of the level on a unit that has lost some of its fluid: what the stick shows, and when that is low.

import { impossible } from "../errors.ts";
import type { Unit } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { stickIdling, type StickReading } from "./level-checks.ts";
import { HOT } from "./ready.ts";

/** The stick with so much fluid [kg] inside, level, idling in park at `HOT`: the check proper, whatever the weather. */
export function hotCheck(unit: Unit, mass: number): StickReading {
  if (!(mass > 0)) impossible("mass", mass, "some fluid, in kg");
  const { build, fluid } = unit;
  const left = mass / density(fluid.density15, build.fillTemperature);
  return stickIdling({ ...unit, leak: null }, build.fill - left, HOT);
}

/** Fluid [kg] with which that check shows exactly the low mark, to a gram; the stick rises with the fluid. */
export function massAtLowMark(unit: Unit): number {
  let [low, high] = [0, unit.build.fill * density(unit.fluid.density15, unit.build.fillTemperature)];
  while (high - low > 1e-3) {
    const middle = 0.5 * (low + high);
    if (hotCheck(unit, middle).position < 0) low = middle;
    else high = middle;
  }
  return high;
}
