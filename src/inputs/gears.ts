// Gears of a case: by name from the tooth counts of the train, or with a ratio and shares of their own.

import type { Gear } from "../physics/build.ts";
import {
  appliedElements,
  elementShare,
  gearRatio,
  holdingElements,
  type GearNumber,
  type HoldingElement,
} from "../physics/load/gears.ts";
import {
  fourSpeedElements,
  fourSpeedRatio,
  fourSpeedShare,
  type FourSpeedGear,
} from "../physics/load/two-sun-train.ts";
import type { BuildTree } from "./build-schema.ts";
import type { Plain } from "./gather.ts";

export type PlainBuild = Plain<BuildTree>;
export type PlainGear = PlainBuild["reverse"];

/** A gear of a train: the elements that hold it, and from the teeth its ratio and their shares of turbine torque. */
interface TrainGear {
  readonly elements: readonly HoldingElement[];
  readonly ratio: () => number;
  readonly share: (element: HoldingElement) => number;
}

const reverse = "R";
const names = {
  five: [reverse, "1", "2", "3", "4", "5"],
  four: [reverse, "1", "2", "3", "4"],
};

/** The names of a train's gears: five and reverse with a set in front of the two suns, four and reverse without one. */
export const trainGearNames = ({ front }: PlainBuild["gearTrain"]): readonly string[] =>
  front ? names.five : names.four;

/** The gear of the train that a name stands for, or undefined. */
export function trainGear({ front, rear }: PlainBuild["gearTrain"], name: string): TrainGear | undefined {
  if (!(front ? names.five : names.four).includes(name)) return undefined;
  const number = name === reverse ? -1 : Number(name);
  if (front) {
    const gear = number as GearNumber;
    const train = { front, rear };
    return {
      elements: appliedElements(gear),
      ratio: () => gearRatio(train, gear),
      share: (element) => elementShare(train, gear, element),
    };
  }
  const gear = number as FourSpeedGear;
  return {
    elements: fourSpeedElements(gear),
    ratio: () => fourSpeedRatio(rear, gear),
    share: (element) => fourSpeedShare(rear, gear, element),
  };
}

export function isElement(name: string): name is HoldingElement {
  return (holdingElements as readonly string[]).includes(name);
}

export const namesHeld = (gear: PlainGear): readonly string[] =>
  gear.holds.map((held) => (typeof held === "string" ? held : held.clutch));

/** The gear as the physics reads it; its clutches by their place in the list. */
export function gearOf(
  gear: PlainGear,
  train: PlainBuild["gearTrain"],
  clutchNames: readonly string[],
): Gear {
  if ("ratio" in gear)
    return {
      name: gear.name,
      ratio: gear.ratio,
      holds: gear.holds.map(({ clutch, share }) => ({ clutch: clutchNames.indexOf(clutch), share })),
    };
  const known = trainGear(train, gear.name)!;
  return {
    name: gear.name,
    ratio: known.ratio(),
    holds: gear.holds.map((name) => ({
      clutch: clutchNames.indexOf(name),
      share: known.share(name as HoldingElement),
    })),
  };
}
