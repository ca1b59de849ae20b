import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isCoded } from "../../src/errors.ts";
import {
  aeratedDensity,
  aeratedRange,
  aeratedViscosity,
  bulkModulus,
  gasFractionAt,
  soundSpeed,
} from "../../src/physics/fluid/aerated.ts";
import { ageAfterTopUp, fluidAgeingRange, fluidAgeingRate } from "../../src/physics/fluid/ageing.ts";
import { density, densityRange, volumeCorrection } from "../../src/physics/fluid/density.ts";
import {
  dissolvedExcess,
  dissolvedVolume,
  dissolvingPressure,
  excessFraction,
  releasedShare,
  solubilityRange,
} from "../../src/physics/fluid/solubility.ts";
import {
  specificEnergy,
  specificHeat,
  specificHeatRange,
  thermalConductivity,
} from "../../src/physics/fluid/specific-heat.ts";
import {
  apiSurfaceTension,
  surfaceTension,
  surfaceTensionRange,
} from "../../src/physics/fluid/surface-tension.ts";
import { atmosphere } from "../../src/physics/fluid/surroundings.ts";

const temperature = fc.double({ min: 230, max: 470, noNaN: true });
const refused = (work: () => unknown) => {
  try {
    work();
  } catch (error) {
    return isCoded(error) && error.code === "impossible-input";
  }
  return false;
};

describe("density", () => {
  it("is the data-sheet value at 15 degC, exactly, and falls with temperature", () => {
    expect(density(860, 288.15)).toBe(860);
    fc.assert(
      fc.property(temperature, (T) => {
        expect(density(860, T + 1)).toBeLessThan(density(860, T));
      }),
    );
  });

  it("keeps the mass: density and volume go opposite ways", () => {
    fc.assert(
      fc.property(temperature, (T) => {
        expect(density(845, T) / volumeCorrection(845, T)).toBeCloseTo(845, 9);
      }),
    );
  });

  it("is positive at the edges of its range, and refuses what cannot be", () => {
    for (const T of [densityRange.low, densityRange.high]) expect(density(860, T)).toBeGreaterThan(700);
    for (const T of [0, -5, NaN, Infinity]) expect(refused(() => density(860, T))).toBe(true);
    expect(refused(() => density(0, 300))).toBe(true);
  });
});

describe("heat", () => {
  it("content is the integral of capacity: zero at 0 degC, its slope the capacity", () => {
    expect(specificEnergy(860, 273.15)).toBe(0);
    fc.assert(
      fc.property(temperature, (T) => {
        const slope = (specificEnergy(860, T + 0.5) - specificEnergy(860, T - 0.5)) / 1;
        expect(slope / specificHeat(860, T)).toBeCloseTo(1, 9);
      }),
    );
  });

  it("capacity and conductivity stay positive at the edges", () => {
    for (const T of [specificHeatRange.low, specificHeatRange.high, 1, 5000]) {
      expect(specificHeat(860, T)).toBeGreaterThan(0);
      expect(thermalConductivity(860, T)).toBeGreaterThanOrEqual(0);
    }
    expect(refused(() => specificHeat(-1, 300))).toBe(true);
    expect(refused(() => specificEnergy(860, 0))).toBe(true);
  });
});

describe("surface tension", () => {
  it("falls with temperature to nothing, and never below", () => {
    expect(surfaceTension(surfaceTensionRange.low)).toBeGreaterThan(surfaceTension(surfaceTensionRange.high));
    expect(surfaceTension(3000)).toBe(0);
    expect(apiSurfaceTension(850, 850, 12)).toBe(0);
    expect(apiSurfaceTension(849, 850, 12)).toBeGreaterThan(0);
    expect(refused(() => apiSurfaceTension(300, 850, 0))).toBe(true);
  });
});

