// The regulator: the pressure that it wants, and the balance of supply and demand that it gets.

import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";
import {
  circuitAtFeed,
  type CircuitConditions,
  type CircuitFlow,
  type CoolerCircuit,
  feedFull,
  mixtureDensity,
} from "./cooler-circuit.ts";
import { displaced, gasLeft, lineGas, type Pump, pumpSlip } from "./pump.ts";
import { saggingPressure } from "./sagging.ts";

/**
 * Line pressure that is asked for: `base` [Pa], `perTorque` [Pa per N m of turbine torque], both times
 * `reverseFactor` in reverse; raised by the share `coldFactor` over 40 K below `coldBelow` [K]; never above
 * `most` [Pa]. `spill`: where the surplus goes, back to the pump's inlet or to the pan.
 */
export interface Regulator {
  readonly base: number;
  readonly perTorque: number;
  readonly reverseFactor: number;
  readonly coldFactor: number;
  readonly coldBelow: number;
  readonly most: number;
  readonly spill: "inlet" | "pan";
}

const isRegulator = (regulator: Regulator): boolean =>
  regulator.base >= 0 &&
  regulator.perTorque >= 0 &&
  regulator.reverseFactor >= 0 &&
  regulator.coldFactor >= 0 &&
  regulator.coldBelow > 0 &&
  regulator.most >= 0 &&
  regulator.base +
    regulator.perTorque +
    regulator.reverseFactor +
    regulator.coldFactor +
    regulator.coldBelow +
    regulator.most <
    Infinity;

function check(regulator: Regulator): void {
  notNegative("base", regulator.base, "Pa");
  notNegative("perTorque", regulator.perTorque, "Pa per N m");
  notNegative("reverseFactor", regulator.reverseFactor);
  notNegative("coldFactor", regulator.coldFactor);
  positive("coldBelow", regulator.coldBelow, "K");
  notNegative("most", regulator.most, "Pa");
}

/**
 * Set point [Pa] for the turbine torque [N m], the sump temperature [K] and the learned trim [Pa]; never
 * below 0.
 */
export function setPoint(
  regulator: Regulator,
  turbineTorque: number,
  reverse: boolean,
  temperature: number,
  trim: number,
): number {
  if (!isRegulator(regulator)) check(regulator);
  const depth = (regulator.coldBelow - temperature) / 40;
  const cold = 1 + regulator.coldFactor * (depth > 1 ? 1 : depth > 0 ? depth : 0);
  const wanted =
    (regulator.base + regulator.perTorque * Math.abs(turbineTorque)) *
      (reverse ? regulator.reverseFactor : 1) *
      cold +
    trim;
  if (!(Math.abs(wanted) < Infinity && temperature > 0)) refuseSetPoint(turbineTorque, temperature, trim);
  return wanted > regulator.most ? regulator.most : wanted > 0 ? wanted : 0;
}

/**
 * What the clutch circuit takes at pressure: an orifice [m] with its discharge coefficient, and laminar gaps
 * Q = G p/µ, G in m³.
 */
export interface ClutchCircuit {
  readonly orifice: number;
  readonly discharge: number;
  readonly laminar: number;
}

export const circuitOrificeRange: Range = {
  law: "clutch circuit through a sharp orifice",
  quantity: "Re",
  unit: "1",
  low: 100,
  high: 1e6,
  source:
    "Merritt, Hydraulic Control Systems, 1967 (recalled); below Re 15 creeping flow, between them up to 60 % more than both losses added up would let through",
};

/**
 * What the orifice passes [m³/s]: its sharp edge's flow Cd A √(2p/ρ), times what is left of it where fluid is so stiff that less
 * creeps through at the pressure asked for, d³p/(24 µ) after Sampson (1891): the share is d √(pρ/2)/(6π Cd µ), at most 1.
 */
function orificeFlow(
  circuit: ClutchCircuit,
  linePressure: number,
  viscosity: number,
  density: number,
  asked: number,
): number {
  const { orifice, discharge } = circuit;
  const area = (Math.PI / 4) * orifice * orifice * discharge;
  const sharp = area * Math.sqrt((2 * linePressure) / density);
  const share = (orifice * Math.sqrt(0.5 * asked * density)) / (6 * Math.PI * discharge * viscosity);
  if (!(share >= 0 && share < Infinity && sharp >= 0 && sharp < Infinity))
    refuseOrifice(circuit, linePressure, viscosity, density, asked);
  return share < 1 ? sharp * share : sharp;
}

