import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { specificEnergy } from "../../src/physics/fluid/specific-heat.ts";
import {
  coolerTakes,
  crossEffectiveness,
  crossEffectivenessShort,
  crossLargerMixed,
  crossSmallerMixed,
  effectiveness,
  parallelEffectiveness,
  transferUnits,
} from "../../src/physics/heat/cooler.ts";
import { capByFlow, filmCoefficient, flowCarries } from "../../src/physics/heat/lubrication.ts";
import { plateAfter, plateGivesUp, steadyPlate, timeToReach } from "../../src/physics/heat/plate.ts";
import { sumpTemperature } from "../../src/physics/heat/sump-heat.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("a lumped plate", () => {
  const cases = fc.tuple(
    number(250, 900),
    number(250, 450),
    number(0, 1e5),
    number(50, 5000),
    number(0, 500),
    number(0, 1000),
  );

  it("stores and hands over what was put in, to rounding, whatever the step", () =>
    fc.assert(
      fc.property(cases, ([T, fluid, power, C, G, dt]) => {
        const stored = C * (plateAfter(T, fluid, power, C, G, dt) - T);
        const given = plateGivesUp(T, fluid, power, C, G, dt);
        const scale = power * dt + Math.abs(given) + C * T;
        expect(Math.abs(stored + given - power * dt)).toBeLessThan(1e-12 * scale);
      }),
    ));

  it("reaches the same temperature in one step and in two", () =>
    fc.assert(
      fc.property(cases, number(0, 1), ([T, fluid, power, C, G, dt], share) => {
        const once = plateAfter(T, fluid, power, C, G, dt);
        const half = plateAfter(T, fluid, power, C, G, dt * share);
        expect(plateAfter(half, fluid, power, C, G, dt * (1 - share)) / once).toBeCloseTo(1, 9);
      }),
    ));

  it("settles where heating and cooling meet, and only warms without cooling", () => {
    expect(plateAfter(300, 350, 1000, 200, 20, 1e9)).toBeCloseTo(steadyPlate(350, 1000, 20) ?? NaN, 9);
    expect(steadyPlate(350, 1000, 0)).toBeUndefined();
    expect(plateAfter(300, 350, 1000, 200, 0, 3)).toBe(315);
    expect(plateGivesUp(300, 350, 1000, 200, 0, 3)).toBe(0);
    expect(plateAfter(300, 350, 1000, 200, 20, 0)).toBe(300);
  });

  it("takes the time that its own exponential needs, and never passes where it settles", () =>
    fc.assert(
      fc.property(number(280, 320), number(321, 399), (from, to) => {
        const time = timeToReach(from, to, { settles: 400, timeConstant: 10 }) ?? NaN;
        expect(plateAfter(from, 400, 0, 100, 10, time)).toBeCloseTo(to, 6);
        expect(timeToReach(from, 401, { settles: 400, timeConstant: 10 })).toBeUndefined();
        expect(timeToReach(from, from - 1, { settles: 400, timeConstant: 10 })).toBeUndefined();
        expect(timeToReach(from, from, { settles: 400, timeConstant: 10 })).toBe(0);
      }),
    ));

  it("refuses zero kelvin, no heat capacity and time that runs back", () => {
    expect(() => plateAfter(0, 300, 1, 1, 1, 1)).toThrow("temperature");
    expect(() => plateAfter(300, 300, 1, 0, 1, 1)).toThrow("heatCapacity");
    expect(() => plateAfter(300, 300, 1, 1, -1, 1)).toThrow("conductance");
    expect(() => plateGivesUp(300, 300, 1, 1, 1, -1)).toThrow("dt");
  });
});

describe("lubrication", () => {
  const lubrication = { airCoefficient: 30, fullCoefficient: 900, fullFlow: 5e-5 };

  it("cools between air and full flow, and less as flow is lost", () =>
    fc.assert(
      fc.property(number(-1e-5, 2e-4), (flow) => {
        const h = filmCoefficient(flow, lubrication);
        expect(h).toBeGreaterThanOrEqual(30);
        expect(h).toBeLessThanOrEqual(900);
        expect(filmCoefficient(flow / 2, lubrication)).toBeLessThanOrEqual(Math.max(h, 30));
      }),
    ));

  it("never carries more than its flow can, and leaves the air's share without any", () =>
    fc.assert(
      fc.property(number(0, 500), number(0, 500), (film, flow) => {
        const G = capByFlow(film, flow, 2);
        expect(G).toBeLessThanOrEqual(2 + flow);
        expect(G).toBeLessThanOrEqual(Math.max(2, film) + 1e-9);
        expect(capByFlow(film, 0, 2)).toBe(2);
        expect(flowCarries(-1, 1e6, 50)).toBe(0);
      }),
    ));
});

