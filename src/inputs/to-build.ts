// The build that the physics reads, from a tree without faults.

import type { Build } from "../physics/build.ts";
import { gearOf, type PlainBuild } from "./gears.ts";

/** Puts a checked tree into the shape of the physics: gears get their ratios and shares from the teeth. */
export function toBuild(tree: PlainBuild): Build {
  const { about: _about, gearTrain, lockUp, gears, reverse, ...parts } = tree;
  const names = tree.clutches.map(({ name }) => name);
  const { most, back, fedFrom, clutch, fromGear, ...policy } = lockUp;
  return {
    ...parts,
    gears: gears.map((gear) => gearOf(gear, gearTrain, names)),
    reverse: gearOf(reverse, gearTrain, names),
    finalRatio: gearTrain.final.ring / gearTrain.final.pinion,
    lockUp: {
      ...policy,
      clutch: { ...clutch, most, back, fedFromOverflow: fedFrom === "overflow" },
      fromGear: gears.findIndex(({ name }) => name === fromGear),
    },
  };
}
