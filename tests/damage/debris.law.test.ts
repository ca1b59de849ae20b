// Lost lining as mass: nothing from a sound clutch, all of it from one burnt to the steel, never more than there was.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { faceArea } from "../../src/physics/clutch/geometry.ts";
import { debris, debrisRange, liningDensity } from "../../src/physics/damage/debris.ts";
import { charYield, pyrolysisRange } from "../../src/physics/damage/pyrolysis.ts";
import { wearDepth } from "../../src/physics/damage/wear.ts";
import { wetPaper } from "../../src/physics/heat/solid.ts";
import { between } from "../between.ts";
import { van } from "../emerge/van.ts";

describe("debris", () => {
  const area = 0.12;
  const thickness = 0.5e-3;
  const whole = liningDensity * area * thickness;

  it("is none from a sound lining, and all of it from one worn to the steel", () => {
    expect(debris(area, thickness, 0, 0)).toEqual({ worn: 0, charred: 0, least: 0, most: 0 });
    const gone = debris(area, thickness, thickness, 1);
    expect(gone.worn).toBeCloseTo(whole, 12);
    expect(gone.charred).toBe(0);
  });

  it("is never more than the lining, and its bounds differ by the char that may still sit there", () => {
    fc.assert(
      fc.property(between(0, 1), between(debrisRange.low, debrisRange.high), (worn, char) => {
        const lost = debris(area, thickness, worn * thickness, char);
        expect(lost.most).toBeLessThanOrEqual(whole * (1 + 1e-12));
        expect(lost.least).toBeGreaterThanOrEqual(lost.worn);
        expect(lost.most - lost.least).toBeCloseTo(0.35 * lost.charred, 12);
      }),
    );
  });

  it("worn off goes with the energy of friction, whatever the area", () => {
    const grams = (a: number) => debris(a, thickness, wearDepth(1e6, a, 1e-14), 0).worn;
    expect(grams(0.05)).toBeCloseTo(liningDensity * 1e-14 * 1e6, 15);
    expect(grams(0.2) / grams(0.05)).toBeCloseTo(1, 12);
  });

  it("takes the density that conduction takes, and no more char than pyrolysis leaves anywhere", () => {
    expect(wetPaper.conductivity / (wetPaper.diffusivity * 1600) / liningDensity).toBeCloseTo(1, 12);
    for (let t = pyrolysisRange.low; t <= pyrolysisRange.high; t += 10)
      expect(charYield(t)).toBeLessThanOrEqual(0.35);
  });

  it("of a whole van is tens to hundreds of grams of lining at most", () => {
    const { clutches } = van.build;
    const sum = clutches.reduce(
      (all, c) => all + debris(c.faces * faceArea(c), c.liningThickness, c.liningThickness, 0).worn,
      0,
    );
    expect(sum).toBeGreaterThan(0.02);
    expect(sum).toBeLessThan(1);
  });

  it("refuses a lining that cannot be", () => {
    for (const [a, h, w, c] of [
      [0, 1, 0, 0],
      [1, -1, 0, 0],
      [1, 1, 2, 0],
      [1, 1, 0, 1.1],
    ] as const)
      expect(() => debris(a, h, w, c)).toThrow();
  });
});
