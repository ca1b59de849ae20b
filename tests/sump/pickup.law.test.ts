import fc from "fast-check";
import { expect, test } from "vitest";
import {
  airOnset,
  gasFraction,
  isCovered,
  type Pickup,
  sideOnsetFlow,
  weirDepth,
  weirFlow,
} from "../../src/physics/sump/pickup.ts";
import { between } from "../between.ts";

const pickup: Pickup = { x: 0.2, y: 0.15, height: 0.01, rim: 0.19, baseGas: 0.01, weirGas: 0.05 };
const flows = between(1e-6, 2e-3);

test("gas falls as the mouth is better covered, from all gas to the ordinary air", () => {
  fc.assert(
    fc.property(flows, between(0, 0.2), between(0, 0.01), (flow, depth, more) => {
      const here = gasFraction(pickup, depth, flow);
      expect(here).toBeLessThanOrEqual(1);
      expect(here).toBeGreaterThanOrEqual(pickup.baseGas);
      expect(gasFraction(pickup, depth + more, flow)).toBeLessThanOrEqual(here + 1e-15);
    }),
  );
  expect(gasFraction(pickup, 0, 3e-4)).toBe(1);
  expect(gasFraction(pickup, -0.02, 3e-4)).toBe(1);
  expect(gasFraction(pickup, 1, 3e-4)).toBe(pickup.baseGas);
});

test("more flow never draws less gas", () => {
  fc.assert(
    fc.property(flows, between(1, 3), between(0, 0.1), (flow, factor, depth) => {
      expect(gasFraction(pickup, depth, flow * factor)).toBeGreaterThanOrEqual(
        gasFraction(pickup, depth, flow) - 1e-15,
      );
    }),
  );
});

test("a mouth is covered exactly where it draws no more than the ordinary air", () => {
  fc.assert(
    fc.property(flows, between(-0.01, 0.1), between(0.005, 2), (flow, depth, rim) => {
      const mouth = { ...pickup, rim };
      const top = Math.max(airOnset(flow), 1.05 * weirDepth(rim, flow));
      if (Math.abs(depth - top) < 1e-12) return; // two roundings of one joint
      expect(isCovered(mouth, depth, flow)).toBe(gasFraction(mouth, depth, flow) === mouth.baseGas);
    }),
  );
});

test("the law is continuous at both of its joints, for small and large rims", () => {
  fc.assert(
    fc.property(flows, between(0.005, 2), (flow, rim) => {
      const mouth = { ...pickup, rim };
      const full = weirDepth(rim, flow);
      for (const joint of [full, Math.max(airOnset(flow), 1.05 * full)]) {
        const step = 1e-9 * joint;
        const jump = gasFraction(mouth, joint - step, flow) - gasFraction(mouth, joint + step, flow);
        expect(Math.abs(jump)).toBeLessThan(1e-7);
      }
    }),
  );
});

test("below the weir depth the liquid delivered depends on the level alone", () => {
  fc.assert(
    fc.property(flows, between(1, 10), between(0.01, 0.99), (flow, factor, share) => {
      const depth = share * weirDepth(pickup.rim, flow);
      const liquid = (q: number) => q * (1 - gasFraction(pickup, depth, q));
      expect(liquid(flow * factor) / liquid(flow)).toBeCloseTo(1, 10);
    }),
  );
});

test("weir depth and weir flow are each other's inverse, and nothing flows over a bare rim", () => {
  fc.assert(
    fc.property(flows, between(0.01, 1), (flow, rim) => {
      expect(weirFlow(rim, weirDepth(rim, flow)) / flow).toBeCloseTo(1, 12);
    }),
  );
  expect(weirFlow(0.2, 0)).toBe(0);
  expect(weirFlow(0.2, -1)).toBe(0);
  expect(airOnset(0)).toBe(0);
  expect(gasFraction(pickup, 0.001, 0)).toBe(pickup.baseGas);
});

test("onset over a sink and beside a wall agree within half a per cent", () => {
  fc.assert(
    fc.property(flows, (flow) => {
      expect(sideOnsetFlow(airOnset(flow)) / flow).toBeGreaterThan(0.99);
      expect(sideOnsetFlow(airOnset(flow)) / flow).toBeLessThan(1.01);
    }),
  );
});

test("numbers that no pickup has are refused", () => {
  expect(() => gasFraction(pickup, NaN, 1e-4)).toThrow();
  expect(() => gasFraction(pickup, 0.02, NaN)).toThrow();
  expect(() => gasFraction({ ...pickup, rim: 0 }, 0.02, 1e-4)).toThrow();
});
