// The circuit fed from the overflow of the regulator: converter, cooler lines, cooler, lubrication.
//
//   line --orifice-- converter outlet --+-- supply line --+-- cooler -- return line --+-- lubrication -- pan
//                    (relief to the pan) |       (leak "supply-line")   (leak "return-line") |
//                                        +----------- thermostatic bypass -------------------+
//
// Everything behind the orifice is laminar (Δp = R µ Q; a service table of cooler flow against temperature confirms it), so
// all of it but the leak is linear, and the leak sees a source of one open pressure and one resistance (Thévenin).

import { finite, fraction, impossible, notNegative, positive, type Range } from "../../errors.ts";

/**
 * Resistances in 1/m³ (Δp = R µ Q). `feedOrifice` [m] with the discharge coefficient `feedDischarge`; relief
 * [Pa] is the most that the converter outlet may stand at; the bypass closes between the sump temperatures
 * bypassCold and bypassHot [K]. A circuit without bypass has bypass = Infinity; without relief, relief =
 * Infinity.
 */
export interface CoolerCircuit {
  readonly feedOrifice: number;
  readonly feedDischarge: number;
  readonly supplyLine: number;
  readonly cooler: number;
  readonly returnLine: number;
  readonly bypass: number;
  readonly lube: number;
  readonly relief: number;
  readonly bypassCold: number;
  readonly bypassHot: number;
}

/**
 * Where the circuit leaks: at the converter's outlet, at the end of the supply line, at the end of the return line or where
 * lubrication begins (the same pressure), or not at all.
 */
export type CoolerLeakPlace = "converter-outlet" | "supply-line" | "return-line" | "lubrication" | "none";

/**
 * What the circuit works with: sump temperature [K], viscosities [Pa·s] of the fluid in the sump (bypass and
 * lubrication) and on the way through the cooler (at the mean of sump and coolant), density of the liquid
 * [kg/m³], the leak's place, its two coefficients (Δp = µ viscous Q + ρ inertial Q², 1/m³ and 1/m⁴) and the
 * viscosity of what leaks.
 */
export interface CircuitConditions {
  readonly temperature: number;
  readonly viscosity: number;
  readonly pathViscosity: number;
  readonly density: number;
  readonly leakPlace: CoolerLeakPlace;
  readonly leakViscous: number;
  readonly leakInertial: number;
  readonly leakViscosity: number;
}

/**
 * Flows [m³/s at line conditions] and pressures [Pa] in the circuit; a negative cooler flow runs backwards to
 * a large leak.
 */
export interface CircuitFlow {
  feed: number;
  cooler: number;
  bypass: number;
  lube: number;
  leak: number;
  relief: number;
  leakPressure: number;
  nodePressure: number;
}

/** The cooler circuit is laminar throughout. A build gives resistances and no bores, so no history can look at this one. */
export const coolerLaminarRange: Range = {
  law: "laminar cooler circuit, Δp = R µ Q",
  quantity: "Re in the line",
  unit: "1",
  low: 0,
  high: 2300,
  source:
    "cooler flow against temperature, factory repair manual, rear-drive car, 2003: Q ~ ν^-0.91 to ν^-1.01",
};

/** A record for results, made once and written again and again. */
export function stillCircuit(): CircuitFlow {
  return { feed: 0, cooler: 0, bypass: 0, lube: 0, leak: 0, relief: 0, leakPressure: 0, nodePressure: 0 };
}

/**
 * How far the thermostat is open to the cooler: 0 below bypassCold (bypass open), 1 above bypassHot (bypass
 * shut).
 */
export function thermostatOpening(circuit: CoolerCircuit, temperature: number): number {
  if (!(temperature > 0)) impossible("temperature", temperature, "more than 0 K");
  if (temperature >= circuit.bypassHot) return 1;
  if (temperature <= circuit.bypassCold) return 0;
  const open = (temperature - circuit.bypassCold) / (circuit.bypassHot - circuit.bypassCold);
  if (!(open >= 0)) refuseThermostat(circuit);
  return open;
}

/**
 * Density that an orifice sees [kg/m³] when the gas fraction in the line is `gas`; a line full of gas keeps a
 * thousandth of it.
 */
export function mixtureDensity(density: number, gas: number): number {
  const liquid = 1 - gas;
  if (!(liquid >= 0 && liquid <= 1 && density > 0 && density < Infinity)) refuseMixture(density, gas);
  return density * (liquid > 1e-3 ? liquid : 1e-3);
}

// The linear part, seen from its two ports, as (node, leak) pressures for a flow into the node and a flow out
// at the leak: node = atNode q - mutual Q, leak = mutual q - atLeak Q. Written into one record, used up
// before the next call.
interface Ports {
  upstream: number; // from the node to the leak, Pa·s/m³
  downstream: number; // from the leak to the lubrication node
  share: number; // 1/(1 + bypass conductance (upstream + downstream))
  conductance: number;
  lube: number;
  atNode: number;
  atLeak: number;
  mutual: number;
}

