import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  fallingFluxRise,
  peakInterfaceRise,
  semiInfiniteRise,
  surfaceStepRise,
} from "../../src/physics/heat/conduction.ts";
import { slabConvection, slabRoot } from "../../src/physics/heat/convection.ts";
import { erfc, ierfc } from "../../src/physics/heat/error-function.ts";
import { movingBandRise, peclet, stillSpotMean, stillSpotPeak } from "../../src/physics/heat/flash.ts";
import { interfaceRise } from "../../src/physics/heat/interface.ts";
import { steelShare } from "../../src/physics/heat/partition.ts";
import { lumpedRise, slabRise } from "../../src/physics/heat/slab.ts";
import { effusivity, separatorSteel as steel, solid, wetPaper } from "../../src/physics/heat/solid.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const thickness = 0.0018;
const heated = { thickness, flux: 1e6 };
const timeAt = (fourier: number) => (fourier * (thickness / 2) ** 2) / steel.diffusivity;

describe("the error functions", () => {
  it("join without a step where series and fraction meet", () => {
    expect(erfc(2 - 1e-12) / erfc(2 + 1e-12) - 1).toBeLessThan(1e-10);
    expect(ierfc(2 - 1e-9) / ierfc(2 + 1e-9) - 1).toBeLessThan(1e-7);
  });

  it("mirror, fall, and are each other's slope", () =>
    fc.assert(
      fc.property(number(-6, 26), (z) => {
        expect(erfc(z) + erfc(-z)).toBeCloseTo(2, 12);
        expect(erfc(z + 0.01)).toBeLessThanOrEqual(erfc(z));
        expect(ierfc(z)).toBeGreaterThanOrEqual(0);
        const h = 1e-4;
        expect((ierfc(z - h) - ierfc(z + h)) / (2 * h)).toBeCloseTo(erfc(z), 6);
      }),
    ));
});

describe("a thick body", () => {
  it("starts cold, warms from the surface in, and never runs ahead of it", () =>
    fc.assert(
      fc.property(number(0, 100), number(0, 0.2), (time, depth) => {
        const surface = semiInfiniteRise(steel, 1e5, time, 0);
        const inside = semiInfiniteRise(steel, 1e5, time, depth);
        expect(inside).toBeGreaterThanOrEqual(0);
        expect(inside).toBeLessThanOrEqual(surface);
        expect(semiInfiniteRise(steel, 1e5, 0, depth)).toBe(0);
        expect(surfaceStepRise(steel, 100, time, depth)).toBeLessThanOrEqual(100);
      }),
    ));

  it("is hottest halfway through a shift, hotter for a shorter shift of equal energy, and cools after", () =>
    fc.assert(
      fc.property(number(0.05, 2), number(0, 3), (stop, share) => {
        const peak = peakInterfaceRise(steel, 1e6, stop);
        expect(fallingFluxRise(steel, 1e6, stop, share * stop)).toBeLessThanOrEqual(peak * (1 + 1e-12));
        expect(peak).toBeCloseTo(
          (0.53192304 * 1e6 * Math.sqrt(steel.diffusivity * stop)) / steel.conductivity,
          4,
        );
        expect(peakInterfaceRise(steel, 2e6, stop / 2)).toBeGreaterThan(peak);
        expect(fallingFluxRise(steel, 1e6, stop, 3 * stop)).toBeLessThan(
          fallingFluxRise(steel, 1e6, stop, stop),
        );
      }),
    ));

  it("takes most of the heat when it is steel against paper, and half against itself", () => {
    expect(steelShare(steel, wetPaper)).toBeGreaterThan(0.9);
    expect(steelShare(steel, steel)).toBe(0.5);
    expect(effusivity(solid(46, 7850, 480))).toBeCloseTo(13165.4, 1);
  });
});

