import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isCoded } from "../../src/errors.ts";
import { dynamicViscosity } from "../../src/physics/fluid/fluid.ts";
import { barus, pressureCoefficient, pressureRange, roelands } from "../../src/physics/fluid/pressure.ts";
import {
  kinematicViscosity,
  viscosityLine,
  viscosityRange,
  viscosityTemperatureRange,
  waltherInverse,
  waltherRange,
  waltherZ,
} from "../../src/physics/fluid/viscosity.ts";
import {
  referenceOils,
  viscosityIndex,
  viscosityIndexRange,
} from "../../src/physics/fluid/viscosity-index.ts";

const at = (celsius: number, mm2: number) => ({ temperature: celsius + 273.15, kinematic: mm2 * 1e-6 });
const conventional = viscosityLine([at(40, 35), at(100, 7.3)]);
const refused = (work: () => unknown) => {
  try {
    work();
  } catch (error) {
    return isCoded(error) && error.code === "impossible-input";
  }
  return false;
};

/** Two or three points of a fluid that thins as it warms. */
const points = fc
  .record({
    hot: fc.double({ min: 1, max: 20, noNaN: true }),
    warmer: fc.double({ min: 1.5, max: 20, noNaN: true }),
    colder: fc.double({ min: 2, max: 500, noNaN: true }),
    three: fc.boolean(),
  })
  .map(({ hot, warmer, colder, three }) => {
    const two = [at(100, hot), at(40, hot * warmer)];
    return three ? [...two, at(-20, hot * warmer * colder)] : two;
  });

describe("viscosity line", () => {
  it("passes through every point that made it, in any order", () => {
    fc.assert(
      fc.property(points, (given) => {
        const line = viscosityLine([...given].reverse());
        for (const { temperature, kinematic } of given)
          expect(kinematicViscosity(line, temperature) / kinematic).toBeCloseTo(1, 9);
      }),
    );
  });

  it("falls with temperature, all the way", () => {
    const temperature = fc.double({ min: 150, max: 900, noNaN: true });
    fc.assert(
      fc.property(points, temperature, temperature, (given, T1, T2) => {
        const line = viscosityLine(given);
        const [cold, hot] = T1 < T2 ? [T1, T2] : [T2, T1];
        expect(kinematicViscosity(line, cold)).toBeGreaterThanOrEqual(kinematicViscosity(line, hot));
      }),
    );
  });

  it("stays finite and positive from almost nothing to the temperature of a star", () => {
    for (const T of [1e-300, 1, 77, 253.15, 423.15, 6000, 1e300]) {
      const nu = kinematicViscosity(conventional, T);
      expect(Number.isFinite(nu) && nu > 0.29e-6).toBe(true);
    }
  });

  it("gives viscosities within its own range at the edges of its temperatures", () => {
    const { low, high } = viscosityTemperatureRange;
    expect(kinematicViscosity(conventional, low)).toBeLessThan(viscosityRange.high);
    expect(kinematicViscosity(conventional, high)).toBeGreaterThan(viscosityRange.low);
  });

  it("with a cold point is thicker below the knee and unchanged above it", () => {
    const known = viscosityLine([at(40, 35), at(100, 7.3), at(-40, 12_000)]);
    expect(kinematicViscosity(known, 253.15)).toBeGreaterThan(kinematicViscosity(conventional, 253.15));
    expect(kinematicViscosity(known, 363.15)).toBe(kinematicViscosity(conventional, 363.15));
  });

  it("refuses points that no fluid has", () => {
    expect(refused(() => viscosityLine([at(40, 35)]))).toBe(true);
    expect(refused(() => viscosityLine([at(40, 7), at(100, 35)]))).toBe(true);
    expect(refused(() => viscosityLine([at(40, 35), at(40, 35)]))).toBe(true);
    expect(refused(() => viscosityLine([at(40, NaN), at(100, 7)]))).toBe(true);
    expect(refused(() => viscosityLine([at(-300, 35), at(100, 7)]))).toBe(true);
    expect(refused(() => kinematicViscosity(conventional, 0))).toBe(true);
    expect(refused(() => kinematicViscosity(conventional, NaN))).toBe(true);
  });
});

