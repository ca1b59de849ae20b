// The learned trim: a controller that raises pressure when shifts take too long, until it may not.

import { impossible } from "../../errors.ts";

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
  if (!(targetTime > 0)) impossible("wanted shift time", targetTime, "more than 0 s");
  if (!(limit >= 0)) impossible("limit of the trim", limit, "0 Pa or more");
  const next = trim + (gain * (measuredTime - targetTime)) / targetTime;
  return next > limit ? limit : next < -limit ? -limit : next;
}
