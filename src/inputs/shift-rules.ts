// At which speeds a unit may shift, and lock its converter.

import { given } from "../units/parse.ts";
import { told, type Rule } from "./build-rule.ts";

export const shiftRules: readonly Rule[] = [
  {
    needs: ["lockUp", "gears"],
    check({ lockUp, gears }, { want }) {
      const from = gears.findIndex(({ name }) => name === lockUp.fromGear);
      want(
        from !== -1,
        "lockUp.fromGear",
        `the name of a gear: ${gears.map(({ name }) => name).join(", ")}`,
        given(lockUp.fromGear),
      );
      want(
        from !== 0,
        "lockUp.fromGear",
        "a gear that the vehicle does not start in: locked, the engine would stall",
        given(lockUp.fromGear),
      );
      want(
        !(lockUp.onAbove <= 0),
        "lockUp.onAbove",
        "a speed above standstill: locked, the engine would stall",
        told.speed(lockUp.onAbove),
        '"60 km/h"',
      );
      want(
        !(lockUp.offBelow <= 0),
        "lockUp.offBelow",
        "a speed above standstill: locked, the engine would stall",
        told.speed(lockUp.offBelow),
        '"52 km/h"',
      );
      want(
        !(lockUp.offBelow >= lockUp.onAbove),
        "lockUp.offBelow",
        `a speed below onAbove (${told.speed(lockUp.onAbove)})`,
        told.speed(lockUp.offBelow),
        '"52 km/h"',
      );
    },
  },
  {
    needs: ["shiftPlan", "gears"],
    check({ shiftPlan: { up, down }, gears }, { want }) {
      const pairs = gears.length - 1;
      want(
        up.length === pairs,
        "shiftPlan.up",
        `${pairs} speeds, one for each pair of neighbouring gears`,
        `${up.length}`,
      );
      want(
        down.length === pairs,
        "shiftPlan.down",
        `${pairs} speeds, one for each pair of neighbouring gears`,
        `${down.length}`,
      );
      down.forEach((speed, i) =>
        want(
          !(speed >= up[i]!),
          `shiftPlan.down[${i}]`,
          `a speed below the one for shifting up (${told.speed(up[i]!)})`,
          told.speed(speed),
        ),
      );
      up.forEach((speed, i) =>
        want(
          i === 0 || !(speed <= up[i - 1]!),
          `shiftPlan.up[${i}]`,
          `a speed above the shift before (${told.speed(up[i - 1] ?? 0)})`,
          told.speed(speed),
        ),
      );
    },
  },
];
