import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cubicFullTorque, cubicFullTorqueRange } from "../../src/physics/load/engine-cubic.ts";
import {
  closedTorque,
  engineSlope,
  engineTorque,
  fullTorque,
  fullTorqueRange,
  pedalFor,
  type EngineLine,
} from "../../src/physics/load/engine.ts";

const rpm = Math.PI / 30;
const engine: EngineLine = {
  ratedPower: 200e3,
  ratedSpeed: 5500 * rpm,
  idleSpeed: 650 * rpm,
  drag0: 15,
  drag1: 0.07,
  inertia: 0.25,
};
const span = engine.ratedSpeed - engine.idleSpeed;
const anySpeed = fc.double({ min: -100, max: 1200, noNaN: true });
const pedal = fc.double({ min: 0, max: 1, noNaN: true });

describe("full-load torque", () => {
  test("gives the tabled power at every tabled speed", () => {
    const rows = readFileSync("reference-data/petrol-full-load/curve.csv", "utf8")
      .trim()
      .split("\n")
      .slice(1);
    expect(rows).toHaveLength(13);
    for (const row of rows) {
      const [x, p] = row.split(",").map(Number);
      const w = engine.idleSpeed + x * span;
      expect(fullTorque(engine, w) * w).toBeCloseTo(p * 200e3, 4);
    }
  });

  test("is continuous: a speed a hair away gives a torque a hair away", () => {
    fc.assert(
      fc.property(anySpeed, (w) => {
        expect(Math.abs(fullTorque(engine, w + 1e-6) - fullTorque(engine, w))).toBeLessThan(1e-3);
      }),
    );
    for (const x of [0, 0.1, 0.5, 1, 1.2, 1.25]) {
      const w = engine.idleSpeed + x * span;
      expect(Math.abs(fullTorque(engine, w + 1e-9) - fullTorque(engine, w - 1e-9))).toBeLessThan(1e-5);
    }
  });

  test("is positive in the whole range of its table, and the cubic in its own", () => {
    const inside = ({ low, high }: { low: number; high: number }) =>
      fc.double({ min: low, max: high, noNaN: true });
    fc.assert(
      fc.property(inside(fullTorqueRange), inside(cubicFullTorqueRange), (x, y) => {
        expect(fullTorque(engine, engine.idleSpeed + x * span)).toBeGreaterThan(0);
        expect(cubicFullTorque(200e3, 576, y * 576)).toBeGreaterThan(0);
      }),
    );
  });

  test("is held below idle, zero at the limiter's end, and drag beyond", () => {
    expect(fullTorque(engine, -5)).toBe(fullTorque(engine, engine.idleSpeed));
    expect(fullTorque(engine, engine.idleSpeed + 1.25 * span)).toBeCloseTo(0, 6);
    const far = engine.idleSpeed + 1.5 * span;
    expect(fullTorque(engine, far)).toBe(closedTorque(engine, far));
  });
});

describe("pedal", () => {
  test("mixes closed and full, and is found again from the torque", () => {
    fc.assert(
      fc.property(anySpeed, pedal, (w, share) => {
        const torque = engineTorque(engine, w, share);
        const reach = fullTorque(engine, w) - closedTorque(engine, w);
        expect(torque).toBeGreaterThanOrEqual(closedTorque(engine, w) - 1e-9);
        expect(torque).toBeLessThanOrEqual(fullTorque(engine, w) + 1e-9);
        if (reach > 1) expect(pedalFor(engine, w, torque)).toBeCloseTo(share, 9);
      }),
    );
  });

  test("stays between its stops whatever is asked", () => {
    fc.assert(
      fc.property(anySpeed, fc.double({ min: -1e5, max: 1e5, noNaN: true }), (w, torque) => {
        const share = pedalFor(engine, w, torque);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }),
    );
  });

  test("slope agrees with a difference of torques away from the corners", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1100, noNaN: true }), pedal, (w, share) => {
        const tenth = (10 * (w - engine.idleSpeed)) / span;
        fc.pre(Math.abs(tenth - Math.round(tenth)) > 1e-3 && Math.abs(tenth - 12.5) > 0.5);
        const h = 1e-4;
        const difference =
          (engineTorque(engine, w + h, share) - engineTorque(engine, w - h, share)) / (2 * h);
        expect(engineSlope(engine, w, share)).toBeCloseTo(difference, 4);
      }),
    );
  });

  test("refuses an engine or a pedal that cannot be", () => {
    for (const broken of [
      { ratedPower: 0 },
      { idleSpeed: 0 },
      { ratedSpeed: 50 },
      { drag0: -1 },
      { drag1: NaN },
    ])
      expect(() => fullTorque({ ...engine, ...broken }, 100)).toThrow(/engine\./);
    expect(() => engineTorque(engine, 100, 1.1)).toThrow(/pedal/);
    expect(() => engineTorque(engine, NaN, 1)).toThrow(/engine speed/);
    expect(() => pedalFor(engine, 100, NaN)).toThrow(/torque/);
  });
});

test("the cubic has its peak at half speed and its power at full", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 700, noNaN: true }), (w) => {
      expect(cubicFullTorque(200e3, 576, w)).toBeLessThanOrEqual(cubicFullTorque(200e3, 576, 288));
    }),
  );
  expect(cubicFullTorque(200e3, 576, 576) * 576).toBeCloseTo(200e3, 6);
});