/** Reynolds number of what runs through the clutch circuit's orifice, 4 ρ Q/(π d µ): arguments as of `clutchCircuitFlow`. */
export function circuitOrificeReynolds(
  circuit: ClutchCircuit,
  linePressure: number,
  viscosity: number,
  density: number,
  asked = linePressure,
): number {
  positive("orifice", circuit.orifice, "m");
  const flow = orificeFlow(circuit, linePressure, viscosity, density, asked);
  return (4 * density * flow) / (Math.PI * circuit.orifice * viscosity);
}

/**
 * Demand of the clutch circuit [m³/s]: Cd A √(2p/ρ), at the pressure asked for no more than creeps, and G p/µ; at the line pressure
 * [Pa, 0 or more], viscosity [Pa·s], density of the mixture [kg/m³] and the pressure asked for [Pa], the line's own when left out.
 * Fluid of some thousand mm²/s creeps through the orifice, and a constant coefficient would let many times too much by: a pump that
 * can hardly draw it would then seem to lose its pressure. A line that sags in such cold is reckoned to lose a little too much.
 * Source: Merritt (1967, recalled) for the sharp edge, Sampson (1891) for creeping flow; both meet at Re 12π Cd², 14.5 for 0.62.
 */
export function clutchCircuitFlow(
  circuit: ClutchCircuit,
  linePressure: number,
  viscosity: number,
  density: number,
  asked = linePressure,
): number {
  if (!(circuit.laminar >= 0 && circuit.laminar < Infinity)) notNegative("laminar", circuit.laminar, "m³");
  return (
    (circuit.laminar * linePressure) / viscosity +
    orificeFlow(circuit, linePressure, viscosity, density, asked)
  );
}

/**
 * What the balance works with, besides the circuit's conditions: pump and its turn rate [rad/s], gas fraction
 * and pressure [Pa abs] at its inlet, the largest inflow that the inlet allows [m³/s, Infinity for no limit],
 * the set point [Pa], the two circuits and where the spill goes. A record that the caller keeps and writes
 * anew.
 */
export interface BalanceConditions extends CircuitConditions {
  readonly pump: Pump;
  readonly turn: number;
  readonly gas: number;
  readonly inlet: number;
  readonly inletLimit: number;
  readonly setPoint: number;
  readonly clutch: ClutchCircuit;
  readonly circuit: CoolerCircuit;
  readonly spillTo: "inlet" | "pan";
}

/** 1 regulated with full feed, 2 regulated with the feed starved, 3 sagging with no feed. */
export type SupplyRegime = 1 | 2 | 3;

/**
 * The balance. All flows in m³/s at line conditions but `drawn`, which is what comes out of the pan, at inlet
 * conditions. `feedFull` is what the cooler circuit would take at this line pressure; `lineGas` the gas
 * fraction in the line.
 */
export interface Balance extends CircuitFlow {
  linePressure: number;
  regime: SupplyRegime;
  delivered: number;
  clutchFlow: number;
  feedFull: number;
  spill: number;
  drawn: number;
  lineGas: number;
}

/** A record for results, made once and written again and again. Written out: V8 boxes each number anew that it writes into a record made by spreading. */
export function stillBalance(): Balance {
  return {
    feed: 0,
    cooler: 0,
    bypass: 0,
    lube: 0,
    leak: 0,
    relief: 0,
    leakPressure: 0,
    nodePressure: 0,
    linePressure: 0,
    regime: 1,
    delivered: 0,
    clutchFlow: 0,
    feedFull: 0,
    spill: 0,
    drawn: 0,
    lineGas: 0,
  };
}

// What the pump delivers at the pressure p with the share `mixture` of what it takes in left as volume. The inlet limits what comes
// out of the pan: all that the pump takes in, or, where spill and slip go back to the inlet, what it delivers beyond them.
function supplyAt(at: BalanceConditions, mixture: number, p: number): number {
  const free = displaced(at.pump, at.turn);
  const slip = pumpSlip(at.pump, p, at.viscosity);
  if (at.spillTo === "pan") return (free < at.inletLimit ? free : at.inletLimit) * mixture - slip;
  const delivered = free * mixture - slip;
  return at.inletLimit === Infinity ? delivered : Math.min(delivered, at.inletLimit * mixture);
}

/**
 * What the pump delivers [m³/s at line conditions] against another pressure [Pa] than the balance found;
 * falls steadily with it.
 */
