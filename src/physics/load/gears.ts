import { finite, impossible } from "../../errors.ts";
import {
  checkDual,
  checkSet,
  dualFirstRatio,
  dualOverdriveRatio,
  dualReverseRatio,
  dualSecondRatio,
  sunHeldRatio,
  type DualSunSet,
  type PlanetarySet,
} from "./planetary.ts";

/**
 * Two sets in line: turbine -> front set (sun held, or locked) -> set with two suns -> output shaft.
 * Five gears forward and one reverse, from tooth counts.
 */
export interface GearTrain {
  readonly front: PlanetarySet;
  readonly rear: DualSunSet;
}

/** -1 is reverse. Neutral and park have no ratio. */
export type GearNumber = -1 | 1 | 2 | 3 | 4 | 5;

export const holdingElements = [
  "front brake", // holds the front sun
  "front clutch", // locks front sun to front ring
  "forward clutch", // drives the small sun
  "direct clutch", // drives the carrier
  "reverse clutch", // drives the large sun
  "band brake", // holds the large sun
  "low-reverse brake", // holds the carrier
] as const;
export type HoldingElement = (typeof holdingElements)[number];

const applied: Record<GearNumber, readonly HoldingElement[]> = {
  [-1]: ["front brake", "reverse clutch", "low-reverse brake"],
  1: ["front brake", "forward clutch", "low-reverse brake"],
  2: ["front brake", "forward clutch", "band brake"],
  3: ["front clutch", "forward clutch", "band brake"],
  4: ["front clutch", "forward clutch", "direct clutch"],
  5: ["front clutch", "direct clutch", "band brake"],
};

/** The three elements that are applied in a gear. */
export const appliedElements = (gear: GearNumber): readonly HoldingElement[] =>
  applied[gear] ?? noSuchGear(gear);

function noSuchGear(gear: number): never {
  return impossible("gear", gear, "-1 for reverse, or 1 to 5");
}

/** Front set: turbine speed over its carrier's speed in a gear. */
export const frontRatio = (train: GearTrain, gear: GearNumber): number =>
  appliedElements(gear).includes("front brake") ? sunHeldRatio(train.front) : 1;

/** Rear set: front carrier speed over output speed in a gear. */
export function rearRatio(train: GearTrain, gear: GearNumber): number {
  switch (gear) {
    case 1:
      return dualFirstRatio(train.rear);
    case 2:
    case 3:
      return dualSecondRatio(train.rear);
    case 4:
      return 1;
    case 5:
      return dualOverdriveRatio(train.rear);
    case -1:
      return dualReverseRatio(train.rear);
    default:
      return noSuchGear(gear);
  }
}

/** Turbine speed over output shaft speed [-]; negative in reverse. Without losses also output torque over turbine torque. */
export const gearRatio = (train: GearTrain, gear: GearNumber): number =>
  frontRatio(train, gear) * rearRatio(train, gear);

/**
 * Torque at a holding element as a share of turbine torque [-, never negative]; zero when it is not applied.
 * From torque balance, without losses: a brake takes what its set's ratio differs from one; a driving clutch takes
 * what passes through it; in locked sets the members share by tooth counts. The same share turns the slip of the
 * whole train into the element's own sliding speed, (w_turbine - ratio w_output)/share, since power is one.
 */
export function elementShare(train: GearTrain, gear: GearNumber, element: HoldingElement): number {
  const front = checkSet(train.front);
  const rear = checkDual(train.rear);
  if (!appliedElements(gear).includes(element)) return 0;
  const input = frontRatio(train, gear); // torque out of the front set for one unit in
  switch (element) {
    case "front brake":
      return input - 1;
    case "front clutch": // ring and sun push the carrier together, each by its teeth
      return front.sun / (front.sun + front.ring);
    case "forward clutch":
      return gear === 4 ? rear.smallSun / rear.ring : input;
    case "direct clutch":
      return gear === 4 ? 1 - rear.smallSun / rear.ring : input;
    case "reverse clutch":
      return input;
    case "band brake":
    case "low-reverse brake":
      return input * Math.abs(rearRatio(train, gear) - 1);
  }
}

/** Sliding speed [rad/s] of the one element that slips in a gear, at `turbine` and `output` shaft speed [rad/s]. */
export function slidingSpeed(
  train: GearTrain,
  gear: GearNumber,
  element: HoldingElement,
  turbine: number,
  output: number,
): number {
  const share = elementShare(train, gear, element);
  finite("turbine", turbine, "rad/s");
  finite("output", output, "rad/s");
  if (!(share > 0)) return 0;
  return (turbine - gearRatio(train, gear) * output) / share;
}
