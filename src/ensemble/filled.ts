// How much fluid a unit takes: whoever fills it looks at the stick, not at a number of litres.

import { stickIdling } from "../bay/level-checks.ts";
import { HOT } from "../bay/ready.ts";
import type { Unit } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";

/** Volume to which a fill is found [m³], a hundredth of a millimetre on the stick; the steps that this may take. */
const CLOSE = 1e-6;
const STEPS = 12;

/** Depth at the stick [m] of a tight unit with its fill, idling hot on the level. */
export function fullDepth(unit: Unit): number {
  return stickIdling({ ...unit, leak: null }, 0, HOT).depth;
}

/**
 * The fill [m³ at the fill temperature] with which a unit idles hot at a depth at the stick [m]; null when none of more than
 * nothing does. In the level pan the depth grows with the volume, so that what is missing is put in and looked at again.
 */
export function fillFor(unit: Unit, depth: number): number | null {
  const { fill, fillTemperature, sump } = unit.build;
  const { pan } = sump;
  const { density15 } = unit.fluid;
  const whenCool = density(density15, HOT) / density(density15, fillTemperature);
  let filled = fill;
  for (let i = 0; i < STEPS; i++) {
    const found = stickIdling({ ...unit, leak: null }, fill - filled, HOT).depth;
    const missing = (depth - found) * pan.free * pan.length * pan.width * whenCool;
    filled += missing;
    if (!(filled > 0)) return null;
    if (Math.abs(missing) < CLOSE) return filled;
  }
  return null;
}
