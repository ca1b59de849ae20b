import fc from "fast-check";
import { expect, test } from "vitest";
import {
  balance,
  type BalanceConditions,
  circuitOrificeReynolds,
  clutchCircuitFlow,
  deliveredAt,
  type Regulator,
  setPoint,
  stillBalance,
} from "../../src/physics/supply/regulator.ts";
import { mixtureDensity } from "../../src/physics/supply/cooler-circuit.ts";
import { holeOpening } from "../../src/physics/leak/hole.ts";
import { leakFlow } from "../../src/physics/leak/flow.ts";
import { between, decades } from "../between.ts";
import { circuit, conditions, pump } from "./conditions.ts";

test("what the pump delivers goes to clutches, feed and spill; what is fed goes to lubrication, leak and relief", () => {
  const seen = new Set<number>();
  fc.assert(
    fc.property(conditions, (at) => {
      const out = stillBalance();
      balance(at, out);
      for (const value of Object.values(out)) expect(Number.isFinite(value)).toBe(true);
      seen.add(out.regime);
      const scale = 1e-12 * Math.max(out.delivered, out.feedFull);
      expect(Math.abs(out.delivered - out.clutchFlow - out.feed - out.spill)).toBeLessThanOrEqual(scale);
      expect(Math.abs(out.feed - out.lube - out.leak - out.relief)).toBeLessThanOrEqual(scale);
      expect(out.linePressure).toBeGreaterThanOrEqual(0);
      expect(out.linePressure).toBeLessThanOrEqual(at.setPoint);
      expect(out.spill).toBeGreaterThanOrEqual(0);
      expect(out.feed).toBeLessThanOrEqual(out.feedFull * (1 + 1e-12));
      if (out.regime < 3) expect(out.linePressure).toBe(at.setPoint);
      if (out.regime > 1) expect(out.spill).toBe(0);
      if (out.regime === 3) expect(out.feed).toBe(0);
    }),
    { numRuns: 5000 },
  );
  expect(seen.size).toBe(3);
});

test("a sagging line stands where the pump meets the clutch circuit", () => {
  fc.assert(
    fc.property(conditions, (at) => {
      const out = stillBalance();
      balance(at, out);
      if (out.regime !== 3) return;
      const p = out.linePressure;
      const taken = clutchCircuitFlow(
        at.clutch,
        p,
        at.viscosity,
        mixtureDensity(at.density, out.lineGas),
        at.setPoint,
      );
      if (taken < 1e-140) return; // its pressure, the square, has no digits left above zero
      expect(Math.abs(deliveredAt(at, p) - taken)).toBeLessThanOrEqual(1e-12 * (taken + deliveredAt(at, 0)));
    }),
    { numRuns: 3000 },
  );
});

test("the balance is continuous in gas and turn rate across all regimes", () => {
  fc.assert(
    fc.property(conditions, between(0.001, 0.95), between(20, 600), (base, gas, turn) => {
      const at = { ...base, gas, turn, viscosity: Math.min(base.viscosity, 0.5) };
      const [here, beside] = [stillBalance(), stillBalance()];
      balance(at, here);
      balance({ ...at, gas: gas + 1e-9, turn: turn * (1 + 1e-9) }, beside);
      const moved = (a: number, b: number, scale: number) =>
        expect(Math.abs(a - b)).toBeLessThan(1e-5 * scale);
      moved(here.linePressure, beside.linePressure, at.setPoint + 1);
      moved(here.feed, beside.feed, 1e-3);
      moved(here.spill, beside.spill, 1e-3);
      moved(here.drawn, beside.drawn, 1e-3);
      moved(here.leak, beside.leak, 1e-3);
    }),
    { numRuns: 2000 },
  );
});

test("more gas never raises the line pressure, more turns never lower it", () => {
  fc.assert(
    fc.property(conditions, between(0, 1), between(1, 2), (at, towardsGas, faster) => {
      const [here, gassier, quicker] = [stillBalance(), stillBalance(), stillBalance()];
      balance(at, here);
      balance({ ...at, gas: at.gas + towardsGas * (1 - at.gas) }, gassier);
      balance({ ...at, turn: at.turn * faster }, quicker);
      expect(gassier.linePressure).toBeLessThanOrEqual(here.linePressure + 1e-9 * at.setPoint);
      expect(quicker.linePressure).toBeGreaterThanOrEqual(here.linePressure - 1e-9 * at.setPoint);
    }),
    { numRuns: 1000 },
  );
});

test("slip and one gap, slip and one orifice: the sagging pressure follows the closed forms", () => {
  const turn = (700 * 2 * Math.PI) / 60;
  const viscosity = 0.007;
  const q0 = (20e-6 * 700) / 60;
  const slip = (5e-8 * 20e-6) / (2 * Math.PI * viscosity);
  const base: BalanceConditions = {
    pump,
    circuit,
    clutch: { orifice: 0, discharge: 0.62, laminar: 1e-11 },
    spillTo: "pan",
    turn,
    gas: 0,
    inlet: 95e3,
    inletLimit: Infinity,
    setPoint: 1e7,
    temperature: 360,
    viscosity,
    pathViscosity: viscosity,
    density: 830,
    leakPlace: "none",
    leakViscous: 0,
    leakInertial: 0,
    leakViscosity: viscosity,
  };
  const out = stillBalance();
  balance(base, out);
  expect(out.linePressure / (q0 / (slip + 1e-11 / viscosity))).toBeCloseTo(1, 12);
  balance({ ...base, clutch: { orifice: 2.5e-3, discharge: 0.62, laminar: 0 } }, out);
  const k = 0.62 * (Math.PI / 4) * 2.5e-3 ** 2 * Math.sqrt(2 / 830);
  const root = (-k + Math.sqrt(k * k + 4 * slip * q0)) / (2 * slip);
  expect(out.linePressure / root ** 2).toBeCloseTo(1, 12);
});

