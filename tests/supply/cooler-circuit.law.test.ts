import fc from "fast-check";
import { expect, test } from "vitest";
import {
  circuitAtFeed,
  type CircuitConditions,
  type CoolerCircuit,
  type CoolerLeakPlace,
  feedFull,
  mixtureDensity,
  stillCircuit,
  thermostatOpening,
} from "../../src/physics/supply/cooler-circuit.ts";
import { between, decades } from "../between.ts";

const resistance = fc.oneof(fc.constant(0), decades(8, 11.5));
const circuits = fc.record<CoolerCircuit>({
  feedOrifice: between(0.5e-3, 6e-3),
  feedDischarge: between(0.5, 0.9),
  supplyLine: resistance,
  cooler: decades(8, 11.5),
  returnLine: resistance,
  bypass: fc.oneof(fc.constant(Infinity), decades(8, 12)),
  lube: decades(8, 11.5),
  relief: fc.oneof(fc.constant(Infinity), decades(4, 6.5)),
  bypassCold: fc.constant(340),
  bypassHot: fc.constant(355),
});
const places: CoolerLeakPlace[] = ["converter-outlet", "supply-line", "return-line", "lubrication", "none"];
const conditions = fc.record<CircuitConditions>({
  temperature: between(240, 420),
  viscosity: decades(-2.5, 1),
  pathViscosity: decades(-2.5, 1),
  density: between(780, 900),
  leakPlace: fc.constantFrom(...places),
  leakViscous: fc.oneof(fc.constant(0), decades(6, 18)),
  leakInertial: fc.oneof(fc.constant(0), decades(6, 20)),
  leakViscosity: decades(-2.5, 1),
});
const near = (a: number, b: number, scale: number) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.abs(scale));

// Every law of the network, one by one: continuity at both nodes, the pressure along both ways, the leak's own law.
function holds(circuit: CoolerCircuit, at: CircuitConditions, gas: number, out = stillCircuit()): void {
  for (const value of Object.values(out)) expect(Number.isFinite(value)).toBe(true);
  const mu = at.pathViscosity;
  const lubePressure = circuit.lube * at.viscosity * out.lube;
  near(out.feed, out.lube + out.leak + out.relief, out.feed);
  const supplySide = at.leakPlace === "supply-line";
  const upper = supplySide ? out.cooler + out.leak : out.cooler;
  const through = circuit.supplyLine * mu * upper + (circuit.cooler + circuit.returnLine) * mu * out.cooler;
  // Beyond a parted line pressures are differences of what the feed would give: digits of that are what is left.
  const shut =
    (circuit.lube * at.viscosity + (circuit.supplyLine + circuit.cooler + circuit.returnLine) * mu) *
    out.feed;
  const largest = Math.max(out.nodePressure, Math.abs(through), 1e-6 * shut);
  near(out.nodePressure, lubePressure + through, largest);
  const atOutlet = at.leakPlace === "converter-outlet";
  near(out.feed - out.relief, upper + out.bypass + (atOutlet ? out.leak : 0), out.feed);
  const conductance = (1 - thermostatOpening(circuit, at.temperature)) / (circuit.bypass * at.viscosity);
  // A flow is compared on the scale of the feed: a bypass beside a short line carries it by a small pressure difference.
  const worth = Math.max(out.feed, conductance * largest);
  near(out.bypass, conductance * (out.nodePressure - lubePressure), worth);
  if (at.leakPlace !== "none") {
    const wanted =
      at.leakViscosity * at.leakViscous * out.leak +
      mixtureDensity(at.density, gas) * at.leakInertial * out.leak ** 2;
    near(out.leakPressure, wanted, largest);
    near(
      out.leakPressure,
      supplySide
        ? out.nodePressure - circuit.supplyLine * mu * upper
        : atOutlet
          ? out.nodePressure
          : lubePressure,
      largest,
    );
  } else expect(out.leak).toBe(0);
  expect(out.relief).toBeGreaterThanOrEqual(-1e-12 * out.feed);
  expect(out.nodePressure).toBeLessThanOrEqual(circuit.relief * (1 + 1e-9));
  if (out.relief > 1e-9 * out.feed) near(out.nodePressure, circuit.relief, circuit.relief);
}

test("at a given feed every law of the network holds at once, leak and relief included", () => {
  fc.assert(
    fc.property(circuits, conditions, decades(-9, -2.5), between(0, 0.9), (circuit, at, feed, gas) => {
      const out = stillCircuit();
      circuitAtFeed(circuit, at, feed, out, gas);
      expect(out.feed).toBe(feed);
      holds(circuit, at, gas, out);
    }),
    { numRuns: 3000 },
  );
});

