// The size of a falling drop, and drops a minute to and from flow.
import { impossible, notNegative, positive, type Range } from "../../errors.ts";
import { gravity } from "../fluid/surroundings.ts";

export const dropRange: Range = {
  law: "drop that falls from a wetted tip",
  quantity: "tip radius over cube root of drop volume",
  unit: "1",
  low: 0.3,
  high: 1.2,
  source: "Harkins and Brown, J. Am. Chem. Soc. 41 (1919) 499; slow dripping of a modestly viscous liquid",
};

const widest = 1.2; // where the measurements end

/**
 * Share f of the ideal (Tate) drop that really falls, at x = r/V^⅓ from 0 to 1.2.
 * Source: Lee, Chan and Pogaku, Chem. Eng. Comm. 195 (2008) 889-924, fitted to Harkins and Brown (1919).
 */
export function harkinsBrown(x: number): number {
  if (!(x >= 0)) impossible("x", x, "0 or more");
  const y = Math.min(x, widest);
  return (
    1 + y * (-0.9121 + y * (-2.109 + y * (13.38 + y * (-27.29 + y * (27.53 + y * (-13.58 + y * 2.593))))))
  );
}

/** Length [m] on which surface tension [N/m] and weight balance: √(σ/(ρg)). About 1.9 mm for oil. */
export function capillaryLength(surfaceTension: number, density: number): number {
  notNegative("surfaceTension", surfaceTension, "N/m");
  positive("density", density, "kg/m³");
  return Math.sqrt(surfaceTension / (density * gravity));
}

/** Volume [m³] of the largest drop that can hang under a wetted flat: 18.96 capillary lengths cubed (Padday and Pitt 1973). */
export function largestPendantDrop(surfaceTension: number, density: number): number {
  return 18.96 * capillaryLength(surfaceTension, density) ** 3;
}

/**
 * Volume [m³] of a drop that falls from a wetted tip of a radius [m], for a surface tension [N/m] and density [kg/m³]:
 * V = 2πrσ f(r/V^⅓)/(ρg). Wider than the measurements go, f stays as it is and the drop no larger than can hang.
 * Source: Tate (1864); Harkins and Brown (1919).
 */
export function dropVolume(tipRadius: number, surfaceTension: number, density: number): number {
  positive("tipRadius", tipRadius, "m");
  positive("surfaceTension", surfaceTension, "N/m");
  const length = capillaryLength(surfaceTension, density);
  const ideal = 2 * Math.PI * tipRadius * length * length;
  // Each turn shrinks the error of the last to a sixth or less: f changes slowly beside the cube root.
  let volume = 0.65 * ideal;
  for (let turn = 0; turn < 30; turn += 1) {
    const next = ideal * harkinsBrown(tipRadius / Math.cbrt(volume));
    const settled = Math.abs(next - volume) < 1e-14 * next;
    volume = next;
    if (settled) break;
  }
  return Math.min(volume, largestPendantDrop(surfaceTension, density));
}

/** Drops a minute that a flow [m³/s] makes with drops of a volume [m³]. */
export function dropsPerMinute(flow: number, dropVolume: number): number {
  notNegative("flow", flow, "m³/s");
  positive("dropVolume", dropVolume, "m³");
  return (60 * flow) / dropVolume;
}

/** Flow [m³/s] behind a count of drops a minute, for drops of a volume [m³]. */
export function flowFromDrops(dropsPerMinute: number, dropVolume: number): number {
  notNegative("dropsPerMinute", dropsPerMinute);
  positive("dropVolume", dropVolume, "m³");
  return (dropsPerMinute * dropVolume) / 60;
}
