import { impossible, type Range } from "../../errors.ts";
import { erfc, ierfc } from "./error-function.ts";
import { type Solid } from "./solid.ts";

/** The far side must not yet feel the heat. */
export const semiInfiniteRange: Range = {
  law: "semi-infinite conduction",
  quantity: "Fo = diffusivity time / thickness²",
  unit: "1",
  low: 0,
  high: 0.15,
  source: "Carslaw and Jaeger, Conduction of Heat in Solids, 1959 (recalled)",
};

function checkTime(time: number): void {
  if (!(time >= 0)) impossible("time", time, "a time of 0 s or more");
}

/**
 * Rise [K] at a depth [m] after a constant surface flux [W/m²] has run for a time [s]:
 * (2 q sqrt(alpha t)/k) ierfc(x/(2 sqrt(alpha t))). Carslaw and Jaeger 1959; Incropera ch. 5.
 */
export function semiInfiniteRise(body: Solid, flux: number, time: number, depth: number): number {
  checkTime(time);
  if (!(depth >= 0)) impossible("depth", depth, "a depth of 0 m or more");
  const reach = Math.sqrt(body.diffusivity * time);
  if (reach === 0) return 0;
  return ((2 * flux * reach) / body.conductivity) * ierfc(depth / (2 * reach));
}

/** Rise [K] at a depth [m] a time [s] after the surface was put at a rise of its own [K]: erfc(x/(2 sqrt(alpha t))). */
export function surfaceStepRise(body: Solid, surfaceRise: number, time: number, depth: number): number {
  checkTime(time);
  if (!(depth >= 0)) impossible("depth", depth, "a depth of 0 m or more");
  if (depth === 0) return surfaceRise;
  return surfaceRise * erfc(depth / (2 * Math.sqrt(body.diffusivity * time)));
}

/**
 * Surface rise [K] under a flux that falls in a straight line from `firstFlux` [W/m²] to zero at `stopTime` [s], as in
 * a shift: (2 q0/k) sqrt(alpha t/pi)(1 − 2t/(3 ts)); after the stop the heat spreads (superposition of ramps).
 */
export function fallingFluxRise(body: Solid, firstFlux: number, stopTime: number, time: number): number {
  checkTime(time);
  if (!(stopTime > 0)) impossible("stopTime", stopTime, "a time above 0 s");
  const during = Math.sqrt(time) * (1 - (2 * time) / (3 * stopTime));
  const late = Math.max(0, time - stopTime);
  const after = (2 * late * Math.sqrt(late)) / (3 * stopTime);
  return ((2 * firstFlux) / body.conductivity) * Math.sqrt(body.diffusivity / Math.PI) * (during + after);
}

/**
 * Largest surface rise of such a shift [K]: 0.53192 q0 sqrt(alpha ts)/k, reached halfway, before lock-up.
 * At equal energy a shorter shift is hotter (SAE 720287 found the same).
 */
export function peakInterfaceRise(body: Solid, firstFlux: number, stopTime: number): number {
  return fallingFluxRise(body, firstFlux, stopTime, stopTime / 2);
}
