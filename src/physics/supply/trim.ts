// The learned trim: a controller that raises pressure when shifts take too long, until it may not.

import { finite, impossible, notNegative, positive } from "../../errors.ts";

/**
 * Pressure trim [Pa] after a shift: raised by gain [Pa] times the relative excess of the measured over the
 * wanted time, held within ± limit [Pa]. An integrator with saturation; common practice of adaptive shift
 * control.
 */
export function nextTrim(
  trim: number,
  measuredTime: number,
  targetTime: number,
  gain: number,
  limit: number,
): number {
  finite("trim", trim, "Pa");
  notNegative("measured shift time", measuredTime, "s");
  positive("wanted shift time", targetTime, "s");
  notNegative("gain of the trim", gain, "Pa");
  if (!(limit >= 0)) impossible("limit of the trim", limit, "0 Pa or more");
  const next = trim + (gain * (measuredTime - targetTime)) / targetTime;
  return next > limit ? limit : next < -limit ? -limit : next;
}