describe("three-term form", () => {
  it("returns to where it came from within 0.03 %", () => {
    fc.assert(
      fc.property(fc.double({ min: waltherRange.low, max: 1000, noNaN: true }), (nu) => {
        expect(Math.abs(waltherInverse(waltherZ(nu)) / nu - 1)).toBeLessThan(5e-4);
      }),
    );
  });

  it("is the simple form from 2 mm²/s up", () => {
    expect(waltherZ(2) / 2.7).toBeCloseTo(1, 3);
    expect(waltherZ(waltherRange.high)).toBe(waltherRange.high + 0.7);
    expect(Number.isFinite(waltherInverse(1e200))).toBe(true);
  });
});

describe("viscosity index", () => {
  it("is 0 and 100 for the two reference oils, wherever they are", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: viscosityIndexRange.high, noNaN: true }), (kv100) => {
        const { zero, hundred } = referenceOils(kv100);
        expect(viscosityIndex(zero, kv100)).toBeCloseTo(0, 6);
        expect(viscosityIndex(hundred, kv100)).toBeCloseTo(100, 6);
        expect(zero).toBeGreaterThan(hundred);
      }),
    );
  });

  it("rises as the fluid thins less", () => {
    expect(viscosityIndex(30, 7.3)).toBeGreaterThan(viscosityIndex(35, 7.3));
    expect(viscosityIndex(80, 7.3)).toBeGreaterThan(viscosityIndex(90, 7.3));
  });

  it("joins its pieces within a fifth of a percent", () => {
    for (const Y of [3.8, 4.4, 5, 6.4, 7, 7.7, 9, 12, 15, 18, 22, 28, 40, 55, 70]) {
      const [below, above] = [referenceOils(Y * (1 - 1e-9)), referenceOils(Y)];
      expect(Math.abs(below.zero / above.zero - 1)).toBeLessThan(2e-3);
      expect(Math.abs(below.hundred / above.hundred - 1)).toBeLessThan(2e-3);
    }
  });

  it("is not defined below 2 mm²/s, nor for a fluid that thickens as it warms", () => {
    expect(refused(() => viscosityIndex(5, 1.9))).toBe(true);
    expect(refused(() => viscosityIndex(5, 6))).toBe(true);
  });
});

describe("viscosity under pressure", () => {
  it("is unchanged at no pressure, and Roelands equals Barus where both begin", () => {
    expect(barus(0.01, 2e-8, 0)).toBe(0.01);
    expect(roelands(0.01, 2e-8, 0)).toBe(0.01);
    expect(roelands(0.01, 2e-8, 1e4) / barus(0.01, 2e-8, 1e4)).toBeCloseTo(1, 7);
    expect(roelands(0.01, 2e-8, pressureRange.high)).toBeLessThan(barus(0.01, 2e-8, pressureRange.high));
  });

  it("stays finite at any pressure", () => {
    for (const p of [pressureRange.low, pressureRange.high, 1e12, 1e300]) {
      expect(Number.isFinite(barus(0.01, 2e-8, p))).toBe(true);
      expect(Number.isFinite(roelands(0.01, 2e-8, p))).toBe(true);
    }
    expect(refused(() => roelands(5e-5, 2e-8, 1e6))).toBe(true);
    expect(pressureCoefficient(1e-6)).toBeCloseTo(9.904e-9, 15);
  });
});

describe("dynamic viscosity", () => {
  const fluid = { viscosity: conventional, density15: 860, shearLoss: 0.15 };

  it("loses its shear share as its life is used up, and no more after that", () => {
    const fresh = dynamicViscosity(fluid, 363.15, 0);
    expect(dynamicViscosity(fluid, 363.15, 1) / fresh).toBeCloseTo(0.85, 12);
    expect(dynamicViscosity(fluid, 363.15, 0.5) / fresh).toBeCloseTo(0.925, 12);
    expect(dynamicViscosity(fluid, 363.15, 7)).toBe(dynamicViscosity(fluid, 363.15, 1));
  });

  it("refuses a negative age and a fluid that would lose itself", () => {
    expect(refused(() => dynamicViscosity(fluid, 363.15, -0.1))).toBe(true);
    expect(refused(() => dynamicViscosity({ ...fluid, shearLoss: 1 }, 363.15, 0))).toBe(true);
  });
});
