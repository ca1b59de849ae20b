// Fluid that is not in the pan: in converter, cooler and passages, or on its way back down.

import { impossible } from "../../errors.ts";

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
  if (!(viscosity > 0 && hotViscosity > 0))
    impossible("viscosity", Math.min(viscosity, hotViscosity), "more than 0");
  return hotReturnTime * (viscosity / hotViscosity) ** exponent;
}

/**
 * Volume in flight [m³] after dt [s], exact for V' = inflow - V / returnTime with an inflow [m³/s] that holds
 * meanwhile. With no return time nothing stays in flight.
 */
export function inFlightAfter(volume: number, inflow: number, returnTime: number, dt: number): number {
  if (!(returnTime > 0))
    return Number.isNaN(returnTime) ? impossible("return time", returnTime, "0 s or more") : 0;
  const gone = -Math.expm1(-dt / returnTime);
  return volume + (inflow * returnTime - volume) * gone;
}

/**
 * Volume [m³] that a converter or passage still holds after dt [s] of standing, as it drains to `floor` [m³]
 * with the time constant tau [s]. Below the floor nothing drains.
 */
export function drainedAfter(volume: number, floor: number, tau: number, dt: number): number {
  if (!(volume > floor)) return volume;
  if (!(tau > 0)) return Number.isNaN(tau) ? impossible("draining time", tau, "0 s or more") : floor;
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
  return Math.max(0, total - converter - cooler - passages - inFlight);
}