export function deliveredAt(at: BalanceConditions, linePressure: number): number {
  if (!(at.gas >= 0 && at.gas <= 1 && at.inletLimit >= 0)) refuse(at);
  const left = gasLeft(at.pump, at.inlet, linePressure);
  return supplyAt(at, 1 - at.gas + at.gas * left, linePressure);
}

/**
 * Balances pump and demand, with priority: the clutch circuit first, the cooler circuit from the overflow.
 * The regulator holds the set point while supply covers the clutch circuit; what is left feeds the cooler
 * circuit, at most in full, and the rest is spill. When supply no longer covers the clutch circuit, the
 * overflow is shut and the pressure falls to where supply meets the clutch circuit: one root, for supply
 * falls and demand rises with pressure. Writes `out`; allocates nothing.
 */
export function balance(at: BalanceConditions, out: Balance): void {
  if (!(
    at.turn >= 0 &&
    at.gas >= 0 &&
    at.gas <= 1 &&
    at.inlet >= 0 &&
    at.inletLimit >= 0 &&
    at.setPoint >= 0 &&
    at.setPoint < Infinity &&
    at.viscosity > 0
  ))
    refuse(at);
  let mixture = meetAt(at, at.setPoint, out);
  const sags = out.delivered < out.clutchFlow;
  if (sags) {
    mixture = meetAt(at, saggingPressure(at, mixture), out);
    out.delivered = out.clutchFlow; // the root leaves a rounding between them
  }
  const overflow = out.delivered - out.clutchFlow;
  feedFull(at.circuit, at, out.linePressure, out, out.lineGas);
  out.feedFull = out.feed;
  const starved = overflow < out.feedFull;
  if (starved) circuitAtFeed(at.circuit, at, overflow, out, out.lineGas);

  out.regime = sags ? 3 : starved ? 2 : 1;
  out.spill = starved ? 0 : overflow - out.feed;
  // Slip goes where the spill goes.
  const useful = (out.delivered - out.spill) / mixture;
  const free = displaced(at.pump, at.turn);
  const drawnIn = free < at.inletLimit ? free : at.inletLimit;
  out.drawn = at.spillTo === "inlet" && useful < drawnIn ? useful : drawnIn;
}

/** What the pump delivers and the clutch circuit takes at a line pressure, and the gas in the line; returns the share of what the pump takes in that is left as volume. */
function meetAt(at: BalanceConditions, p: number, out: Balance): number {
  const left = gasLeft(at.pump, at.inlet, p);
  const mixture = 1 - at.gas + at.gas * left;
  const gas = lineGas(at.gas, left);
  const supply = supplyAt(at, mixture, p);
  const density = mixtureDensity(at.density, gas);
  out.linePressure = p;
  out.lineGas = gas;
  out.delivered = supply;
  out.clutchFlow = clutchCircuitFlow(at.clutch, p, at.viscosity, density, at.setPoint);
  return mixture;
}

function refuse(at: BalanceConditions): never {
  if (!(at.turn >= 0)) impossible("turn rate of the pump", at.turn, "0 rad/s or more");
  if (!(at.gas >= 0 && at.gas <= 1)) impossible("gas fraction at the inlet", at.gas, "0 to 1");
  if (!(at.inlet >= 0)) impossible("pressure at the inlet", at.inlet, "0 Pa absolute or more");
  if (!(at.inletLimit >= 0)) impossible("largest inflow", at.inletLimit, "0 m³/s or more");
  if (!(at.viscosity > 0)) impossible("viscosity", at.viscosity, "more than 0 Pa·s");
  return impossible("set point", at.setPoint, "0 Pa or more, finite");
}

function refuseSetPoint(turbineTorque: number, temperature: number, trim: number): void {
  finite("turbine torque", turbineTorque, "N m");
  positive("temperature", temperature, "K");
  finite("trim", trim, "Pa");
}

function refuseOrifice(
  { orifice, discharge }: ClutchCircuit,
  linePressure: number,
  viscosity: number,
  density: number,
  asked: number,
): void {
  notNegative("orifice", orifice, "m");
  positive("discharge", discharge);
  notNegative("line pressure", linePressure, "Pa");
  positive("viscosity", viscosity, "Pa·s");
  positive("density", density, "kg/m³");
  notNegative("pressure asked for", asked, "Pa");
  impossible("orifice", orifice, "one that lets a finite flow through");
}