const scratch: Ports = {
  upstream: 0,
  downstream: 0,
  share: 0,
  conductance: 0,
  lube: 0,
  atNode: 0,
  atLeak: 0,
  mutual: 0,
};

const isCircuit = (circuit: CoolerCircuit): boolean =>
  circuit.supplyLine >= 0 &&
  circuit.cooler >= 0 &&
  circuit.returnLine >= 0 &&
  circuit.lube >= 0 &&
  circuit.supplyLine + circuit.cooler + circuit.returnLine + circuit.lube < Infinity &&
  circuit.bypass > 0 &&
  circuit.relief > 0;

function check(circuit: CoolerCircuit): void {
  notNegative("supplyLine", circuit.supplyLine, "1/m³");
  notNegative("cooler", circuit.cooler, "1/m³");
  notNegative("returnLine", circuit.returnLine, "1/m³");
  notNegative("lube", circuit.lube, "1/m³");
  if (!(circuit.bypass > 0)) impossible("bypass", circuit.bypass, "more than 0 1/m³, or Infinity for none");
  if (!(circuit.relief > 0)) impossible("relief", circuit.relief, "more than 0 Pa, or Infinity for none");
}

function portsOf(circuit: CoolerCircuit, at: CircuitConditions): Ports {
  if (!isCircuit(circuit)) check(circuit);
  const mu = at.pathViscosity;
  const beforeCooler = circuit.supplyLine * mu;
  const afterCooler = (circuit.cooler + circuit.returnLine) * mu;
  const ports = scratch;
  if (at.leakPlace === "converter-outlet") ports.upstream = 0;
  else ports.upstream = at.leakPlace === "supply-line" ? beforeCooler : beforeCooler + afterCooler;
  if (at.leakPlace === "converter-outlet") ports.downstream = beforeCooler + afterCooler;
  else ports.downstream = at.leakPlace === "supply-line" ? afterCooler : 0;
  ports.conductance = (1 - thermostatOpening(circuit, at.temperature)) / (circuit.bypass * at.viscosity);
  ports.lube = circuit.lube * at.viscosity;
  const series = beforeCooler + afterCooler;
  ports.share = 1 / (1 + ports.conductance * series);
  ports.atNode = ports.lube + series * ports.share;
  ports.mutual = ports.lube + ports.downstream * ports.share;
  ports.atLeak = ports.lube + ports.downstream * (1 + ports.conductance * ports.upstream) * ports.share;
  if (!(ports.atNode + ports.atLeak < Infinity && ports.conductance >= 0 && mu > 0 && at.viscosity > 0))
    refuse(at);
  return ports;
}

// Flow of the leak [m³/s] on a source of the pressure `open` and the inner resistance `inner`: the positive
// root of ρ b Q² + (µ a + inner) Q = open, in the form that stays exact for a small b. The leak law itself is
// one quadratic, so the resistance of the circuit only adds to its linear part.
function leakOn(open: number, inner: number, at: CircuitConditions, density: number): number {
  if (!(open > 0) || at.leakPlace === "none") return 0;
  const linear = at.leakViscosity * at.leakViscous + inner;
  if (!(linear >= inner && at.leakInertial >= 0)) refuseLeak(at);
  const sum = linear + Math.sqrt(linear * linear + 4 * density * at.leakInertial * open);
  return (2 * open) / sum; // without any resistance the leak takes all there is
}

function fill(
  out: CircuitFlow,
  ports: Ports,
  at: CircuitConditions,
  density: number,
  feed: number,
  inflow: number,
  leak: number,
): void {
  const upper = (inflow + ports.conductance * ports.downstream * leak) * ports.share;
  const lower = upper - leak;
  out.feed = feed;
  out.leak = leak;
  out.relief = feed - inflow;
  out.cooler = ports.downstream > 0 ? lower : upper;
  out.bypass = inflow - upper;
  out.lube = inflow - leak;
  // By the leak's own law where it leaks: at a parted line the flows beyond it are small differences.
  out.leakPressure =
    leak > 0
      ? (at.leakViscosity * at.leakViscous + density * at.leakInertial * leak) * leak
      : ports.lube * inflow + ports.downstream * upper;
  out.nodePressure = out.leakPressure + ports.upstream * upper;
}

// The flow that the node takes while the relief holds it at its pressure, and the leak then: the node is a
// fixed pressure, so the leak's source has the resistance of the circuit with the node held.
function fillOnRelief(
  out: CircuitFlow,
  ports: Ports,
  circuit: CoolerCircuit,
  at: CircuitConditions,
  density: number,
  feed: number,
): void {
  const lube = ports.lube / (1 + ports.conductance * ports.lube);
  const whole = ports.upstream + ports.downstream + lube;
  const inner = whole > 0 ? (ports.upstream * (ports.downstream + lube)) / whole : 0;
  const ratio = ports.mutual / ports.atNode;
  const leak = leakOn(ratio * circuit.relief, inner, at, density);
  fill(out, ports, at, density, feed, circuit.relief / ports.atNode + ratio * leak, leak);
  out.nodePressure = circuit.relief;
}

