// A set with two suns alone, driven by the turbine: four gears forward and one reverse.

import { impossible } from "../../errors.ts";
import type { HoldingElement } from "./gears.ts";
import {
  checkDual,
  directRatio,
  dualFirstRatio,
  dualOverdriveRatio,
  dualReverseRatio,
  dualSecondRatio,
  type DualSunSet,
} from "./planetary.ts";

/** -1 is reverse. */
export type FourSpeedGear = -1 | 1 | 2 | 3 | 4;

const applied: Record<FourSpeedGear, readonly HoldingElement[]> = {
  [-1]: ["reverse clutch", "low-reverse brake"],
  1: ["forward clutch", "low-reverse brake"],
  2: ["forward clutch", "band brake"],
  3: ["forward clutch", "direct clutch"],
  4: ["direct clutch", "band brake"],
};

/** The two elements that hold a gear: two degrees of freedom are to be taken from the set. */
export const fourSpeedElements = (gear: FourSpeedGear): readonly HoldingElement[] =>
  applied[gear] ?? noSuchGear(gear);

function noSuchGear(gear: number): never {
  return impossible("gear", gear, "-1 for reverse, or 1 to 4");
}

/** Turbine speed over the speed of the set's ring, its output [-]; negative in reverse. */
export function fourSpeedRatio(set: DualSunSet, gear: FourSpeedGear): number {
  switch (gear) {
    case 1:
      return dualFirstRatio(set);
    case 2:
      return dualSecondRatio(set);
    case 3:
      return directRatio;
    case 4:
      return dualOverdriveRatio(set);
    case -1:
      return dualReverseRatio(set);
    default:
      return noSuchGear(gear);
  }
}

/**
 * Torque at an element as a share of turbine torque [-, never negative]; zero when it is not applied. A driving clutch takes
 * all that comes in, a brake what the output has more or less than the input; in third gear the set turns as one, and small
 * sun and carrier push the ring by their teeth.
 */
export function fourSpeedShare(set: DualSunSet, gear: FourSpeedGear, element: HoldingElement): number {
  checkDual(set);
  if (!fourSpeedElements(gear).includes(element)) return 0;
  switch (element) {
    case "forward clutch":
      return gear === 3 ? set.smallSun / set.ring : 1;
    case "direct clutch":
      return gear === 3 ? 1 - set.smallSun / set.ring : 1;
    case "band brake":
    case "low-reverse brake":
      return Math.abs(fourSpeedRatio(set, gear) - 1);
    default:
      return 1;
  }
}
