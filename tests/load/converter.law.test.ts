import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  converterRange,
  converterSlopes,
  couplingRatio,
  impellerSpeed,
  impellerTorque,
  kFactor,
  torqueRatio,
  turbineTorque,
  type Converter,
} from "../../src/physics/load/converter.ts";
import { type EngineLine } from "../../src/physics/load/engine.ts";
import { stallPoint } from "../../src/physics/load/stall.ts";

const converter: Converter = { scale: 1.8 };
const speed = fc.double({ min: 1, max: 700, noNaN: true });
const ratio = fc.double({ min: converterRange.low, max: converterRange.high, noNaN: true });

describe("converter", () => {
  test("is turned back from turbine torque to impeller speed over the whole range", () => {
    fc.assert(
      fc.property(speed, ratio, (wp, s) => {
        const wt = s * wp;
        const torque = turbineTorque(converter, wp, wt);
        fc.pre(torque > 0);
        expect(Math.abs(impellerSpeed(converter, torque, wt) / wp - 1)).toBeLessThan(1e-10);
      }),
      { numRuns: 2000 },
    );
  });

  test("is turned back at its two corners and at stall", () => {
    for (const s of [
      0,
      couplingRatio - 1e-9,
      couplingRatio,
      couplingRatio + 1e-9,
      0.88485,
      0.8849,
      0.88495,
      0.999,
    ])
      expect(impellerSpeed(converter, turbineTorque(converter, 300, 300 * s), 300 * s)).toBeCloseTo(300, 7);
  });

  test("the impeller's speed rises with the torque asked, without a jump", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2000, noNaN: true }), speed, (torque, wt) => {
        const low = impellerSpeed(converter, torque, wt);
        const high = impellerSpeed(converter, torque + 1e-10, wt); // near no torque at all the speed goes with its root
        expect(high).toBeGreaterThan(low - 1e-12);
        expect(high - low).toBeLessThan(2e-4);
      }),
    );
  });

  test("never makes power, never gives less than it takes, and carries nothing at equal speeds", () => {
    fc.assert(
      fc.property(speed, ratio, (wp, s) => {
        const taken = impellerTorque(converter, wp, s * wp);
        const given = turbineTorque(converter, wp, s * wp);
        expect(given).toBeGreaterThanOrEqual(taken - 1e-9);
        expect(given * s).toBeLessThanOrEqual(taken + 1e-9);
      }),
    );
    expect(impellerTorque(converter, 200, 200)).toBe(0);
    expect(turbineTorque(converter, 200, 250)).toBe(0);
    expect(Math.abs(impellerTorque(converter, 200, 200 * (1 - 1e-12)))).toBeLessThan(1e-6);
  });

  test("torques are continuous across both corners", () => {
    fc.assert(
      fc.property(fc.double({ min: -0.2, max: 1.2, noNaN: true }), (s) => {
        for (const law of [impellerTorque, turbineTorque])
          expect(Math.abs(law(converter, 300, 300 * (s + 1e-9)) - law(converter, 300, 300 * s))).toBeLessThan(
            1e-4,
          );
      }),
      { numRuns: 2000 },
    );
  });

  test("grows with the square of speed and with its scale", () => {
    fc.assert(
      fc.property(speed, ratio, (wp, s) => {
        const once = turbineTorque(converter, wp, s * wp);
        expect(turbineTorque(converter, 2 * wp, 2 * s * wp)).toBeCloseTo(4 * once, 6);
        expect(turbineTorque({ scale: 3.6 }, wp, s * wp)).toBeCloseTo(2 * once, 6);
      }),
    );
  });

  test("slopes agree with differences of torques", () => {
    const out = new Float64Array(4);
    fc.assert(
      fc.property(speed, fc.double({ min: 0.001, max: 1.1, noNaN: true }), (wp, s) => {
        fc.pre([couplingRatio, 0.8849, 1].every((corner) => Math.abs(s - corner) > 1e-3));
        const wt = s * wp;
        const h = 1e-4;
        converterSlopes(converter, wp, wt, out);
        const slope = (law: typeof impellerTorque, dp: number, dt: number) =>
          (law(converter, wp + dp, wt + dt) - law(converter, wp - dp, wt - dt)) / (2 * h);
        expect(out[0]).toBeCloseTo(slope(impellerTorque, h, 0), 5);
        expect(out[1]).toBeCloseTo(slope(impellerTorque, 0, h), 5);
        expect(out[2]).toBeCloseTo(slope(turbineTorque, h, 0), 5);
        expect(out[3]).toBeCloseTo(slope(turbineTorque, 0, h), 5);
      }),
    );
  });

  test("torque ratio falls from stall to one and stays, and the K factor rises without end", () => {
    expect(torqueRatio(-1)).toBe(torqueRatio(0));
    expect(torqueRatio(1)).toBe(1);
    expect(kFactor(converter, 0.99)).toBeGreaterThan(kFactor(converter, 0.9));
    expect(Number.isFinite(kFactor(converter, 1 - 1e-9))).toBe(true);
    expect(() => kFactor(converter, 1)).toThrow(/speedRatio/);
  });

  test("gives finite numbers for any finite speeds, and refuses others", () => {
    const any = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(any, any, (wp, wt) => {
        expect(Number.isFinite(impellerTorque(converter, wp, wt))).toBe(true);
        expect(Number.isFinite(turbineTorque(converter, wp, wt))).toBe(true);
        expect(Number.isFinite(impellerSpeed(converter, wp, wt))).toBe(true);
      }),
    );
    expect(() => impellerTorque({ scale: 0 }, 1, 1)).toThrow(/scale/);
    expect(() => turbineTorque(converter, NaN, 1)).toThrow(/impeller speed/);
    expect(() => impellerSpeed(converter, Infinity, 1)).toThrow(/turbine torque/);
  });
});

describe("stall", () => {
  const engine: EngineLine = {
    ratedPower: 2e5,
    ratedSpeed: 576,
    idleSpeed: 68,
    drag0: 15,
    drag1: 0.07,
    inertia: 0.25,
  };

  test("balances the torques, and all power is heat", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (scale, extra) => {
          const at = stallPoint(engine, { scale }, extra);
          expect(at.engineTorque - at.impellerTorque - extra).toBeCloseTo(0, 6);
          expect(at.turbineTorque / at.impellerTorque).toBeCloseTo(torqueRatio(0), 9);
          expect(at.heat).toBeCloseTo(at.impellerTorque * at.speed, 6);
        },
      ),
    );
  });

  test("a larger converter or a larger pump stalls the engine lower; too much stands it still", () => {
    expect(stallPoint(engine, { scale: 2 }, 0).speed).toBeLessThan(
      stallPoint(engine, { scale: 1.5 }, 0).speed,
    );
    expect(stallPoint(engine, { scale: 2 }, 40).speed).toBeLessThan(
      stallPoint(engine, { scale: 2 }, 0).speed,
    );
    expect(stallPoint(engine, { scale: 2 }, 1000).speed).toBe(0);
  });
});
