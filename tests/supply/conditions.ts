// What a line may be balanced with: pumps, circuits, fluids and openings of every kind.
import fc from "fast-check";
import type { CoolerCircuit, CoolerLeakPlace } from "../../src/physics/supply/cooler-circuit.ts";
import type { Pump } from "../../src/physics/supply/pump.ts";
import type { BalanceConditions } from "../../src/physics/supply/regulator.ts";
import { between, decades } from "../between.ts";

export const circuit: CoolerCircuit = {
  feedOrifice: 2.2e-3,
  feedDischarge: 0.62,
  supplyLine: 1e10,
  cooler: 4e10,
  returnLine: 1e10,
  bypass: 3e10,
  lube: 5e10,
  relief: 4e5,
  bypassCold: 340,
  bypassHot: 355,
};
export const pump: Pump = {
  displacement: 20e-6,
  slip: 5e-8,
  dissolved: 0.2,
  exponent: 1.2,
  mechanical: 0.85,
};
const places: CoolerLeakPlace[] = ["converter-outlet", "supply-line", "return-line", "lubrication", "none"];
export const conditions = fc.record<BalanceConditions>({
  pump: fc.record<Pump>({
    displacement: between(5e-6, 40e-6),
    slip: decades(-9, -6),
    dissolved: between(0, 1),
    exponent: between(1, 1.4),
    mechanical: fc.constant(0.85),
  }),
  circuit: fc.constant(circuit),
  clutch: fc.record({
    orifice: between(0, 3e-3),
    discharge: fc.constant(0.62),
    laminar: decades(-13.5, -11),
  }),
  spillTo: fc.constantFrom("inlet", "pan"),
  turn: between(0, 700),
  gas: fc.oneof(fc.constant(0), fc.constant(1), between(0, 1)),
  inlet: between(3000, 101325),
  inletLimit: fc.oneof(fc.constant(Infinity), between(0, 2e-3)),
  setPoint: between(0, 2e6),
  temperature: between(240, 420),
  viscosity: decades(-2.3, 1),
  pathViscosity: decades(-2.3, 1),
  density: between(780, 900),
  leakPlace: fc.constantFrom(...places),
  leakViscous: decades(8, 14),
  leakInertial: decades(8, 14),
  leakViscosity: decades(-2.3, 1),
});