describe("a plate heated on both faces", () => {
  it("is a thick body before Fo 0.05, and lumped plus qL/3k after Fo 0.5", () => {
    const early = timeAt(0.05);
    expect(
      slabRise(steel, heated, early, thickness / 2) / semiInfiniteRise(steel, 1e6, early, 0),
    ).toBeCloseTo(1, 3);
    const late = timeAt(1);
    const settled =
      lumpedRise(steel, thickness, 1e6, late) + (1e6 * thickness) / 2 / (3 * steel.conductivity);
    expect(slabRise(steel, heated, late, thickness / 2) / settled).toBeCloseTo(1, 3);
  });

  it("keeps the heat that it took: its mean is the lumped rise", () =>
    fc.assert(
      fc.property(number(0.001, 2), (fourier) => {
        const t = timeAt(fourier);
        const n = 400;
        let mean = 0;
        for (let i = 0; i < n; i++) mean += slabRise(steel, heated, t, ((i + 0.5) / n) * (thickness / 2)) / n;
        expect(mean / lumpedRise(steel, thickness, 1e6, t)).toBeCloseTo(1, 3);
      }),
      { numRuns: 40 },
    ));

  it("has a surface that runs ahead of the mean as the slab series says, without a step at the join", () =>
    fc.assert(
      fc.property(number(0, 6), (fourier) => {
        const t = timeAt(fourier);
        const ahead = slabRise(steel, heated, t, thickness / 2) - lumpedRise(steel, thickness, 1e6, t);
        expect(interfaceRise(1e6, t, thickness)).toBeCloseTo(ahead, 9);
        expect(interfaceRise(1e6, t, thickness)).toBeLessThanOrEqual(
          interfaceRise(1e6, t + timeAt(0.01), thickness) + 1e-12,
        );
      }),
    ));

  it("joins both forms at Fo 0.2 and 4", () => {
    for (const fourier of [0.2, 4]) {
      const below = interfaceRise(1e6, timeAt(fourier * (1 - 1e-12)), thickness);
      const above = interfaceRise(1e6, timeAt(fourier * (1 + 1e-12)), thickness);
      expect(Math.abs(above - below)).toBeLessThan(1e-9);
    }
    expect(interfaceRise(1e6, 0, thickness)).toBe(0);
    expect(interfaceRise(0, 1, thickness)).toBe(0);
    expect(interfaceRise(1e6, 1e9, thickness)).toBeCloseTo((1e6 * 0.0009) / (3 * 46), 9);
  });

  it("refuses places outside itself and no thickness", () => {
    expect(() => slabRise(steel, heated, 1, 0.001)).toThrow("fromMiddle");
    expect(() => interfaceRise(1e6, 1, 0)).toThrow("thickness");
    expect(() => interfaceRise(1e6, -1, 0.001)).toThrow("duration");
    expect(() => solid(0, 1, 1)).toThrow("conductivity");
  });
});

describe("a slab that cools", () => {
  it("goes from 1 to nothing, faster at its face", () =>
    fc.assert(
      fc.property(number(0.01, 100), number(1e-4, 20), number(0, 1), (biot, fourier, place) => {
        const left = slabConvection(biot, fourier, place);
        expect(left).toBeLessThanOrEqual(1 + 1e-6);
        expect(left).toBeGreaterThanOrEqual(-1e-6);
        expect(slabConvection(biot, fourier, 1)).toBeLessThanOrEqual(slabConvection(biot, fourier, 0) + 1e-6);
      }),
      { numRuns: 60 },
    ));

  it("solves zeta tan zeta = Bi, one root in each interval", () =>
    fc.assert(
      fc.property(number(0.001, 1000), fc.integer({ min: 0, max: 20 }), (biot, n) => {
        const z = slabRoot(biot, n);
        expect(Math.abs(z * Math.sin(z) - biot * Math.cos(z)) / (z + biot)).toBeLessThan(1e-9);
        expect(z).toBeGreaterThan(n * Math.PI);
        expect(z).toBeLessThan(n * Math.PI + Math.PI / 2);
      }),
    ));

  it("is the lumped body for a small Biot number", () => {
    expect(slabConvection(0.01, 50, 0.5)).toBeCloseTo(Math.exp(-0.5), 2);
  });
});

describe("flash rises", () => {
  it("fall with speed and grow with the spot", () => {
    expect(movingBandRise(steel, 1e9, { length: 1e-4, speed: 40 })).toBeCloseTo(
      movingBandRise(steel, 1e9, { length: 1e-4, speed: 10 }) / 2,
      9,
    );
    expect(stillSpotMean(steel, 1e8, 2e-5)).toBeLessThan(stillSpotPeak(steel, 1e8, 2e-5));
    expect(peclet(steel, 1e-4, 10)).toBeCloseTo(20.478, 3);
    expect(() => movingBandRise(steel, 1, { length: 1, speed: 0 })).toThrow("speed");
  });
});
