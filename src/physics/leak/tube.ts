// The cooler line as a tube: what pressure and shaking do to its wall.
import { finite, impossible, notNegative, positive } from "../../errors.ts";

/** Outer diameter and wall [m]. */
export interface Tube {
  readonly diameter: number;
  readonly wall: number;
}

function bore(tube: Tube): number {
  positive("diameter", tube.diameter, "m");
  if (!(tube.wall > 0 && tube.wall <= tube.diameter / 2))
    impossible("wall", tube.wall, "more than 0, up to half the diameter");
  return tube.diameter - 2 * tube.wall;
}

/** Mean hoop stress [Pa] under an inner pressure [Pa]: p D_m/(2t) on the mean diameter. The axial stress is half of it. */
export function hoopStress(tube: Tube, pressure: number): number {
  bore(tube);
  finite("pressure", pressure, "Pa");
  return (pressure * (tube.diameter - tube.wall)) / (2 * tube.wall);
}

/** Hoop stress [Pa] at the bore of a thick wall under an inner pressure [Pa]: p(r_o² + r_i²)/(r_o² − r_i²). Lamé (1852). */
export function boreStress(tube: Tube, pressure: number): number {
  // With k = r_i/r_o, so that no square runs out of numbers; 1 − k is 2t/D.
  const k = bore(tube) / tube.diameter;
  finite("pressure", pressure, "Pa");
  return (pressure * (1 + k * k)) / ((1 + k) * ((2 * tube.wall) / tube.diameter));
}

/** Second moment of area of the wall [m⁴]: π(D⁴ − d⁴)/64. */
export function secondMoment(tube: Tube): number {
  const inside = bore(tube);
  const outside = tube.diameter;
  return (Math.PI / 32) * tube.wall * (outside + inside) * (outside * outside + inside * inside);
}

/** Mass of a metre of tube with the oil in it [kg/m], for densities of metal and oil [kg/m³]. */
export function massPerLength(tube: Tube, metalDensity: number, oilDensity: number): number {
  positive("metalDensity", metalDensity, "kg/m³");
  notNegative("oilDensity", oilDensity, "kg/m³");
  const inside = bore(tube);
  return (
    Math.PI * (metalDensity * tube.wall * (tube.diameter - tube.wall) + (oilDensity / 4) * inside * inside)
  );
}

/** How a span is held: β² of its first bending mode (Euler and Bernoulli). */
export const heldAt = { pinnedEnds: Math.PI ** 2, clampedEnds: 22.3733, oneEnd: 3.51602 } as const;

/**
 * First natural frequency [Hz] of a span of a length [m]: β² √(EI/m)/(2πL²), for β² from `heldAt`, a bending stiffness
 * EI [N m²] and a mass per length [kg/m].
 */
export function naturalFrequency(held: number, stiffness: number, mass: number, length: number): number {
  positive("held", held);
  positive("stiffness", stiffness, "N m²");
  positive("mass", mass, "kg/m");
  positive("length", length, "m");
  return (held * Math.sqrt(stiffness / mass)) / (2 * Math.PI * length * length);
}

/**
 * Bending stress [Pa] at the root of a line held at one end, from the movement of its free end [m]: 3E(D/2)y/L², for a
 * modulus [Pa] and a free length [m].
 */
export function tipMovementStress(tube: Tube, modulus: number, movement: number, length: number): number {
  bore(tube);
  positive("modulus", modulus, "Pa");
  finite("movement", movement, "m");
  positive("length", length, "m");
  return (1.5 * modulus * tube.diameter * movement) / (length * length);
}
