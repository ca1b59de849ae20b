// What clings to a surface that oil has run over: a sloped shield keeps a film, a flat one a puddle, its lip a bead.
import { impossible, notNegative, positive, type Range } from "../../errors.ts";
import { gravity } from "../fluid/surroundings.ts";
import { capillaryLength } from "./drop.ts";

export const filmRange: Range = {
  law: "draining film",
  quantity: "film thickness",
  unit: "m",
  low: 1e-6,
  high: 1e-3,
  source:
    "Jeffreys (1930): thin, slow, no surface tension; from when the film has thinned below its first thickness",
};

/**
 * Thickness [m] of a draining film at a distance below its upper edge [m], so many seconds after the oil stopped, on a
 * surface at an angle to the horizontal [rad, above 0 to π/2]: √(μ z/(ρ g sin β t)).
 * Source: Jeffreys, Proc. Camb. Phil. Soc. 26 (1930) 204-205.
 */
export function filmThickness(
  viscosity: number,
  density: number,
  distance: number,
  seconds: number,
  slope: number,
): number {
  positive("viscosity", viscosity, "Pa s");
  positive("density", density, "kg/m³");
  notNegative("distance", distance, "m");
  positive("seconds", seconds, "s");
  if (!(slope > 0 && slope <= Math.PI / 2)) impossible("slope", slope, "more than 0, up to π/2 rad");
  return Math.sqrt(((viscosity / density) * distance) / (gravity * Math.sin(slope) * seconds));
}

/** Oil kept on a sloped surface of a length down the slope [m], as a volume for each area [m³/m²]: 2/3 of the film at its foot. */
export function filmRetention(
  viscosity: number,
  density: number,
  length: number,
  seconds: number,
  slope: number,
): number {
  return (2 / 3) * filmThickness(viscosity, density, length, seconds, slope);
}

/**
 * Film [m] that a surface carries as oil leaves it at a speed [m/s] (a tilting tray, a falling level): 0.944 capillary
 * lengths times (μU/σ)^⅔, for slow motion (μU/σ below 0.01).
 * Source: Landau and Levich, Acta Physicochim. URSS 17 (1942) 42-54.
 */
export function withdrawnFilm(
  viscosity: number,
  density: number,
  surfaceTension: number,
  speed: number,
): number {
  positive("viscosity", viscosity, "Pa s");
  positive("surfaceTension", surfaceTension, "N/m");
  notNegative("speed", speed, "m/s");
  return 0.944 * capillaryLength(surfaceTension, density) * ((viscosity * speed) / surfaceTension) ** (2 / 3);
}

/**
 * Depth [m] of a wide puddle on a flat surface that it meets at a contact angle [rad]: 2√(σ/ρg) sin(θ/2). A flat
 * shield holds this much on what it wets before it runs to the rim; oil spreads on clean metal and clings at θ near 0.
 * Source: de Gennes, Brochard-Wyart and Quéré, Capillarity and Wetting Phenomena (2004), chapter 2.
 */
export function puddleDepth(surfaceTension: number, density: number, contactAngle: number): number {
  if (!(contactAngle >= 0 && contactAngle <= Math.PI)) impossible("contactAngle", contactAngle, "0 to π rad");
  return 2 * capillaryLength(surfaceTension, density) * Math.sin(contactAngle / 2);
}

/**
 * Oil [m³] that stays as a bead along a lower edge of a length [m] when a wetted sheet has drained: 0.65 σ/(ρg) times
 * the length. Source: Konishi, Hirohata, Kubota and Yuri, J. Metal Finish. Soc. Japan 25 (1974) 2-7: 0.65 ± 0.1.
 */
export function edgeBead(surfaceTension: number, density: number, edgeLength: number): number {
  notNegative("edgeLength", edgeLength, "m");
  return 0.65 * capillaryLength(surfaceTension, density) ** 2 * edgeLength;
}
