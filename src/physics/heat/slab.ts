import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";
import { ierfc } from "./error-function.ts";
import { checkSolid, type Solid } from "./solid.ts";

/** Even heating of both faces; the series is exact, so only the geometry limits it. */
export const slabRange: Range = {
  law: "plate heated evenly on both faces",
  quantity: "thickness / ring width",
  unit: "1",
  low: 0,
  high: 0.2,
  source: "one-dimensional conduction; Carslaw and Jaeger 1959, section 3.8 (recalled)",
};

function check(plate: Solid, thickness: number, flux: number, time: number): void {
  checkSolid(plate);
  finite("flux", flux, "W/m²");
  positive("thickness", thickness, "m");
  notNegative("time", time, "s");
}

/** Mean rise [K] of a plate of a given thickness [m] that takes a flux [W/m²] on each face for a time [s]. */
export function lumpedRise(plate: Solid, thickness: number, flux: number, time: number): number {
  check(plate, thickness, flux, time);
  return (2 * flux * plate.diffusivity * time) / (plate.conductivity * thickness);
}

/**
 * Rise [K] inside such a plate at a distance from its mid-plane [m]:
 * (qL/k)(Fo + (3(x/L)² − 1)/6 − (2/pi²) sum (−1)^n n⁻² exp(−n² pi² Fo) cos(n pi x/L)), L half the thickness,
 * Fo = alpha t/L². Below Fo = 0.2 the same solution as a sum of images, which needs few terms there.
 */
export function slabRise(
  plate: Solid,
  heated: { readonly thickness: number; readonly flux: number },
  time: number,
  fromMiddle: number,
): number {
  check(plate, heated.thickness, heated.flux, time);
  const L = heated.thickness / 2;
  if (!(Math.abs(fromMiddle) <= L)) impossible("fromMiddle", fromMiddle, "a place inside the plate");
  const scale = (heated.flux * L) / plate.conductivity;
  const Fo = (plate.diffusivity * time) / (L * L);
  const place = Math.abs(fromMiddle) / L;
  if (Fo === 0) return 0;
  if (Fo < 0.2) {
    const root = Math.sqrt(Fo);
    let sum = 0;
    for (let m = 0; m < 4; m++)
      sum += ierfc((2 * m + 1 - place) / (2 * root)) + ierfc((2 * m + 1 + place) / (2 * root));
    return scale * 2 * root * sum;
  }
  let sum = 0;
  for (let n = 1; n < 6; n++)
    sum +=
      ((n % 2 === 0 ? 1 : -1) / (n * n)) *
      Math.exp(-n * n * Math.PI ** 2 * Fo) *
      Math.cos(n * Math.PI * place);
  return scale * (Fo + (3 * place * place - 1) / 6 - (2 / Math.PI ** 2) * sum);
}
