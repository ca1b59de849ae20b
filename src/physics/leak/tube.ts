// The cooler line as a tube: what pressure and shaking do to its wall.
import { impossible } from "../../errors.ts";

/** Outer diameter and wall [m]. */
export interface Tube {
  readonly diameter: number;
  readonly wall: number;
}

function bore(tube: Tube): number {
  if (!(tube.diameter > 0 && tube.diameter < Infinity))
    impossible("diameter", tube.diameter, "more than 0 m");
  if (!(tube.wall > 0 && tube.wall <= tube.diameter / 2))
    impossible("wall", tube.wall, "more than 0, up to half the diameter");
  return tube.diameter - 2 * tube.wall;
}

/** Mean hoop stress [Pa] under an inner pressure [Pa]: p D_m/(2t) on the mean diameter. The axial stress is half of it. */
export function hoopStress(tube: Tube, pressure: number): number {
  bore(tube);
  return (pressure * (tube.diameter - tube.wall)) / (2 * tube.wall);
}

/** Hoop stress [Pa] at the bore of a thick wall under an inner pressure [Pa]: p(r_o² + r_i²)/(r_o² − r_i²). Lamé (1852). */
export function boreStress(tube: Tube, pressure: number): number {
  const inner = bore(tube) ** 2;
  const outer = tube.diameter ** 2;
  return (pressure * (outer + inner)) / (outer - inner);
}

/** Second moment of area of the wall [m⁴]: π(D⁴ − d⁴)/64. */
export function secondMoment(tube: Tube): number {
  return (Math.PI / 64) * (tube.diameter ** 4 - bore(tube) ** 4);
}

/** Mass of a metre of tube with the oil in it [kg/m], for densities of metal and oil [kg/m³]. */
export function massPerLength(tube: Tube, metalDensity: number, oilDensity: number): number {
  if (!(metalDensity > 0 && metalDensity < Infinity))
    impossible("metalDensity", metalDensity, "more than 0 kg/m³");
  if (!(oilDensity >= 0 && oilDensity < Infinity)) impossible("oilDensity", oilDensity, "0 kg/m³ or more");
  const inside = bore(tube) ** 2;
  return (Math.PI / 4) * (metalDensity * (tube.diameter ** 2 - inside) + oilDensity * inside);
}

/** How a span is held: β² of its first bending mode (Euler and Bernoulli). */
export const heldAt = { pinnedEnds: Math.PI ** 2, clampedEnds: 22.3733, oneEnd: 3.51602 } as const;

/**
 * First natural frequency [Hz] of a span of a length [m]: β² √(EI/m)/(2πL²), for β² from `heldAt`, a bending stiffness
 * EI [N m²] and a mass per length [kg/m].
 */
export function naturalFrequency(held: number, stiffness: number, mass: number, length: number): number {
  if (!(held > 0 && held < Infinity)) impossible("held", held, "more than 0");
  if (!(stiffness > 0 && stiffness < Infinity)) impossible("stiffness", stiffness, "more than 0 N m²");
  if (!(mass > 0 && mass < Infinity)) impossible("mass", mass, "more than 0 kg/m");
  if (!(length > 0 && length < Infinity)) impossible("length", length, "more than 0 m");
  return (held * Math.sqrt(stiffness / mass)) / (2 * Math.PI * length * length);
}

/**
 * Bending stress [Pa] at the root of a line held at one end, from the movement of its free end [m]: 3E(D/2)y/L², for a
 * modulus [Pa] and a free length [m].
 */
export function tipMovementStress(tube: Tube, modulus: number, movement: number, length: number): number {
  bore(tube);
  if (!(modulus > 0 && modulus < Infinity)) impossible("modulus", modulus, "more than 0 Pa");
  if (!(length > 0 && length < Infinity)) impossible("length", length, "more than 0 m");
  return (1.5 * modulus * tube.diameter * movement) / (length * length);
}