describe("oil with air in it", () => {
  const gas = fc.double({ min: 0, max: 1, noNaN: true });
  const pressure = fc.double({ min: 1e3, max: 3e6, noNaN: true });

  it("without gas is oil, and all gas is gas", () => {
    expect(bulkModulus(1.5e9, 0, 2e5, 1)).toBeCloseTo(1.5e9, 0);
    expect(bulkModulus(1.5e9, 1, 2e5, 1.4)).toBeCloseTo(2.8e5, 6);
    expect(gasFractionAt(0, 2e5, 1)).toBe(0);
    expect(gasFractionAt(1, 2e5, 1)).toBe(1);
    expect(aeratedViscosity(0.01, 0)).toBe(0.01);
  });

  it("has at one atmosphere the fraction it was given", () => {
    fc.assert(
      fc.property(gas, (x) => {
        expect(gasFractionAt(x, atmosphere, 1.4)).toBeCloseTo(x, 12);
      }),
    );
  });

  it("stiffens with pressure, and its modulus is the slope of its volume", () => {
    const volume = (p: number) => 0.95 * Math.exp((atmosphere - p) / 1.5e9) + 0.05 * (atmosphere / p);
    fc.assert(
      fc.property(pressure, (p) => {
        const step = p * 1e-4;
        const slope = (volume(p - step) - volume(p + step)) / (2 * step);
        expect(bulkModulus(1.5e9, 0.05, p, 1) / (volume(p) / slope)).toBeCloseTo(1, 6);
        expect(bulkModulus(1.5e9, 0.05, p + step, 1)).toBeGreaterThan(bulkModulus(1.5e9, 0.05, p, 1));
      }),
    );
  });

  it("stays finite near vacuum and at the edges of its range", () => {
    for (const x of [aeratedRange.low, aeratedRange.high])
      for (const p of [5e-324, 1, 1e12]) {
        expect(Number.isFinite(bulkModulus(1.5e9, x, p, 1.4))).toBe(true);
        expect(gasFractionAt(x, p, 1)).toBeLessThanOrEqual(1);
      }
  });

  it("carries sound as each of its parts at the ends, and slower than both between", () => {
    const mixture = { liquidModulus: 1.5e9, liquidDensity: 850, gasModulus: 1.4e5, gasDensity: 1.2 };
    expect(soundSpeed({ ...mixture, gas: 0 })).toBeCloseTo(Math.sqrt(1.5e9 / 850), 6);
    expect(soundSpeed({ ...mixture, gas: 1 })).toBeCloseTo(Math.sqrt(1.4e5 / 1.2), 6);
    expect(soundSpeed({ ...mixture, gas: 0.5 })).toBeLessThan(soundSpeed({ ...mixture, gas: 1 }));
  });

  it("is thickened by bubbles between Taylor's mobile and Einstein's rigid ones, and made lighter", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: aeratedRange.high, noNaN: true }), (x) => {
        expect(aeratedViscosity(1, x)).toBeGreaterThan(1 + x);
        expect(aeratedViscosity(1, x)).toBeLessThan(1 + 2.5 * x);
        expect(aeratedDensity(x, 850, 1.2)).toBeLessThan(850);
      }),
    );
  });
});

describe("dissolved air", () => {
  it("none comes out at one atmosphere, all of it at vacuum", () => {
    expect(dissolvedExcess(0.09, atmosphere)).toBe(0);
    expect(dissolvedExcess(0.09, 3 * atmosphere)).toBe(0);
    expect(dissolvedExcess(0.09, 0)).toBeCloseTo(dissolvedVolume(0.09, atmosphere), 15);
    expect(excessFraction(0.09, solubilityRange.high, 300)).toBe(0);
  });

  it("what is given up and what stays are what was there", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: atmosphere, noNaN: true }), (p) => {
        expect(dissolvedExcess(0.09, p) + dissolvedVolume(0.09, p)).toBeCloseTo(0.09, 12);
      }),
    );
  });

  it("takes in a free fraction at the pressure at which it holds that much more", () => {
    const p = dissolvingPressure(0.09, 0.02);
    expect(dissolvedVolume(0.09, p) - dissolvedVolume(0.09, atmosphere)).toBeCloseTo(0.02 / 0.98, 12);
  });

  it("comes out at first not at all, in the end altogether", () => {
    expect(releasedShare(0, 2)).toBe(0);
    expect(releasedShare(2, 2)).toBeCloseTo(1 - Math.exp(-1), 12);
    expect(releasedShare(1e9, 2)).toBe(1);
  });
});

describe("ageing", () => {
  it("doubles each 20 degF", () => {
    fc.assert(
      fc.property(temperature, (T) => {
        expect(fluidAgeingRate(T + 20 / 1.8) / fluidAgeingRate(T)).toBeCloseTo(2, 9);
      }),
    );
  });

  it("stays finite and positive, at the edges of its table and far from them", () => {
    for (const T of [1, fluidAgeingRange.low, fluidAgeingRange.high, 1e5, 1e300]) {
      expect(fluidAgeingRate(T)).toBeGreaterThan(0);
      expect(Number.isFinite(fluidAgeingRate(T))).toBe(true);
    }
  });

  it("is diluted by fresh fluid, by mass", () => {
    expect(ageAfterTopUp(0.6, 6, 2)).toBeCloseTo(0.45, 12);
    expect(ageAfterTopUp(0.6, 6, 0)).toBe(0.6);
    expect(ageAfterTopUp(0.6, 0, 0)).toBe(0);
    expect(refused(() => ageAfterTopUp(-1, 6, 1))).toBe(true);
  });
});
