// Four gears from one set with two suns: the same laws as those of the longer train, whose set in front is locked.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  appliedElements,
  elementShare,
  gearRatio,
  holdingElements,
  type GearNumber,
} from "../../src/physics/load/gears.ts";
import type { DualSunSet } from "../../src/physics/load/planetary.ts";
import {
  fourSpeedElements,
  fourSpeedRatio,
  fourSpeedShare,
  type FourSpeedGear,
} from "../../src/physics/load/two-sun-train.ts";

const gears: readonly FourSpeedGear[] = [-1, 1, 2, 3, 4];
const teeth: fc.Arbitrary<DualSunSet> = fc.record({
  smallSun: fc.integer({ min: 20, max: 30 }),
  largeSun: fc.integer({ min: 31, max: 45 }),
  ring: fc.integer({ min: 70, max: 110 }),
});
const gear = fc.constantFrom(...gears);

/** Sliding of each element, by Willis, when turbine and output turn as given and the other element of the gear holds. */
function sliding(set: DualSunSet, g: FourSpeedGear, loose: string, turbine: number, output: number): number {
  const [up, down] = [set.ring / set.smallSun, set.ring / set.largeSun];
  // The carrier's speed from the one element that holds.
  const held = fourSpeedElements(g).find((name) => name !== loose)!;
  const carrier = {
    "low-reverse brake": 0,
    "band brake": (down * output) / (1 + down),
    "forward clutch": (turbine - up * output) / (1 - up),
    "direct clutch": turbine,
    "reverse clutch": (turbine + down * output) / (1 + down),
  }[held as "band brake"];
  const small = carrier + up * (output - carrier);
  const large = carrier - down * (output - carrier);
  return {
    "low-reverse brake": carrier,
    "band brake": large,
    "forward clutch": turbine - small,
    "direct clutch": turbine - carrier,
    "reverse clutch": turbine - large,
  }[loose as "band brake"];
}

describe("four gears of a set with two suns", () => {
  test("each needs two elements, and only they carry", () => {
    for (const g of gears) {
      expect(fourSpeedElements(g)).toHaveLength(2);
      const set = { smallSun: 29, largeSun: 45, ring: 81 };
      for (const element of holdingElements)
        expect(fourSpeedShare(set, g, element) > 0).toBe(fourSpeedElements(g).includes(element));
    }
    expect(() => fourSpeedRatio({ smallSun: 29, largeSun: 45, ring: 81 }, 5 as never)).toThrow(/gear/);
    expect(() => fourSpeedRatio({ smallSun: 29, largeSun: NaN, ring: 81 }, 2)).toThrow(/largeSun/);
  });

  test("power is one: what an element slides times what it carries is what the train slips times the turbine's torque", () => {
    fc.assert(
      fc.property(
        teeth,
        gear,
        fc.double({ min: 20, max: 500, noNaN: true }),
        fc.double({ min: 0, max: 300, noNaN: true }),
        (set, g, turbine, output) => {
          for (const element of fourSpeedElements(g)) {
            const slip = turbine - fourSpeedRatio(set, g) * output;
            const own = sliding(set, g, element, turbine, output);
            expect(fourSpeedShare(set, g, element) * Math.abs(own)).toBeCloseTo(Math.abs(slip), 6);
          }
        },
      ),
    );
  });

  test("torque closes on the housing: brakes take what the output has more than the input", () => {
    fc.assert(
      fc.property(teeth, gear, (set, g) => {
        const brakes = fourSpeedShare(set, g, "band brake") + fourSpeedShare(set, g, "low-reverse brake");
        expect(brakes).toBeCloseTo(Math.abs(fourSpeedRatio(set, g) - 1), 12);
      }),
    );
  });

  test("is the longer train's rear set behind a locked front one", () => {
    const pairs: readonly (readonly [FourSpeedGear, GearNumber])[] = [
      [2, 3],
      [3, 4],
      [4, 5],
    ];
    fc.assert(
      fc.property(teeth, (rear) => {
        const train = { front: { sun: 42, ring: 70 }, rear };
        for (const [g, longer] of pairs) {
          expect(fourSpeedRatio(rear, g)).toBeCloseTo(gearRatio(train, longer), 12);
          expect(appliedElements(longer)).toEqual(expect.arrayContaining([...fourSpeedElements(g)]));
          for (const element of fourSpeedElements(g))
            expect(fourSpeedShare(rear, g, element)).toBeCloseTo(elementShare(train, longer, element), 12);
        }
      }),
    );
  });
});
