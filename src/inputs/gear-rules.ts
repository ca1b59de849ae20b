// What gears, the clutches that hold them and the teeth of the train must be to each other.

import { isCoded } from "../errors.ts";
import { assemblyFaults, checkDualSun } from "../physics/load/planetary.ts";
import { given } from "../units/parse.ts";
import type { Rule } from "./build-rule.ts";
import type { FaultList } from "./fault-list.ts";
import { isElement, namesHeld, trainGear, trainGearNames, type PlainBuild, type PlainGear } from "./gears.ts";

export const gearRules: readonly Rule[] = [
  { needs: ["clutches", "gears", "reverse"], check: clutchesAndGears },
  { needs: ["gears", "reverse", "gearTrain"], check: gearsByTeeth },
  { needs: ["gearTrain"], check: teeth },
];

function clutchesAndGears({ clutches, gears, reverse }: PlainBuild, { want }: FaultList): void {
  const names = clutches.map(({ name }) => name);
  const all = [
    ...gears.map((gear, i) => ({ path: `gears[${i}]`, gear })),
    { path: "reverse", gear: reverse },
  ];
  names.forEach((name, i) => {
    want(names.indexOf(name) === i, `clutches[${i}].name`, "a name that no other clutch has", given(name));
    want(
      all.some(({ gear }) => namesHeld(gear).includes(name)),
      `clutches[${i}].name`,
      "a clutch that holds in some gear",
      `${given(name)}, which no gear names`,
    );
  });
  all.forEach(({ path, gear }, i) => {
    namesHeld(gear).forEach((name, j) =>
      want(
        names.includes(name),
        `${path}.holds[${j}]`,
        `the name of a clutch: ${names.join(", ")}`,
        given(name),
      ),
    );
    want(
      all.findIndex((other) => other.gear.name === gear.name) === i,
      `${path}.name`,
      "a name that no other gear has",
      given(gear.name),
    );
    if ("ratio" in gear)
      want(
        !(path === "reverse" ? gear.ratio >= 0 : gear.ratio <= 0),
        `${path}.ratio`,
        path === "reverse" ? "a ratio below 0: it backs up" : "a ratio above 0",
        String(gear.ratio),
      );
  });
}

function gearsByTeeth({ gears, reverse, gearTrain }: PlainBuild, { want }: FaultList): void {
  gears.forEach((gear, i) => byTeeth(`gears[${i}]`, gear, gearTrain, want));
  byTeeth("reverse", reverse, gearTrain, want);
}

// A gear without a ratio takes it from the teeth, so it must be one that the train has, held as the train holds it.
function byTeeth(
  path: string,
  gear: PlainGear,
  train: PlainBuild["gearTrain"],
  want: FaultList["want"],
): void {
  if ("ratio" in gear) return;
  const known = trainGear(train, gear.name);
  want(
    known !== undefined,
    `${path}.name`,
    `a gear of the train (${trainGearNames(train).join(", ")}), or a ratio with shares`,
    given(gear.name),
  );
  if (known === undefined) return;
  want(
    (gear.name === "R") === (path === "reverse"),
    `${path}.name`,
    path === "reverse" ? "R" : "a forward gear",
    given(gear.name),
  );
  const wanted = known.elements;
  const same = wanted.length === gear.holds.length && wanted.every((name) => gear.holds.includes(name));
  want(
    !gear.holds.every(isElement) || same,
    `${path}.holds`,
    `what holds this gear in the train: ${wanted.join(", ")}`,
    gear.holds.join(", "),
  );
}

// Tooth counts that cannot be put together. A count that could not be read has its own fault already.
function teeth({ gearTrain: { front, rear, final } }: PlainBuild, list: FaultList): void {
  const add = (
    path: string,
    { expected, given: what, example }: { expected: string; given: string; example: string },
  ) => list.want(false, path, expected, what, example);
  if (front && ![front.sun, front.ring, front.planets].some(Number.isNaN))
    for (const fault of assemblyFaults("gearTrain.front", front, front.planets)) add(fault.path, fault);
  if (![rear.smallSun, rear.largeSun, rear.ring, rear.planets].some(Number.isNaN))
    try {
      checkDualSun("gearTrain.rear", rear, rear.planets);
    } catch (error) {
      if (!isCoded(error)) throw error;
      for (const fault of error.faults) add(fault.path, fault);
    }
  list.want(
    !(final.ring < final.pinion),
    "gearTrain.final.ring",
    `no fewer teeth than the pinion (${final.pinion})`,
    String(final.ring),
  );
}
