// Fluid that is not in the pan: in converter, cooler and passages, or on its way back down.

import { finite, notNegative, positive } from "../../errors.ts";

/**
 * Time [s] that fluid thrown off inside the case needs to find the pan: the hot time times (viscosity / hot
 * viscosity) to an exponent, unpublished, 0.3 to 0.5. A draining film alone would give 0.5 (Jeffreys 1930).
 */
export function returnTime(
  hotReturnTime: number,
  viscosity: number,
  hotViscosity: number,
  exponent: number,
): number {
  const time = hotReturnTime * (viscosity / hotViscosity) ** exponent;
  if (!(time >= 0 && time < Infinity && viscosity > 0 && hotViscosity > 0))
    refuseReturn(hotReturnTime, viscosity, hotViscosity, exponent);
  return time;
}

/**
 * Volume in flight [m³] after dt [s], exact for V' = inflow - V / returnTime with an inflow [m³/s] that holds
 * meanwhile. With no return time nothing stays in flight.
 */
export function inFlightAfter(volume: number, inflow: number, returnTime: number, dt: number): number {
  const gone = returnTime === 0 ? 1 : -Math.expm1(-dt / returnTime);
  const after = volume + (inflow * returnTime - volume) * gone;
  if (!(Math.abs(after) < Infinity && returnTime >= 0 && dt >= 0))
    refuseFlight(volume, inflow, returnTime, dt);
  return after;
}

/**
 * Volume [m³] that a converter or passage still holds after dt [s] of standing, as it drains to `floor` [m³]
 * with the time constant tau [s]. Below the floor nothing drains.
 */
export function drainedAfter(volume: number, floor: number, tau: number, dt: number): number {
  finite("volume", volume, "m³");
  finite("floor", floor, "m³");
  notNegative("draining time", tau, "s");
  notNegative("dt", dt, "s");
  if (volume <= floor) return volume;
  if (tau === 0) return floor;
  return floor + (volume - floor) * Math.exp(-dt / tau);
}

/** What the pan holds [m³] when the rest of the charge is elsewhere; never less than nothing. */
export function panVolume(
  total: number,
  converter: number,
  cooler: number,
  passages: number,
  inFlight: number,
): number {
  const away = converter + cooler + passages + inFlight;
  if (!(
    Math.abs(total) < Infinity &&
    away < Infinity &&
    Math.min(converter, cooler, passages, inFlight) >= 0
  ))
    refuseVolumes(total, converter, cooler, passages, inFlight);
  return Math.max(0, total - away);
}

function refuseVolumes(
  total: number,
  converter: number,
  cooler: number,
  passages: number,
  inFlight: number,
): void {
  finite("total", total, "m³");
  notNegative("converter", converter, "m³");
  notNegative("cooler", cooler, "m³");
  notNegative("passages", passages, "m³");
  notNegative("in flight", inFlight, "m³");
}

function refuseReturn(
  hotReturnTime: number,
  viscosity: number,
  hotViscosity: number,
  exponent: number,
): void {
  notNegative("hot return time", hotReturnTime, "s");
  positive("viscosity", viscosity, "Pa·s");
  positive("hot viscosity", hotViscosity, "Pa·s");
  finite("exponent of the return time", exponent);
}

function refuseFlight(volume: number, inflow: number, returnTime: number, dt: number): void {
  finite("volume in flight", volume, "m³");
  finite("inflow", inflow, "m³/s");
  notNegative("return time", returnTime, "s");
  notNegative("dt", dt, "s");
}
