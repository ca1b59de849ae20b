// The one leak law: Δp = a Q + b Q², smooth from a seep to a jet.
import { impossible, notNegative } from "../../errors.ts";

/** What an opening is to the flow: Δp = μ·viscous·Q + ρ·inertial·Q², with viscous in 1/m³ and inertial in 1/m⁴. */
export interface Opening {
  readonly viscous: number;
  readonly inertial: number;
}

/** An opening that is written anew each second while it grows. */
export interface GrowingOpening {
  viscous: number;
  inertial: number;
}

/** The coefficients of a shut opening: nothing passes, and every number stays finite. */
export const shut = 1e300;

/**
 * Flow [m³/s] out of an opening under an overpressure [Pa] of oil of a viscosity [Pa s] and density [kg/m³]:
 * Q = 2Δp/(a + √(a² + 4bΔp)). A leak does not suck: zero unless the pressure inside is higher.
 * Source: sum of the losses of Sampson (1891), Hagen and Poiseuille, and the sharp-edged orifice, each its limit.
 */
export function leakFlow(opening: Opening, overpressure: number, viscosity: number, density: number): number {
  if (!(viscosity > 0 && viscosity < Infinity)) impossible("viscosity", viscosity, "more than 0 Pa s");
  if (!(density > 0 && density < Infinity)) impossible("density", density, "more than 0 kg/m³");
  if (!(overpressure < Infinity)) impossible("overpressure", overpressure, "a finite pressure in Pa");
  if (overpressure <= 0) return 0;
  const a = viscosity * opening.viscous;
  const b = density * opening.inertial;
  if (!(a >= 0 && b >= 0)) refuse(opening);
  return (2 * overpressure) / (a + Math.sqrt(a * a + 4 * b * overpressure));
}

/** Pressure drop [Pa] that drives a flow [m³/s, 0 or more] through an opening: `leakFlow` read the other way. */
export function leakPressure(opening: Opening, flow: number, viscosity: number, density: number): number {
  if (!(viscosity > 0 && viscosity < Infinity)) impossible("viscosity", viscosity, "more than 0 Pa s");
  if (!(density > 0 && density < Infinity)) impossible("density", density, "more than 0 kg/m³");
  if (!(flow >= 0 && flow < Infinity)) impossible("flow", flow, "0 m³/s or more");
  if (!(
    opening.viscous >= 0 &&
    opening.viscous < Infinity &&
    opening.inertial >= 0 &&
    opening.inertial < Infinity
  ))
    refuse(opening);
  return viscosity * opening.viscous * flow + density * opening.inertial * flow * flow;
}

function refuse(opening: Opening): void {
  notNegative("viscous", opening.viscous, "1/m³");
  notNegative("inertial", opening.inertial, "1/m⁴");
}
