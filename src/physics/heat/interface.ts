import { finite, notNegative, positive, type Range } from "../../errors.ts";
import { peakInterfaceRise } from "./conduction.ts";
import { ierfc } from "./error-function.ts";
import { checkSolid, separatorSteel, type Solid } from "./solid.ts";

/** A constant flux since the slip began; the mean temperature comes from the lumped plate. */
export const interfaceRange: Range = {
  law: "surface of a plate heated evenly on both faces",
  quantity: "thickness / ring width",
  unit: "1",
  low: 0,
  high: 0.2,
  source: "one-dimensional conduction; Carslaw and Jaeger 1959, section 3.8 (recalled)",
};

/**
 * How far the friction surface runs ahead of the plate's mean temperature [K] after a flux [W/m²] into each face has run
 * for a duration [s]; plate thickness in metres. Starts as the semi-infinite law and settles at qL/(3k), L half the
 * thickness, once alpha t/L² passes 0.5. Exact: images at first, the slab series later, to rounding where they meet.
 */
export function interfaceRise(
  flux: number,
  duration: number,
  thickness: number,
  steel: Solid = separatorSteel,
): number {
  const L = thickness / 2;
  const Fo = (steel.diffusivity * duration) / (L * L);
  const scale = (flux * L) / steel.conductivity;
  if (!(Fo >= 0 && Fo < Infinity && Math.abs(scale) < Infinity && thickness > 0 && steel.conductivity > 0))
    refuse(flux, duration, thickness, steel);
  if (Fo === 0) return 0;
  if (Fo > 4) return scale / 3;
  if (Fo < 0.2) {
    const root = Math.sqrt(Fo);
    // The surface itself, then its images at 2L and 4L, each once from either face.
    const images = ierfc(0) + 2 * (ierfc(1 / root) + ierfc(2 / root));
    return scale * (2 * root * images - Fo);
  }
  let sum = 0;
  for (let n = 1; n < 5; n++) sum += Math.exp(-n * n * Math.PI ** 2 * Fo) / (n * n);
  return scale * (1 / 3 - (2 / Math.PI ** 2) * sum);
}

/**
 * Largest rise of the friction surface of a plate [K] over its temperature before, under a flux into each face that falls in a
 * straight line from `firstFlux` [W/m²] to zero in a duration [s], as in a shift; plate thickness in metres, none of it cooled
 * meanwhile. Once the heat has crossed the plate (Fo = alpha t/L² over 1/3) the surface is ahead of the mean by qL/(3k) and the peak is
 * (q0 L/k)(Fo/2 + 1/(18 Fo)), to 3 % from Fo 1; before that the semi-infinite law, within 8 % where they meet.
 */
export function peakPlateRise(
  firstFlux: number,
  duration: number,
  thickness: number,
  steel: Solid = separatorSteel,
): number {
  finite("firstFlux", firstFlux, "W/m²");
  positive("duration", duration, "s");
  positive("thickness", thickness, "m");
  checkSolid(steel);
  const L = thickness / 2;
  const Fo = (steel.diffusivity * duration) / (L * L);
  if (Fo < 1 / 3) return peakInterfaceRise(steel, firstFlux, duration);
  return ((firstFlux * L) / steel.conductivity) * (Fo / 2 + 1 / (18 * Fo));
}

function refuse(flux: number, duration: number, thickness: number, steel: Solid): void {
  finite("flux", flux, "W/m²");
  notNegative("duration", duration, "s");
  positive("thickness", thickness, "m");
  checkSolid(steel);
}
