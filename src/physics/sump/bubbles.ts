// Why a low pan foams before its pickup is bare: the fluid has less time there to give up its air.

import { gravity as g } from "../fluid/surroundings.ts";
import { impossible, type Range } from "../../errors.ts";

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
  if (!(viscosity > 0)) impossible("viscosity", viscosity, "more than 0 Pa·s");
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
 * flow / area.
 */
export function smallestSeparated(
  flow: number,
  area: number,
  viscosity: number,
  densityDifference: number,
): number {
  if (!(area > 0 && densityDifference > 0))
    impossible("area or density difference", Math.min(area, densityDifference), "more than 0");
  return Math.sqrt((18 * viscosity * Math.max(flow, 0)) / (area * densityDifference * g));
}

/**
 * Mean time [s] that fluid rests in the pan: volume [m³] over flow [m³/s]; 0 s in an empty pan, the largest
 * number at no flow.
 */
export function residenceTime(volume: number, flow: number): number {
  if (!(volume > 0)) return 0;
  return flow > 0 ? Math.min(volume / flow, Number.MAX_VALUE) : Number.MAX_VALUE;
}