test("a pump at rest, one that draws nothing but dissolved gas, and a shut inlet give no pressure", () => {
  fc.assert(
    fc.property(conditions, (at) => {
      const out = stillBalance();
      const wants = { ...at, setPoint: 1e6 };
      balance({ ...wants, turn: 0 }, out);
      expect([out.linePressure, out.feed, out.drawn]).toEqual([0, 0, 0]);
      balance({ ...wants, inletLimit: 0 }, out);
      expect([out.linePressure, out.feed, out.drawn]).toEqual([0, 0, 0]);
      balance({ ...wants, gas: 1, pump: { ...at.pump, dissolved: 1 } }, out);
      expect([out.linePressure, out.feed]).toEqual([0, 0]);
    }),
  );
});

test("with the spill at the inlet the pan gives only what is used, and a narrow inlet costs less pressure", () => {
  fc.assert(
    fc.property(conditions, (at) => {
      const [inlet, pan] = [stillBalance(), stillBalance()];
      balance({ ...at, spillTo: "inlet" }, inlet);
      balance({ ...at, spillTo: "pan" }, pan);
      expect(inlet.drawn).toBeLessThanOrEqual(pan.drawn);
      // An inlet that passes all that is displaced costs neither any pressure; a narrower one costs less where the spill need not pass it.
      const displaced = (at.pump.displacement * at.turn) / (2 * Math.PI);
      if (at.inletLimit >= displaced) expect(inlet.linePressure).toBe(pan.linePressure);
      else expect(inlet.linePressure).toBeGreaterThanOrEqual(pan.linePressure * (1 - 1e-9));
      if (at.gas === 0 && pan.drawn > 1e-140)
        expect(Math.abs(inlet.drawn - inlet.clutchFlow - inlet.feed)).toBeLessThanOrEqual(1e-12 * pan.drawn);
    }),
    { numRuns: 1000 },
  );
});

test("the set point follows torque, reverse, cold and trim, up to its most", () => {
  const regulator: Regulator = {
    base: 4e5,
    perTorque: 2000,
    reverseFactor: 1.6,
    coldFactor: 0.2,
    coldBelow: 293.15,
    most: 1.7e6,
    spill: "inlet",
  };
  expect(setPoint(regulator, 0, false, 350, 0)).toBe(4e5);
  expect(setPoint(regulator, -100, false, 350, 0)).toBe(setPoint(regulator, 100, false, 350, 0));
  expect(setPoint(regulator, 0, true, 350, 0)).toBeCloseTo(6.4e5, 6);
  expect(setPoint(regulator, 0, false, 253.15, 0)).toBeCloseTo(4.8e5, 6);
  expect(setPoint(regulator, 0, false, 200, 0)).toBeCloseTo(4.8e5, 6);
  expect(setPoint(regulator, 0, false, 350, 5e4)).toBe(4.5e5);
  expect(setPoint(regulator, 1000, false, 350, 5e4)).toBe(1.7e6);
  expect(setPoint(regulator, 0, false, 350, -9e5)).toBe(0);
  expect(() => setPoint(regulator, NaN, false, 350, 0)).toThrow();
});

test("conditions that no unit has are refused", () => {
  fc.assert(
    fc.property(conditions, (at) => {
      const out = stillBalance();
      expect(() => balance({ ...at, turn: -1 }, out)).toThrow();
      expect(() => balance({ ...at, gas: 1.01 }, out)).toThrow();
      expect(() => balance({ ...at, inlet: NaN }, out)).toThrow();
      expect(() => balance({ ...at, inletLimit: -1 }, out)).toThrow();
      expect(() => balance({ ...at, setPoint: NaN }, out)).toThrow();
      expect(() => balance({ ...at, viscosity: 0 }, out)).toThrow();
    }),
    { numRuns: 20 },
  );
});

const orifice = { orifice: 1.6e-3, discharge: 0.62, laminar: 0 };

test("the clutch circuit takes what its sharp edge lets by while warm, what creeps through while stiff, never more than either", () => {
  fc.assert(
    fc.property(decades(0, 6.3), decades(-3, 2), (pressure, viscosity) => {
      const flow = clutchCircuitFlow(orifice, pressure, viscosity, 850);
      const sharp = (Math.PI / 4) * 1.6e-3 ** 2 * 0.62 * Math.sqrt((2 * pressure) / 850);
      const creeping = (1.6e-3 ** 3 * pressure) / (24 * viscosity);
      expect(flow / Math.min(sharp, creeping)).toBeCloseTo(1, 12);
      // Both are limits of the leak's law for a hole without a wall, which joins them smoothly: at worst by the golden section less.
      const smooth = leakFlow(holeOpening(1.6e-3, 0), pressure, viscosity, 850);
      expect(flow).toBeGreaterThanOrEqual(smooth);
      expect(flow).toBeLessThan(1.65 * smooth);
    }),
  );
});

test("it changes from one to the other at a Reynolds number of 12π C², 14.5", () => {
  const at = (viscosity: number) => circuitOrificeReynolds(orifice, 5e5, viscosity, 850);
  // Re falls as 1/µ on the one side, as 1/µ² on the other.
  let [low, high] = [1e-2, 1e2];
  for (let i = 0; i < 60; i++) {
    const middle = Math.sqrt(low * high);
    if (at(1.001 * middle) / at(middle) > 1.001 ** -1.5) low = middle;
    else high = middle;
  }
  expect(at(low)).toBeCloseTo(12 * Math.PI * 0.62 ** 2, 1);
});
