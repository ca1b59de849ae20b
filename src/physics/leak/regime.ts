// What a person sees at the leak: dry, weep, drip, stream or spray.
import { impossible, notNegative, positive, type Range } from "../../errors.ts";
import { airDensity, gravity } from "../fluid/surroundings.ts";
import { dropVolume, flowFromDrops } from "./drop.ts";

export type Regime = "dry" | "weep" | "drip" | "stream" | "spray";

export const jettingRange: Range = {
  law: "dripping to jetting",
  quantity: "Ohnesorge number",
  unit: "1",
  low: 0,
  high: 0.1,
  source: "Clanet and Lasheras, J. Fluid Mech. 383 (1999) 307-326: derived for water; 50 % for cold oil",
};

/**
 * Weber number ρV²D/σ at which dripping from a tube turns to a jet, for a density [kg/m³], surface tension [N/m] and
 * the tube's inner and (wetted) outer diameter [m]: 4 (Bo_o/Bo)[X − √(X² − 1)]², X = 1 + 0.37 Bo_o Bo, with Bond
 * numbers Bo = √(ρgD²/(2σ)). Tends to 4 for a fine hole whose outside stays dry.
 * Source: Clanet and Lasheras (1999).
 */
export function jettingWeber(density: number, surfaceTension: number, inner: number, outer: number): number {
  positive("density", density, "kg/m³");
  positive("surfaceTension", surfaceTension, "N/m");
  positive("inner", inner, "m");
  if (!(outer >= inner && outer < Infinity)) impossible("outer", outer, "no less than the inner diameter");
  const X = 1 + (0.37 * density * gravity * inner * outer) / (2 * surfaceTension);
  const shrink = 1 / (X + Math.sqrt(X * X - 1)); // X − √(X² − 1) without its cancellation
  return 4 * (outer / inner) * shrink * shrink;
}

/** Mean velocity in the tube [m/s] at which dripping turns to a jet; arguments as `jettingWeber`. */
export function jettingVelocity(
  density: number,
  surfaceTension: number,
  inner: number,
  outer: number,
): number {
  return Math.sqrt(
    (jettingWeber(density, surfaceTension, inner, outer) * surfaceTension) / (density * inner),
  );
}

/**
 * Pressure [Pa] that a dry exit of a diameter [m] holds back: 4σ cos θ/d for a contact angle θ [rad, 0 to π] of the
 * surface that the oil would have to spread over. It is lost once the outside is wet. Source: Young and Laplace.
 */
export function holdOffPressure(surfaceTension: number, diameter: number, contactAngle: number): number {
  notNegative("surfaceTension", surfaceTension, "N/m");
  positive("diameter", diameter, "m");
  if (!(contactAngle >= 0 && contactAngle <= Math.PI)) impossible("contactAngle", contactAngle, "0 to π rad");
  return (4 * surfaceTension * Math.max(0, Math.cos(contactAngle))) / diameter;
}

/** Weber number of the air against a jet, ρ_air V² d/σ: above 13 the wind of the jet's own speed tears it to mist. */
export function airWeber(velocity: number, diameter: number, surfaceTension: number): number {
  if (!(Math.abs(velocity) < Infinity)) impossible("velocity", velocity, "a finite speed in m/s");
  positive("diameter", diameter, "m");
  positive("surfaceTension", surfaceTension, "N/m");
  return (airDensity * velocity * velocity * diameter) / surfaceTension;
}

const tearing = 13; // Ranz (1958), start of the second wind-induced breakup
const dropsOfAWeep = 0.1; // fewer than a drop in ten minutes is a damp place

/**
 * What shows. `exitDiameter` [m] is that of a circle as large as the opening; `dripRadius` [m] is the wetted patch at
 * the low point to which the oil runs, where drops form (1.5 to 4 mm).
 *
 * dry: no flow. weep: below one drop in ten minutes. drip: up to the flow that Clanet and Lasheras give at the low
 * point. stream: above it. spray: the jet leaves the hole so fast (never above √(2Δp/ρ)) that the air tears it,
 * Weber number of the air above 13. A finer, slower jet hits the next surface and drips from there: it counts as drip.
 */
export function regime(
  flow: number,
  exitDiameter: number,
  dripRadius: number,
  density: number,
  surfaceTension: number,
  overpressure: number,
): Regime {
  notNegative("flow", flow, "m³/s");
  notNegative("exitDiameter", exitDiameter, "m");
  positive("dripRadius", dripRadius, "m");
  if (!(Math.abs(overpressure) < Infinity))
    impossible("overpressure", overpressure, "a finite pressure in Pa");
  const drip = 2 * dripRadius;
  const streaming = jettingVelocity(density, surfaceTension, drip, drip) * (Math.PI / 4) * drip * drip;
  if (flow === 0 || exitDiameter === 0) return "dry";
  if (flow < flowFromDrops(dropsOfAWeep, dropVolume(dripRadius, surfaceTension, density))) return "weep";
  const mean = flow / ((Math.PI / 4) * exitDiameter * exitDiameter);
  const ideal = Math.sqrt((2 * Math.max(0, overpressure)) / density);
  if (airWeber(Math.min(mean, ideal), exitDiameter, surfaceTension) > tearing) return "spray";
  return flow < streaming ? "drip" : "stream";
}
