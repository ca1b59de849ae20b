// A parked car: the level sinks through the leak under its own head.
import { impossible, notNegative, positive } from "../../errors.ts";
import { gravity } from "../fluid/surroundings.ts";
import { leakFlow, type Opening } from "./flow.ts";

function refuse(area: number, from: number, to: number): void {
  positive("area", area, "m²");
  if (!(from >= to && from < Infinity)) impossible("from", from, "no lower than the level to which it sinks");
}

/**
 * Seconds in which the level over an opening sinks from one height to another [m, above the opening] in a vessel of
 * constant plan area [m²], for oil of a viscosity [Pa s] and density [kg/m³]. Exact for Δp = aQ + bQ²:
 * t = (S/ρg)[a ln(Q₁/Q₂) + 2b(Q₁ − Q₂)]. The last film never drains by this law, so the lower height is above zero; through a shut opening the level never sinks (Infinity).
 */
export function drainTime(
  opening: Opening,
  area: number,
  from: number,
  to: number,
  viscosity: number,
  density: number,
): number {
  refuse(area, from, to);
  positive("to", to, "m");
  const weight = density * gravity;
  const Q1 = leakFlow(opening, weight * from, viscosity, density);
  const Q2 = leakFlow(opening, weight * to, viscosity, density);
  if (!(Q2 > 0)) return from === to ? 0 : Infinity;
  const a = viscosity * opening.viscous;
  const b = density * opening.inertial;
  return (area / weight) * (a * Math.log(Q1 / Q2) + 2 * b * (Q1 - Q2));
}

/** Seconds after which a slow, viscous leak has let the head sink to 1/e: S μ viscous/(ρ g). */
export function drainTimeConstant(
  opening: Opening,
  area: number,
  viscosity: number,
  density: number,
): number {
  positive("area", area, "m²");
  positive("viscosity", viscosity, "Pa s");
  positive("density", density, "kg/m³");
  notNegative("viscous", opening.viscous, "1/m³");
  return (area * viscosity * opening.viscous) / (density * gravity);
}

/** Newton's steps come nearer from one side and end when what is left is less than this share, as each squares what the last one left; none needs so many. */
const MOST_STEPS = 200;
const SAME = 1e-11;

/**
 * Height [m] left over the opening after so many seconds: `drainTime` read the other way. With y = ln(Q₁/Q₂) it says
 * a y + 2bQ₁(1 − e^(−y)) = ρg t/S, which rises and bends down: Newton's method comes to its root from below.
 */
export function levelAfter(
  opening: Opening,
  area: number,
  from: number,
  seconds: number,
  viscosity: number,
  density: number,
): number {
  if (!(area > 0 && area < Infinity && from >= 0 && from < Infinity && seconds >= 0 && seconds < Infinity)) {
    notNegative("seconds", seconds, "s");
    refuse(area, from, 0);
  }
  if (from === 0 || seconds === 0) return from;
  const weight = density * gravity;
  const first = leakFlow(opening, weight * from, viscosity, density);
  if (!(first > 0)) return from; // shut
  const a = viscosity * opening.viscous;
  const b = density * opening.inertial;
  const passed = (weight * seconds) / area;
  const jet = 2 * b * first;
  let y = passed / (a + jet);
  for (let step = 0; step < MOST_STEPS; step++) {
    const left = Math.exp(-y);
    const slope = a + jet * left;
    const ahead = (passed - a * y - jet * (1 - left)) / slope;
    if (ahead > 0) y += ahead;
    if (0.5 * jet * left * ahead * ahead <= SAME * y * slope) break;
  }
  const last = first * Math.exp(-y);
  return Math.min(from, ((a + b * last) * last) / weight);
}

/**
 * Seconds in which a vessel of constant plan area [m²] sinks from one height to another [m] through a large hole of an
 * area [m²] and discharge coefficient, viscosity left out: 2S(√h₁ − √h₂)/(C A √(2g)). Source: Torricelli.
 */
export function torricelliTime(
  area: number,
  holeArea: number,
  discharge: number,
  from: number,
  to: number,
): number {
  refuse(area, from, to);
  notNegative("to", to, "m");
  positive("holeArea", holeArea, "m²");
  if (!(discharge > 0 && discharge <= 1)) impossible("discharge", discharge, "more than 0, up to 1");
  return (2 * area * (Math.sqrt(from) - Math.sqrt(to))) / (discharge * holeArea * Math.sqrt(2 * gravity));
}
