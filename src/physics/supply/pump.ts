// The pump: what it displaces, what slips back, and what becomes of the gas that it draws.

import { atmosphere } from "../fluid/surroundings.ts";
import { finite, fraction, impossible, notNegative, positive, type Range } from "../../errors.ts";

/**
 * A positive-displacement pump: displacement [m³/rev], Wilson's slip coefficient (`slip`; about 2e-8 new to
 * 2e-7 worn, assumed), the share of the drawn gas that is dissolved by delivery (`dissolved`, 0 to 1,
 * unpublished), the polytropic exponent of the rest (1 slow to 1.4 quick) and the mechanical efficiency
 * (above 0 to 1).
 */
export interface Pump {
  readonly displacement: number;
  readonly slip: number;
  readonly dissolved: number;
  readonly exponent: number;
  readonly mechanical: number;
}

/**
 * Wilson's volumetric efficiency is linear in pressure over speed and viscosity as long as slip stays a
 * correction.
 */
export const slipRange: Range = {
  law: "laminar pump slip",
  quantity: "slip over displaced flow, Cs p/(µ ω)",
  unit: "1",
  low: 0,
  high: 0.5,
  source: "Wilson 1948; McCandlish and Dorey 1984",
};

/** Displaced flow [m³/s] at the turn rate [rad/s]: D ω/2π. */
export function displaced(pump: Pump, turn: number): number {
  const flow = (pump.displacement * turn) / (2 * Math.PI);
  if (!(flow >= 0 && flow < Infinity)) refuseTurn(pump, turn);
  return flow;
}

/**
 * Slip [m³/s] back to the inlet against the line pressure [Pa]: Cs D p/(2π µ), viscosity [Pa·s] (Wilson
 * 1948).
 */
export function pumpSlip(pump: Pump, linePressure: number, viscosity: number): number {
  const slip = (pump.slip * pump.displacement * linePressure) / (2 * Math.PI * viscosity);
  if (!(slip >= 0 && slip < Infinity && viscosity > 0)) refuseSlip(pump, linePressure, viscosity);
  return slip;
}

/**
 * What is left of a volume of drawn gas at line pressure (0 to 1): the share that is not dissolved,
 * compressed from the inlet pressure [Pa abs] to the line pressure [Pa]: (1 - κ)(p_in/(p + p_atm))^(1/k).
 */
export function gasLeft(pump: Pump, inletAbs: number, linePressure: number): number {
  const ratio = Math.max(inletAbs, 0) / (linePressure + atmosphere);
  const share = 1 - pump.dissolved;
  if (!(share >= 0 && share <= 1 && ratio < Infinity && linePressure >= 0 && pump.exponent > 0))
    refuseGas(pump, inletAbs, linePressure);
  return share * (pump.exponent === 1 ? ratio : ratio ** (1 / pump.exponent)); // a power costs more than the rest
}

/**
 * Mixture delivered into the line [m³/s at line conditions]: D ω/2π [(1 - x) + x r] - Cs D p/(2π µ), with the
 * gas fraction x at the inlet and r of `gasLeft`. Below zero the pump could not hold that pressure.
 */
export function delivered(
  pump: Pump,
  turn: number,
  gas: number,
  left: number,
  linePressure: number,
  viscosity: number,
): number {
  fraction("gas fraction at the inlet", gas);
  notNegative("share of the gas that is left", left);
  return displaced(pump, turn) * (1 - gas + gas * left) - pumpSlip(pump, linePressure, viscosity);
}

/** Gas fraction in the line: x r/((1 - x) + x r); 0 when nothing of the gas is left. */
export function lineGas(gas: number, left: number): number {
  const rest = gas * left;
  if (!(gas <= 1 && rest >= 0 && rest < Infinity)) refuseLeft(gas, left);
  return rest > 0 ? rest / (1 - gas + rest) : 0;
}

/** Torque that the pump takes [N m]: D p/(2π η). */
export function pumpTorque(pump: Pump, linePressure: number): number {
  const torque = (pump.displacement * linePressure) / (2 * Math.PI * pump.mechanical);
  if (!(torque >= 0 && torque < Infinity && pump.mechanical > 0 && pump.mechanical <= 1))
    refuseTorque(pump, linePressure);
  return torque;
}

function refuseTurn(pump: Pump, turn: number): void {
  notNegative("displacement", pump.displacement, "m³/rev");
  notNegative("turn rate of the pump", turn, "rad/s");
}

function refuseSlip(pump: Pump, linePressure: number, viscosity: number): void {
  notNegative("displacement", pump.displacement, "m³/rev");
  notNegative("slip coefficient", pump.slip);
  notNegative("line pressure", linePressure, "Pa");
  positive("viscosity", viscosity, "Pa·s");
}

function refuseGas(pump: Pump, inletAbs: number, linePressure: number): void {
  fraction("dissolved share", pump.dissolved);
  finite("pressure at the inlet", inletAbs, "Pa");
  notNegative("line pressure", linePressure, "Pa");
  positive("polytropic exponent", pump.exponent);
}

function refuseLeft(gas: number, left: number): void {
  fraction("gas fraction at the inlet", gas);
  notNegative("share of the gas that is left", left);
}

function refuseTorque(pump: Pump, linePressure: number): void {
  notNegative("displacement", pump.displacement, "m³/rev");
  notNegative("line pressure", linePressure, "Pa");
  if (!(pump.mechanical > 0 && pump.mechanical <= 1))
    impossible("mechanical efficiency", pump.mechanical, "above 0 to 1");
}
