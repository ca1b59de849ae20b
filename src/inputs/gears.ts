// Gears of a case: by name from the tooth counts of the train, or with a ratio and shares of their own.

import type { Gear } from "../physics/build.ts";
import {
  appliedElements,
  elementShare,
  gearRatio,
  holdingElements,
  type GearNumber,
  type GearTrain,
  type HoldingElement,
} from "../physics/load/gears.ts";
import type { BuildTree } from "./build-schema.ts";
import type { Plain } from "./gather.ts";

export type PlainBuild = Plain<BuildTree>;
export type PlainGear = PlainBuild["reverse"];

const trainGears: Record<string, GearNumber> = { R: -1, "1": 1, "2": 2, "3": 3, "4": 4, "5": 5 };
export const trainGearNames: readonly string[] = Object.keys(trainGears);

/** The gear of the train that a name stands for ("1" to "5", "R"), or undefined. */
export function trainGear(name: string): GearNumber | undefined {
  return Object.hasOwn(trainGears, name) ? trainGears[name] : undefined;
}

/** The elements that hold a gear of the train, in its own words. */
export function elementsOf(gear: GearNumber): readonly HoldingElement[] {
  return appliedElements(gear);
}

export function isElement(name: string): name is HoldingElement {
  return (holdingElements as readonly string[]).includes(name);
}

export const namesHeld = (gear: PlainGear): readonly string[] =>
  gear.holds.map((held) => (typeof held === "string" ? held : held.clutch));

export function trainOf(build: PlainBuild): GearTrain {
  const { front, rear } = build.gearTrain;
  return { front, rear };
}

/** The gear as the physics reads it; its clutches by their place in the list. */
export function gearOf(gear: PlainGear, train: GearTrain, clutchNames: readonly string[]): Gear {
  if ("ratio" in gear)
    return {
      name: gear.name,
      ratio: gear.ratio,
      holds: gear.holds.map(({ clutch, share }) => ({ clutch: clutchNames.indexOf(clutch), share })),
    };
  const known = trainGear(gear.name)!;
  return {
    name: gear.name,
    ratio: gearRatio(train, known),
    holds: gear.holds.map((name) => ({
      clutch: clutchNames.indexOf(name),
      share: elementShare(train, known, name as HoldingElement),
    })),
  };
}
