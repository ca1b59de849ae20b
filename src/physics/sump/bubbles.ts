// Why a low pan foams before its pickup is bare: the fluid has less time there to give up its air.

import { gravity as g } from "../fluid/surroundings.ts";
import { finite, notNegative, positive, type Range } from "../../errors.ts";

/** Creeping rise. */
export const bubbleRange: Range = {
  law: "Stokes rise of a bubble",
  quantity: "Reynolds number of the bubble, ρ v d / µ",
  unit: "1",
  low: 0,
  high: 1,
  source: "Stokes 1851; Clift, Grace and Weber 1978",
};

/**
 * Rise [m/s] of a bubble with a rigid (contaminated) surface: Δρ g d²/(18 µ); diameter [m], viscosity [Pa·s],
 * density difference [kg/m³].
 */
export function bubbleRise(diameter: number, viscosity: number, densityDifference: number): number {
  notNegative("diameter", diameter, "m");
  positive("viscosity", viscosity, "Pa·s");
  notNegative("density difference", densityDifference, "kg/m³");
  return (densityDifference * g * diameter * diameter) / (18 * viscosity);
}

/**
 * Rise [m/s] of a bubble with a clean, mobile surface: 1.5 times the rigid one (Hadamard and Rybczynski 1911,
 * gas of no viscosity).
 */
export function cleanBubbleRise(diameter: number, viscosity: number, densityDifference: number): number {
  return 1.5 * bubbleRise(diameter, viscosity, densityDifference);
}

/**
 * Smallest bubble [m] that a pan of the surface area [m²] can still separate from the flow [m³/s]: rise =
 * flow / area. None for a flow of nothing or backwards.
 */
export function smallestSeparated(
  flow: number,
  area: number,
  viscosity: number,
  densityDifference: number,
): number {
  finite("flow", flow, "m³/s");
  positive("area", area, "m²");
  positive("viscosity", viscosity, "Pa·s");
  positive("density difference", densityDifference, "kg/m³");
  return Math.sqrt((18 * viscosity * Math.max(flow, 0)) / (area * densityDifference * g));
}

/**
 * Mean time [s] that fluid rests in the pan: volume [m³] over flow [m³/s]; 0 s in an empty pan, the largest
 * number at no flow.
 */
export function residenceTime(volume: number, flow: number): number {
  finite("volume", volume, "m³");
  finite("flow", flow, "m³/s");
  if (volume <= 0) return 0;
  return flow > 0 ? Math.min(volume / flow, Number.MAX_VALUE) : Number.MAX_VALUE;
}
