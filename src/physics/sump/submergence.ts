// Submergence that pump-station practice asks for: fitted on water in pipes of 0.1 m and more. For a
// transmission it asks for more fluid than a healthy pan holds, so it is shown beside the level and never
// decides anything.

import { gravity as g } from "../fluid/surroundings.ts";
import { finite, positive, type Range } from "../../errors.ts";

/** Where the criteria for pump stations were fitted. */
export const submergenceRange: Range = {
  law: "submergence against vortices",
  quantity: "Reynolds number of the inlet, V D / ν",
  unit: "1",
  low: 1e5,
  high: 1e8,
  source: "water in inlets of 0.1 m and more; ANSI/HI 9.8",
};

/** Mean speed in a round bore [m/s]: flow [m³/s] over π D²/4. */
export function boreSpeed(diameter: number, flow: number): number {
  positive("bore", diameter, "m");
  finite("flow", flow, "m³/s");
  return (4 * flow) / (Math.PI * diameter * diameter);
}

/** Froude number of an inlet, V/√(g D). */
export function inletFroude(diameter: number, speed: number): number {
  positive("bore", diameter, "m");
  finite("speed", speed, "m/s");
  return speed / Math.sqrt(g * diameter);
}

/**
 * Submergence [m] of a bell of the outside diameter [m] at the flow [m³/s]: S = D (1 + 2.3 Fr). ANSI/HI 9.8.
 */
export function submergenceByBell(diameter: number, flow: number): number {
  return diameter * (1 + 2.3 * inletFroude(diameter, boreSpeed(diameter, flow)));
}

/**
 * Submergence [m] by Gordon (1970): S = C V √D, C = 0.545 for a symmetric and 0.725 for a lateral approach
 * [s/√m].
 */
export function submergenceByGordon(
  diameter: number,
  flow: number,
  approach: "symmetric" | "lateral" = "lateral",
): number {
  return (approach === "symmetric" ? 0.545 : 0.725) * boreSpeed(diameter, flow) * Math.sqrt(diameter);
}

/**
 * Depth [m] of the dip over a vortex of the circulation [m²/s] and core radius [m]: ln 2 Γ²/(4 π² g r²)
 * (Lamb-Oseen profile, integrated).
 */
export function vortexDip(circulation: number, coreRadius: number): number {
  finite("circulation", circulation, "m²/s");
  positive("core radius", coreRadius, "m");
  return (Math.LN2 * (circulation / (2 * Math.PI * coreRadius)) ** 2) / g;
}
