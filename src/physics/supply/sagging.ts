// Where a line stands that cannot hold its set point: one equation, solved by Newton's steps within a bracket.

import { atmosphere } from "../fluid/surroundings.ts";
import { mixtureDensity } from "./cooler-circuit.ts";
import { displaced, gasLeft, type Pump, pumpSlip } from "./pump.ts";

/** A step that changes the root of the pressure by no more than this share leaves an error of its square. */
const NEARLY = 1e-8;

/** What decides it: the part of the balance's conditions that names pump, gas and clutch circuit. */
interface Sagging {
  readonly pump: Pump;
  readonly clutch: { readonly orifice: number; readonly discharge: number; readonly laminar: number };
  readonly spillTo: "inlet" | "pan";
  readonly turn: number;
  readonly gas: number;
  readonly inlet: number;
  readonly inletLimit: number;
  readonly setPoint: number;
  readonly viscosity: number;
  readonly density: number;
}

/**
 * Pressure [Pa] at which the pump delivers what the clutch circuit takes, while it cannot at the set point, where the share `atSetPoint`
 * of what it takes in is left as volume. With s = √p it is the root of
 *
 *   V m - (c + G/µ) s² - min(B √(2/(ρ l)), K) s,   m = 1 - x + x r(p),   l = (1 - x)/m
 *
 * V what is displaced, c p the pump's slip, G p/µ the gaps of the clutch circuit, B √(2p/ρl) its orifice (area times discharge) and K s
 * what creeps through it at most; x gas of the volume fraction at the inlet, of which the share r is left at p; l the liquid's share in
 * the line. The inlet limits V where the spill goes to the pan; else it limits what is delivered, to so many times m.
 * Supply falls and demand rises, so there is one root. Each step narrows the bracket it lies in, and halves it where Newton's leaves it;
 * they start from the quadratic in s of a gas that expands evenly, as fast as at the set point, which is exact without gas.
 */
export function saggingPressure(at: Sagging, atSetPoint: number): number {
  const { pump, clutch, viscosity, gas, inletLimit } = at;
  const toPan = at.spillTo === "pan";
  const free = displaced(pump, at.turn);
  const volume = toPan && inletLimit < free ? inletLimit : free;
  const most = toPan ? Infinity : inletLimit;
  if (!(volume > 0 && most > 0)) return 0;
  const slips = pumpSlip(pump, 1, viscosity);
  const gaps = clutch.laminar / viscosity;
  const { orifice, discharge } = clutch;
  const area = (Math.PI / 4) * orifice * orifice * discharge;
  const lightest = mixtureDensity(at.density, 1);
  const creeps = (orifice * orifice * orifice * Math.sqrt(at.setPoint)) / (24 * viscosity);

  const liquid = (at.density * (1 - gas)) / atSetPoint;
  const sharp = area * Math.sqrt(2 / (liquid > lightest ? liquid : lightest));
  const linear = sharp < creeps ? sharp : creeps;
  const expands = (atSetPoint - 1 + gas) / (pump.exponent * (at.setPoint + atmosphere));
  const against = slips + gaps + volume * expands;
  const supplied = volume * (atSetPoint + expands * at.setPoint);
  let s = (2 * supplied) / (linear + Math.sqrt(linear * linear + 4 * against * supplied));
  let low = 0;
  let high = Math.sqrt(at.setPoint);
  if (!(s > low && s < high)) {
    if (!(1 - gas + gas * gasLeft(pump, at.inlet, 0) > 0)) return 0; // all of it dissolves
    s = 0.5 * high;
  }
  for (;;) {
    const p = s * s;
    const left = gas > 0 ? gas * gasLeft(pump, at.inlet, p) : 0;
    const mixture = 1 - gas + left;
    const shrinks = left / (pump.exponent * (p + atmosphere)); // -dm/dp
    const density = (at.density * (1 - gas)) / mixture;
    const passes = area * Math.sqrt(2 / (density > lightest ? density : lightest));
    const through = creeps < passes ? creeps : passes;
    const limited = volume * mixture - slips * p > most * mixture;
    const supply = limited ? most * mixture : volume * mixture - slips * p;
    const surplus = supply - gaps * p - through * s;
    if (surplus > 0) low = s;
    else high = s;
    const supplyFalls = limited ? most * shrinks : volume * shrinks + slips;
    // The orifice passes the more the lighter the mixture, which loses gas as the pressure rises.
    const heavier = density > lightest && passes <= creeps ? (passes * shrinks * p) / mixture : 0;
    const falls = 2 * s * (supplyFalls + gaps) + through - heavier;
    let next = s + surplus / falls;
    if (Math.abs(next - s) <= NEARLY * s) return next * next;
    if (!(next > low && next < high)) {
      next = low + 0.5 * (high - low);
      if (next === low || next === high) return s * s;
    }
    s = next;
  }
}