describe("coolers", () => {
  const cases = fc.tuple(number(0, 30), number(0, 1));

  it("lie in order: side by side, cross flow, counterflow, and below 1", () =>
    fc.assert(
      fc.property(cases, ([ntu, ratio]) => {
        const counter = effectiveness(ntu, ratio);
        expect(counter).toBeLessThanOrEqual(1 + 1e-12);
        expect(crossEffectiveness(ntu, ratio)).toBeLessThanOrEqual(counter + 1e-9);
        expect(parallelEffectiveness(ntu, ratio)).toBeLessThanOrEqual(crossEffectiveness(ntu, ratio) + 1e-9);
        expect(parallelEffectiveness(ntu, ratio)).toBeGreaterThanOrEqual(0);
        for (const law of [crossLargerMixed, crossSmallerMixed])
          expect(law(ntu, ratio)).toBeLessThanOrEqual(counter + 1e-9);
      }),
    ));

  it("agree when one stream does not change its temperature, and do nothing without surface", () =>
    fc.assert(
      fc.property(number(0, 30), (ntu) => {
        for (const law of [
          effectiveness,
          parallelEffectiveness,
          crossEffectiveness,
          crossEffectivenessShort,
          crossLargerMixed,
          crossSmallerMixed,
        ]) {
          expect(law(ntu, 0)).toBeCloseTo(-Math.expm1(-ntu), 9);
          expect(law(ntu, 1e-9)).toBeCloseTo(law(ntu, 0), 6);
          expect(law(0, 0.5)).toBe(0);
        }
      }),
    ));

  it("meet the balanced counterflow smoothly", () =>
    fc.assert(
      fc.property(number(0.01, 50), (ntu) => {
        expect(effectiveness(ntu, 1)).toBeCloseTo(ntu / (1 + ntu), 9);
        expect(effectiveness(ntu, 1 - 1e-10)).toBeCloseTo(effectiveness(ntu, 1), 6);
      }),
    ));

  it("are met by the short cross-flow form within 4 %", () =>
    fc.assert(
      fc.property(number(0.05, 10), number(0.02, 1), (ntu, ratio) => {
        const off = Math.abs(crossEffectivenessShort(ntu, ratio) / crossEffectiveness(ntu, ratio) - 1);
        expect(off).toBeLessThan(0.04);
      }),
    ));

  it("pass no more than the smaller stream can hold, nothing without flow, and stay finite", () =>
    fc.assert(
      fc.property(number(0, 2000), number(0, 2000), number(0, 1000), (hot, cold, conductance) => {
        const taken = coolerTakes(hot, cold, conductance);
        expect(taken).toBeGreaterThanOrEqual(0);
        expect(taken).toBeLessThanOrEqual(Math.min(hot, cold) * (1 + 1e-9) + 1e-300); // denormal numbers round as they like
        expect(taken).toBeLessThanOrEqual(conductance * (1 + 1e-9) + 1e-300);
        expect(coolerTakes(0, cold, conductance)).toBe(0);
        expect(coolerTakes(cold, hot, conductance)).toBe(taken);
        expect(Number.isFinite(crossEffectiveness(1e6, 1))).toBe(true);
      }),
    ));

  it("refuse ratios above 1 and no flow to count against", () => {
    expect(() => effectiveness(1, 1.1)).toThrow("ratio");
    expect(() => effectiveness(-1, 0.5)).toThrow("ntu");
    expect(() => transferUnits(10, 0)).toThrow("smallerCapacity");
  });
});

describe("the sump's temperature", () => {
  const zero = 273.15;

  it("is the inverse of its energy", () =>
    fc.assert(
      fc.property(
        number(0, 15),
        number(100, 60000),
        number(220, 500),
        number(820, 900),
        (mass, metal, T, density15) => {
          const energy = mass * specificEnergy(density15, T) + metal * (T - zero);
          expect(sumpTemperature(mass, density15, metal, energy)).toBeCloseTo(T, 7);
        },
      ),
    ));

  it("rises faster with less fluid for the same heat", () =>
    fc.assert(
      fc.property(number(1, 10), number(1e4, 2e6), (mass, energy) => {
        expect(sumpTemperature(mass / 2, 860, 30000, energy)).toBeGreaterThan(
          sumpTemperature(mass, 860, 30000, energy),
        );
        expect(sumpTemperature(mass, 860, 30000, 0)).toBe(zero);
      }),
    ));

  it("refuses nothing to warm and energies below absolute zero", () => {
    expect(() => sumpTemperature(0, 860, 0, 1)).toThrow("mass");
    expect(() => sumpTemperature(-1, 860, 30000, 1)).toThrow("mass");
    expect(() => sumpTemperature(8, 860, 30000, -1e9)).toThrow("energy");
    expect(() => sumpTemperature(8, 860, 30000, NaN)).toThrow("energy");
  });
});