test("fed in full, the orifice passes what the circuit takes", () => {
  fc.assert(
    fc.property(circuits, conditions, decades(0, 6.5), between(0, 0.9), (circuit, at, pressure, gas) => {
      const out = stillCircuit();
      feedFull(circuit, at, pressure, out, gas);
      holds(circuit, at, gas, out);
      const area = (Math.PI / 4) * circuit.feedOrifice ** 2 * circuit.feedDischarge;
      const drop = (mixtureDensity(at.density, gas) * (out.feed / area) ** 2) / 2;
      near(pressure - out.nodePressure, drop, pressure);
    }),
    { numRuns: 3000 },
  );
});

test("both ways of asking agree, and a second asking changes nothing", () => {
  fc.assert(
    fc.property(circuits, conditions, decades(3, 6.5), (circuit, at, pressure) => {
      const [full, again] = [stillCircuit(), stillCircuit()];
      feedFull(circuit, at, pressure, full);
      circuitAtFeed(circuit, at, full.feed, again);
      near(full.leak, again.leak, full.feed);
      near(full.nodePressure, again.nodePressure, pressure);
      const before = { ...full };
      feedFull(circuit, at, pressure, full);
      expect(full).toEqual(before);
    }),
  );
});

test("no pressure, no flow; a leak never adds lubrication; more pressure never leaks less", () => {
  fc.assert(
    fc.property(circuits, conditions, decades(3, 6), between(1, 3), (circuit, at, pressure, factor) => {
      const [dry, tight, leaking, more] = [stillCircuit(), stillCircuit(), stillCircuit(), stillCircuit()];
      feedFull(circuit, at, 0, dry);
      expect([dry.feed, dry.lube, dry.leak, dry.nodePressure]).toEqual([0, 0, 0, 0]);
      feedFull(circuit, { ...at, leakPlace: "none" }, pressure, tight);
      feedFull(circuit, at, pressure, leaking);
      expect(leaking.lube).toBeLessThanOrEqual(tight.lube * (1 + 1e-12));
      expect(leaking.feed).toBeGreaterThanOrEqual(tight.feed * (1 - 1e-12));
      feedFull(circuit, at, pressure * factor, more);
      expect(more.leak).toBeGreaterThanOrEqual(leaking.leak * (1 - 1e-9));
    }),
  );
});

test("the bypass takes its share cold, none hot, and the cooler path is always there", () => {
  const circuit: CoolerCircuit = {
    feedOrifice: 2.2e-3,
    feedDischarge: 0.62,
    supplyLine: 3e9,
    cooler: 3e10,
    returnLine: 3e9,
    bypass: 1e10,
    lube: 4e10,
    relief: 5e5,
    bypassCold: 340,
    bypassHot: 355,
  };
  const at: CircuitConditions = {
    temperature: 330,
    viscosity: 0.02,
    pathViscosity: 0.02,
    density: 840,
    leakPlace: "none",
    leakViscous: 0,
    leakInertial: 0,
    leakViscosity: 0.02,
  };
  const out = stillCircuit();
  circuitAtFeed(circuit, at, 1e-5, out);
  expect(out.bypass / out.cooler).toBeCloseTo(3.6, 10);
  expect(out.cooler).toBeGreaterThan(0);
  circuitAtFeed(circuit, { ...at, temperature: 360 }, 1e-5, out);
  expect(out.bypass).toBeCloseTo(0, 18);
  expect(out.cooler).toBeCloseTo(1e-5, 15);
});

test("impossible circuits and conditions are refused", () => {
  const circuit: CoolerCircuit = {
    feedOrifice: 2.2e-3,
    feedDischarge: 0.62,
    supplyLine: 3e9,
    cooler: 3e10,
    returnLine: 3e9,
    bypass: 1e10,
    lube: 4e10,
    relief: 5e5,
    bypassCold: 340,
    bypassHot: 355,
  };
  const at: CircuitConditions = {
    temperature: 330,
    viscosity: 0.02,
    pathViscosity: 0.02,
    density: 840,
    leakPlace: "none",
    leakViscous: 0,
    leakInertial: 0,
    leakViscosity: 0.02,
  };
  const out = stillCircuit();
  expect(() => feedFull(circuit, at, NaN, out)).toThrow();
  expect(() => circuitAtFeed(circuit, at, NaN, out)).toThrow();
  expect(() => feedFull({ ...circuit, feedOrifice: 0 }, at, 1e5, out)).toThrow();
  expect(() => feedFull({ ...circuit, bypass: -1 }, at, 1e5, out)).toThrow();
  expect(() => feedFull(circuit, { ...at, viscosity: -0.02 }, 1e5, out)).toThrow();
  expect(() => feedFull(circuit, { ...at, pathViscosity: NaN }, 1e5, out)).toThrow();
  expect(() => feedFull(circuit, { ...at, density: 0 }, 1e5, out)).toThrow();
});