/**
 * The circuit at a given feed flow [m³/s, 0 or more]: closed form, the leak and the relief inside. `gas` is
 * the gas fraction in the line, which lightens what leaks. Writes `out`.
 */
export function circuitAtFeed(
  circuit: CoolerCircuit,
  conditions: CircuitConditions,
  feedFlow: number,
  out: CircuitFlow,
  gas = 0,
): void {
  if (!(feedFlow * feedFlow < Infinity)) impossible("feed flow", feedFlow, "a finite flow in m³/s");
  const feed = feedFlow > 0 ? feedFlow : 0;
  const density = mixtureDensity(conditions.density, gas);
  const ports = portsOf(circuit, conditions);
  const leak = leakOn(ports.mutual * feed, ports.atLeak, conditions, density);
  if (ports.atNode * feed - ports.mutual * leak > circuit.relief)
    fillOnRelief(out, ports, circuit, conditions, density, feed);
  else fill(out, ports, conditions, density, feed, feed, leak);
}

/**
 * The circuit fed in full through its orifice from the line pressure [Pa]: the feed q at which k q² +
 * p_node(q) = p, with k = ρ/(2 Cd² A²). Without a leak a quadratic; a leak lowers the node, so that feed is
 * the lower end and the bare orifice the upper end of the bracket. The left side rises and is convex:
 * Newton's first step passes the root, all others come down on it, and the search ends when they no longer
 * do. Writes `out`.
 */
export function feedFull(
  circuit: CoolerCircuit,
  conditions: CircuitConditions,
  linePressure: number,
  out: CircuitFlow,
  gas = 0,
): void {
  if (!(linePressure < Infinity)) impossible("line pressure", linePressure, "a finite pressure in Pa");
  const p = linePressure > 0 ? linePressure : 0;
  const density = mixtureDensity(conditions.density, gas);
  const ports = portsOf(circuit, conditions);
  const area = (Math.PI / 4) * circuit.feedOrifice * circuit.feedOrifice * circuit.feedDischarge;
  if (!(area > 0 && area < Infinity)) refuseOrifice(circuit);
  const k = density / (2 * area * area);
  if (p > circuit.relief) {
    // If the feed against the relief's pressure is more than the circuit takes there, the relief is open.
    const feed = Math.sqrt((p - circuit.relief) / k);
    fillOnRelief(out, ports, circuit, conditions, density, feed);
    if (out.relief > 0) return;
  }
  const most = Math.sqrt(p / k);
  const tight = p > 0 ? (2 * p) / (ports.atNode + Math.sqrt(ports.atNode * ports.atNode + 4 * k * p)) : 0;
  let q = tight;
  let leak = leakOn(ports.mutual * q, ports.atLeak, conditions, density);
  if (leak > 0) {
    for (let above = false; ; above = true) {
      const excess = (k * q + ports.atNode) * q - ports.mutual * leak - p;
      // dQ/dq of the leak, from its own quadratic.
      const linear = conditions.leakViscosity * conditions.leakViscous + ports.atLeak;
      const give = ports.mutual / (linear + 2 * density * conditions.leakInertial * leak);
      let next = q - excess / (2 * k * q + ports.atNode - ports.mutual * give);
      next = next > most ? most : next > tight ? next : tight;
      if (above && !(next < q)) break;
      const near = Math.abs(next - q) <= 1e-15 * next;
      q = next;
      leak = leakOn(ports.mutual * q, ports.atLeak, conditions, density);
      if (near) break;
    }
  }
  fill(out, ports, conditions, density, q, q, leak);
}

function refuse(at: CircuitConditions): void {
  positive("viscosity", at.viscosity, "Pa·s");
  positive("viscosity in the cooler", at.pathViscosity, "Pa·s");
  impossible("viscosity", at.viscosity, "one for which the circuit has finite resistances");
}

function refuseLeak(at: CircuitConditions): void {
  notNegative("leakViscous", at.leakViscous, "1/m³");
  notNegative("leakInertial", at.leakInertial, "1/m⁴");
  notNegative("viscosity of what leaks", at.leakViscosity, "Pa·s");
}

function refuseThermostat(circuit: CoolerCircuit): void {
  finite("bypassCold", circuit.bypassCold, "K");
  finite("bypassHot", circuit.bypassHot, "K");
}

function refuseMixture(density: number, gas: number): void {
  positive("density", density, "kg/m³");
  fraction("gas fraction in the line", gas);
}

function refuseOrifice(circuit: CoolerCircuit): void {
  positive("feedOrifice", circuit.feedOrifice, "m");
  positive("feedDischarge", circuit.feedDischarge);
}
