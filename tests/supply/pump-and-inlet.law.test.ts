import fc from "fast-check";
import { expect, test } from "vitest";
import {
  boreFriction,
  type Inlet,
  inletLimit,
  inletPressure,
  inletReynolds,
  vapourPressure,
} from "../../src/physics/supply/inlet.ts";
import {
  delivered,
  displaced,
  gasLeft,
  lineGas,
  type Pump,
  pumpSlip,
  pumpTorque,
} from "../../src/physics/supply/pump.ts";
import { rootBetween } from "../../src/physics/supply/root.ts";
import { suctionGasAfter } from "../../src/physics/supply/suction.ts";
import { nextTrim } from "../../src/physics/supply/trim.ts";
import { between, decades } from "../between.ts";

const pump: Pump = { displacement: 20e-6, slip: 5e-8, dissolved: 0.3, exponent: 1.2, mechanical: 0.85 };
const inlets = fc.record<Inlet>({
  head: between(-0.2, 2),
  bore: between(0.008, 0.04),
  length: between(0, 0.6),
  minorLoss: between(0, 6),
  filter: fc.oneof(fc.constant(0), decades(7, 11)),
});

test("delivery falls with pressure and with gas, and is displacement when nothing slips", () => {
  fc.assert(
    fc.property(between(10, 600), between(0, 1), between(0, 2e6), between(0, 1e6), (turn, gas, p, more) => {
      const at = (pressure: number, x: number) =>
        delivered(pump, turn, x, gasLeft(pump, 95e3, pressure), pressure, 0.007);
      expect(at(p + more, gas)).toBeLessThanOrEqual(at(p, gas));
      expect(at(p, gas)).toBeLessThanOrEqual(at(p, 0) + 1e-18);
    }),
  );
  const tight = { ...pump, slip: 0 };
  expect(delivered(tight, 73, 0, 1, 1e6, 0.007)).toBe(displaced(tight, 73));
  expect(pumpSlip(pump, 0, 0.007)).toBe(0);
  expect(() => pumpSlip(pump, 1e5, 0)).toThrow();
});

test("gas that is left lies between none and all, and dissolved gas leaves liquid", () => {
  fc.assert(
    fc.property(
      between(0, 1.01e5),
      between(0, 2e6),
      between(0, 1),
      between(1, 1.4),
      between(0, 1),
      (inlet, p, dissolved, k, x) => {
        const left = gasLeft({ ...pump, dissolved, exponent: k }, inlet, p);
        expect(left).toBeGreaterThanOrEqual(0);
        expect(left).toBeLessThanOrEqual(1);
        const share = lineGas(x, left);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(x);
      },
    ),
  );
  expect(gasLeft({ ...pump, dissolved: 1 }, 9e4, 5e5)).toBe(0);
  expect(lineGas(1, 0)).toBe(0);
  expect(lineGas(1, 0.2)).toBe(1);
});

test("pump work is pressure times displaced volume over efficiency", () => {
  expect(pumpTorque(pump, 1e6) * 2 * Math.PI * 0.85).toBeCloseTo(20, 12);
  expect(() => pumpTorque({ ...pump, mechanical: 0 }, 1e6)).toThrow();
});

test("friction is continuous where the flow turns, and what it costs always rises", () => {
  for (const joint of [2300, 4000])
    expect(boreFriction(joint * (1 + 1e-12)) / boreFriction(joint * (1 - 1e-12))).toBeCloseTo(1, 9);
  fc.assert(
    fc.property(inlets, decades(-7, -2.3), decades(-3.3, 1), between(1.0001, 1.5), (inlet, q, mu, factor) => {
      expect(inletPressure(inlet, q * factor, mu, 830)).toBeLessThanOrEqual(inletPressure(inlet, q, mu, 830));
    }),
  );
});

test("the largest flow that can be drawn leaves just the vapour pressure, in all three friction zones", () => {
  const zones = new Set<number>();
  fc.assert(
    fc.property(inlets, decades(-3.3, 1), between(780, 900), (inlet, viscosity, density) => {
      const most = inletLimit(inlet, viscosity, density);
      const reynolds = inletReynolds(inlet, most, viscosity, density);
      zones.add(reynolds < 2300 ? 1 : reynolds < 4000 ? 2 : 3);
      expect(inletPressure(inlet, most, viscosity, density)).toBeCloseTo(vapourPressure, 4);
    }),
    { numRuns: 3000 },
  );
  expect(zones.size).toBe(3);
  const deep: Inlet = { head: 20, bore: 0.02, length: 0.1, minorLoss: 1, filter: 0 };
  expect(inletLimit(deep, 0.007, 830)).toBe(0);
  expect(inletPressure(deep, 1e-4, 0.007, 830)).toBe(0);
  expect(() => inletPressure({ ...deep, bore: 0 }, 1e-4, 0.007, 830)).toThrow();
  expect(() => inletPressure(deep, NaN, 0.007, 830)).toThrow();
});

test("the suction passage forgets exponentially: two steps make one, and an empty passage forgets at once", () => {
  fc.assert(
    fc.property(
      between(0, 1),
      between(0, 1),
      between(0, 1e-3),
      between(0, 5),
      between(0, 5),
      (x, pickup, flow, a, b) => {
        const once = suctionGasAfter(x, pickup, flow, 1.5e-4, a + b);
        const twice = suctionGasAfter(suctionGasAfter(x, pickup, flow, 1.5e-4, a), pickup, flow, 1.5e-4, b);
        expect(Math.abs(once - twice)).toBeLessThan(1e-14);
      },
    ),
  );
  expect(suctionGasAfter(0.1, 0.7, 1e-4, 0, 1)).toBe(0.7);
  expect(suctionGasAfter(0.1, 0.7, 0, 1e-4, 1)).toBe(0.1);
  expect(() => suctionGasAfter(0.1, 0.7, 1e-4, -1, 1)).toThrow();
});

test("the learned trim climbs while shifts are slow and stops at its limit", () => {
  expect(nextTrim(1e4, 0.6, 0.5, 5e4, 1e5)).toBeCloseTo(2e4, 8);
  expect(nextTrim(9.9e4, 5, 0.5, 5e4, 1e5)).toBe(1e5);
  expect(nextTrim(-9.9e4, 0, 0.5, 5e4, 1e5)).toBe(-1e5);
  expect(() => nextTrim(0, 1, 0, 1, 1)).toThrow();
});

test("the root finder brackets roots of any shape, and gives an end when there is none", () => {
  fc.assert(
    fc.property(between(-8, 8), fc.integer({ min: 1, max: 9 }), decades(-6, 6), (root, power, scale) => {
      const f = (x: number, at: { root: number }) =>
        scale * Math.sign(x - at.root) * Math.abs(x - at.root) ** power;
      // A flat root of high order hides within its own rounding: 10^(-320/power).
      const found = rootBetween(f, { root }, -10, 10);
      expect(Math.abs(found - root)).toBeLessThan(1e-13);
    }),
  );
  expect(rootBetween((x) => x - 20, null, -10, 10)).toBe(10);
  expect(rootBetween((x) => x, null, 0, 10)).toBe(0);
  expect(rootBetween((x) => (x < 3 ? -1 : 1), null, 0, 10)).toBeCloseTo(3, 12);
});
