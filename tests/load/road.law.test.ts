import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isCoded } from "../../src/errors.ts";
import { gravity, roadForce, roadForceRange } from "../../src/physics/load/road.ts";
import { regressionRoadLoad, regressionRoadLoadRange } from "../../src/physics/load/road-regression.ts";
import { van } from "./van.ts";

const speed = fc.double({ min: 0.01, max: 60, noNaN: true });
const grade = fc.double({ min: -0.3, max: 0.3, noNaN: true });
const wish = fc.double({ min: -6, max: 4, noNaN: true });

describe("road force", () => {
  test("is zero for a vehicle that stands on the level, and only its weight on a hill", () => {
    expect(roadForce(van, 0, 0, 0)).toBe(0);
    expect(roadForce(van, 0, 0, 0.1)).toBeCloseTo(2300 * gravity * Math.sin(0.1), 9);
  });

  test("does work that ends up as speed, height and heat: up and down the same hill leaves only the losses", () => {
    fc.assert(
      fc.property(speed, grade, (v, alpha) => {
        const both = roadForce(van, v, 0, alpha) + roadForce(van, v, 0, -alpha);
        const losses = 2 * (2300 * gravity * 0.01 * Math.cos(alpha) + 0.6 * 1.15 * v * v);
        expect(both).toBeCloseTo(losses, 6);
      }),
    );
  });

  test("rises with acceleration by the mass and what spins with it", () => {
    fc.assert(
      fc.property(speed, grade, wish, (v, alpha, a) => {
        expect(roadForce(van, v, a, alpha) - roadForce(van, v, 0, alpha)).toBeCloseTo(2300 * 1.05 * a, 6);
      }),
    );
  });

  test("stays finite at the ends of its range and beyond", () => {
    for (const v of [roadForceRange.low, roadForceRange.high, 10 * roadForceRange.high])
      expect(Number.isFinite(roadForce(van, v, 0, 0))).toBe(true);
    for (const m of [regressionRoadLoadRange.low, regressionRoadLoadRange.high, 1, 1e5])
      expect(Number.isFinite(regressionRoadLoad(m, 30))).toBe(true);
  });

  test("refuses what cannot be", () => {
    for (const broken of [
      { mass: 0 },
      { mass: NaN },
      { dragArea: -1 },
      { rolling: -0.1 },
      { rotating: 0.9 },
      { airDensity: NaN },
    ])
      expect(() => roadForce({ ...van, ...broken }, 10, 0, 0)).toThrow(/vehicle\./);
    expect(() => roadForce(van, -1, 0, 0)).toThrow(/speed/);
    try {
      roadForce(van, NaN, 0, 0);
      expect.unreachable();
    } catch (error) {
      expect(isCoded(error) && error.code).toBe("impossible-input");
    }
  });
});

test("the regression rises with mass and with speed above a walk", () => {
  fc.assert(
    fc.property(fc.double({ min: 1200, max: 3400, noNaN: true }), speed, (m, v) => {
      expect(regressionRoadLoad(m + 10, v)).toBeGreaterThan(regressionRoadLoad(m, v));
      expect(regressionRoadLoad(m, v + 1)).toBeGreaterThan(regressionRoadLoad(m, v));
    }),
  );
});
