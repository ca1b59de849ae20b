// The damage index is 1 exactly where a clutch can just carry its share of the rated torque at rated pressure.
import { describe, expect, it } from "vitest";
import { margins } from "../../src/history/margin.ts";
import { damageIndex } from "../../src/physics/damage/damage-index.ts";
import { elementCapacity, shareLeft } from "../../src/physics/holding.ts";
import { fresh } from "../../src/physics/state.ts";
import { setPoint } from "../../src/physics/supply/regulator.ts";
import { celsius, van } from "../emerge/van.ts";

const { build } = van;
const rated = margins(van);

describe("rated margin", () => {
  it.each(build.clutches.map(({ name }, i) => [name, i] as const))(
    "%s: charred down to its margin it just carries its rated torque, and its index is 1",
    (_, index) => {
      const state = fresh(van, celsius(90));
      state.char[index] = 1 - 1 / rated[index]!;
      expect(damageIndex(shareLeft(build, state, index), rated[index]!)).toBeCloseTo(1, 12);
      // In the gear that asks most of it, at the pressure set for that gear.
      const spare = [...build.gears, build.reverse].flatMap((gear) => {
        const hold = gear.holds.find(({ clutch }) => clutch === index);
        if (hold === undefined) return [];
        const pressure = setPoint(
          build.regulator,
          build.ratedTurbineTorque,
          gear === build.reverse,
          celsius(90),
          0,
        );
        return elementCapacity(build, state, index, 0, pressure) / (hold.share * build.ratedTurbineTorque);
      });
      expect(Math.min(...spare)).toBeCloseTo(1, 9);
    },
  );
});
