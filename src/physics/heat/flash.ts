import { finite, notNegative, positive, type Range } from "../../errors.ts";
import { checkSolid, type Solid } from "./solid.ts";

/** The band law needs heat that is carried along faster than it spreads. */
export const flashRange: Range = {
  law: "flash temperature of a moving band",
  quantity: "Peclet number V l/(4 alpha)",
  unit: "1",
  low: 10,
  high: 1e6,
  source: "Blok 1937 and Jaeger 1942 (recalled)",
};

/** Peclet number of a band of a given length [m] that moves at a speed [m/s]: V b/(2 alpha), b half the length. */
export function peclet(body: Solid, length: number, speed: number): number {
  checkSolid(body);
  notNegative("length", length, "m");
  notNegative("speed", speed, "m/s");
  return (speed * length) / (4 * body.diffusivity);
}

/** Largest flash rise under a moving band [K]: (2q/k) sqrt(alpha l/(pi V)). Flux [W/m²], length [m], speed [m/s]. */
export function movingBandRise(
  body: Solid,
  flux: number,
  band: { readonly length: number; readonly speed: number },
): number {
  checkSolid(body);
  finite("flux", flux, "W/m²");
  positive("speed", band.speed, "m/s");
  notNegative("length", band.length, "m");
  return (
    ((2 * flux) / body.conductivity) * Math.sqrt((body.diffusivity * band.length) / (Math.PI * band.speed))
  );
}

/** Largest rise of a round spot of a given radius [m] at rest [K]: q a/k. Carslaw and Jaeger 1959. */
export function stillSpotPeak(body: Solid, flux: number, radius: number): number {
  checkSolid(body);
  finite("flux", flux, "W/m²");
  notNegative("radius", radius, "m");
  return (flux * radius) / body.conductivity;
}

/** Mean rise of that spot [K]: 8/(3 pi) of the largest. */
export function stillSpotMean(body: Solid, flux: number, radius: number): number {
  return (8 / (3 * Math.PI)) * stillSpotPeak(body, flux, radius);
}
