import { finite, notNegative, positive, type Range } from "../../errors.ts";
import { erfc, ierfc } from "./error-function.ts";
import { checkSolid, type Solid } from "./solid.ts";

/** The far side must not yet feel the heat. */
export const semiInfiniteRange: Range = {
  law: "semi-infinite conduction",
  quantity: "Fo = diffusivity time / thickness²",
  unit: "1",
  low: 0,
  high: 0.15,
  source: "Carslaw and Jaeger, Conduction of Heat in Solids, 1959 (recalled)",
};

/**
 * Rise [K] at a depth [m] after a constant surface flux [W/m²] has run for a time [s]:
 * (2 q sqrt(alpha t)/k) ierfc(x/(2 sqrt(alpha t))). Carslaw and Jaeger 1959; Incropera ch. 5.
 */
export function semiInfiniteRise(body: Solid, flux: number, time: number, depth: number): number {
  checkSolid(body);
  finite("flux", flux, "W/m²");
  notNegative("time", time, "s");
  notNegative("depth", depth, "m");
  const reach = Math.sqrt(body.diffusivity * time);
  if (reach === 0) return 0;
  return ((2 * flux * reach) / body.conductivity) * ierfc(depth / (2 * reach));
}

/** Rise [K] at a depth [m] a time [s] after the surface was put at a rise of its own [K]: erfc(x/(2 sqrt(alpha t))). */
export function surfaceStepRise(body: Solid, surfaceRise: number, time: number, depth: number): number {
  checkSolid(body);
  finite("surfaceRise", surfaceRise, "K");
  notNegative("time", time, "s");
  notNegative("depth", depth, "m");
  if (depth === 0) return surfaceRise;
  return surfaceRise * erfc(depth / (2 * Math.sqrt(body.diffusivity * time)));
}

/**
 * Surface rise [K] under a flux that falls in a straight line from `firstFlux` [W/m²] to zero at `stopTime` [s], as in
 * a shift: (2 q0/k) sqrt(alpha t/pi)(1 − 2t/(3 ts)); after the stop the heat spreads (superposition of ramps), in the end
 * as that of all its energy at once, q0 ts/(2 e sqrt(pi t)) with the effusivity e.
 */
export function fallingFluxRise(body: Solid, firstFlux: number, stopTime: number, time: number): number {
  checkSolid(body);
  finite("firstFlux", firstFlux, "W/m²");
  positive("stopTime", stopTime, "s");
  notNegative("time", time, "s");
  const scale = (2 * firstFlux * Math.sqrt(body.diffusivity / Math.PI)) / body.conductivity;
  if (time <= stopTime) return scale * Math.sqrt(time) * (1 - (2 * time) / (3 * stopTime));
  // 1 − (2/(3u))(1 − (1 − u)^1.5), u = ts/t, with its differences multiplied out: none is left that could cancel.
  const root = Math.sqrt((time - stopTime) / time);
  return (scale * (stopTime / Math.sqrt(time)) * (1 + 2 * root)) / (3 * (1 + root) * (1 + root));
}

/**
 * Largest surface rise of such a shift [K]: 0.53192 q0 sqrt(alpha ts)/k, reached halfway, before lock-up.
 * At equal energy a shorter shift is hotter (SAE 720287 found the same).
 */
export function peakInterfaceRise(body: Solid, firstFlux: number, stopTime: number): number {
  return fallingFluxRise(body, firstFlux, stopTime, stopTime / 2);
}
