import { describe, expect, it } from "vitest";
import type { Range } from "../../src/errors.ts";
import { circuitAtFeed, coolerLaminarRange, stillCircuit } from "../../src/physics/supply/cooler-circuit.ts";
import {
  type Inlet,
  inletFrictionRange,
  inletPressure,
  inletReynolds,
} from "../../src/physics/supply/inlet.ts";
import { delivered, type Pump, slipRange } from "../../src/physics/supply/pump.ts";
import { circuit as usual } from "./conditions.ts";

const pump: Pump = { displacement: 20e-6, slip: 5e-8, dissolved: 0.3, exponent: 1.2, mechanical: 0.85 };
const inlet: Inlet = { head: 0.1, bore: 0.018, length: 0.15, minorLoss: 1.5, filter: 1.2e9 };
const perReynolds = 1 / inletReynolds(inlet, 1, 0.007, 830);

/** Pressure at the converter outlet of a circuit whose line, 8 mm wide, runs at this Reynolds number. */
function outletPressure(reynolds: number): number {
  const circuit = { ...usual, relief: Infinity };
  const at = {
    temperature: 350,
    viscosity: 0.007,
    pathViscosity: 0.007,
    density: 830,
    leakPlace: "none" as const,
    leakViscous: 0,
    leakInertial: 0,
    leakViscosity: 0.007,
  };
  const out = stillCircuit();
  circuitAtFeed(circuit, at, (reynolds * Math.PI * 0.008 * 0.007) / (4 * 830), out);
  return out.nodePressure;
}

// Each law at both ends of its range and well outside it: a finite number every time.
const laws: readonly [Range, (x: number) => number][] = [
  // Slip over displaced flow is Cs p/(µ ω).
  [slipRange, (share) => delivered(pump, 73, 0, 1, (share * 0.007 * 73) / pump.slip, 0.007)],
  [inletFrictionRange, (reynolds) => inletPressure(inlet, reynolds * perReynolds, 0.007, 830)],
  [coolerLaminarRange, outletPressure],
];

describe("ranges of the supply's laws", () => {
  it.each(laws.map(([range, law]) => ({ range, law })))("$range.law in $range.quantity", ({ range, law }) => {
    expect(range.low).toBeLessThan(range.high);
    expect(range.source.length).toBeGreaterThan(10);
    for (const x of [range.low, range.high, 10 * range.high]) expect(Number.isFinite(law(x))).toBe(true);
  });
});
