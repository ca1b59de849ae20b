// What a part of a build is refused for does not hang on what was asked before: one that was sound when it was first used and is not any more is refused.
import { describe, expect, test } from "vitest";
import { isCovered } from "../../src/physics/sump/pickup.ts";
import { meanDepth } from "../../src/physics/sump/pan.ts";
import { inletPressure } from "../../src/physics/supply/inlet.ts";
import { van } from "../emerge/van.ts";

const own = <Part>(part: Part): { -readonly [Key in keyof Part]: Part[Key] } => structuredClone(part);

describe("a part that is changed after its first use is looked at again", () => {
  test("pan", () => {
    const pan = own(van.build.sump.pan);
    expect(meanDepth(pan, 4e-3)).toBeGreaterThan(0);
    pan.free = Number.NaN;
    expect(() => meanDepth(pan, 4e-3)).toThrow("free share of the pan");
  });

  test("pickup", () => {
    const pickup = own(van.build.sump.pickup);
    expect(isCovered(pickup, 0.04, 2e-4)).toBe(true);
    pickup.rim = -1;
    expect(() => isCovered(pickup, 0.04, 2e-4)).toThrow("rim");
  });

  test("inlet", () => {
    const inlet = own(van.build.inlet);
    expect(inletPressure(inlet, 5e-4, 0.02, 850)).toBeGreaterThan(0);
    inlet.bore = 0;
    expect(() => inletPressure(inlet, 5e-4, 0.02, 850)).toThrow("inlet bore");
  });
});
