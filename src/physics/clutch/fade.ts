import { finite, notNegative, positive } from "../../errors.ts";
import { type FallingLine, slipOnLine, torqueToLock } from "./slip.ts";

/** A pressure that falls once, in a straight line from `startPressure` [Pa] to nothing over `duration` [s]. */
export interface Fade {
  readonly startPressure: number;
  readonly duration: number;
}

/** What a pressure does for a clutch: kiss pressure [Pa] and capacity for each pascal above it [N m/Pa]. */
export interface Grip {
  readonly kiss: number;
  readonly perPressure: number;
}

function check(grip: Grip, fade: Fade): void {
  positive("perPressure", grip.perPressure, "N m/Pa");
  notNegative("kiss", grip.kiss, "Pa");
  positive("startPressure", fade.startPressure, "Pa");
  notNegative("duration", fade.duration, "s");
}

// Share of the steady form's heat beyond the triangle that a lagging drive reaches, 1/6 without lag: the sum over n >= 3 of
// (−1)^(n+1) x^(n−2)/(n+1)! = 1/6 − 1/(2x) + 1/x² − (1 − e^−x)/x³, whose closed form loses all digits at small x.
function lag(x: number): number {
  if (x > 1) return 1 / 6 - (0.5 - (1 + Math.expm1(-x) / x) / x) / x;
  let term = x / 24;
  let sum = term;
  for (let n = 4; n < 22; n++) sum += term *= -x / (n + 1);
  return sum;
}

/**
 * Slip heat of one fade [J] on a falling drive line, output speed held. With `inertia` [kg m²] of the drive
 * side the slip grows only as fast as the drive can run up: exact solution of I s' = TL − Tc(t) − s T0/w0. For an
 * inertia of 0, or a long fade, it is the steady form (w0/T0)(TL Tm/2 − Tm²/3) t, Tm the capacity when slip begins and
 * t the time from there to kiss; for a short one TL² t²/(24 I). Zero for a fade in no time: no pressure, no heat.
 */
export function fadeEnergy(
  drive: FallingLine & { readonly outputSpeed: number; readonly inertia: number },
  grip: Grip,
  fade: Fade,
): number {
  check(grip, fade);
  const { inertia } = drive;
  notNegative("inertia", inertia, "kg m²");
  const TL = torqueToLock(drive, drive.outputSpeed);
  const Tm = Math.min(TL, grip.perPressure * Math.max(0, fade.startPressure - grip.kiss));
  const t = fade.duration * (Tm / grip.perPressure / fade.startPressure);
  const slipPerTorque = drive.freeSpeed / drive.torqueAtRest;
  const sixth = lag(inertia > 0 ? t / inertia / slipPerTorque : Infinity);
  return slipPerTorque * t * Tm * ((TL - Tm) / 2 + Tm * sixth);
}

/** Most that a fade can heat a clutch [J] while a torque [N m] still runs up an inertia [kg m²]: T² t²/(24 I), t from lock to kiss [s]. */
export function shortFadeBound(torque: number, windowTime: number, inertia: number): number {
  finite("torque", torque, "N m");
  notNegative("windowTime", windowTime, "s");
  positive("inertia", inertia, "kg m²");
  return (torque * torque * windowTime * windowTime) / (24 * inertia);
}

/**
 * Slip heat of one slow fade [J] on any drive line, steady slip at every instant: Simpson's rule over the capacity.
 * Take the smaller of this and the short-fade bound where the window is passed in under a few seconds.
 */
export function fadeEnergyOnLine(
  drive: { readonly torque: (speed: number) => number; readonly outputSpeed: number },
  grip: Grip,
  fade: Fade,
): number {
  check(grip, fade);
  const Tm = Math.min(
    Math.max(0, drive.torque(drive.outputSpeed)),
    grip.perPressure * Math.max(0, fade.startPressure - grip.kiss),
  );
  if (Tm === 0) return 0;
  const panels = 400;
  let sum = 0;
  for (let i = 1; i <= panels; i++) {
    const at = (share: number) => slipOnLine(drive.torque, drive.outputSpeed, Tm * share).power;
    // Midpoints too; the lock edge itself is taken from just below, since a limited line drops to zero there.
    const left = at((i - 1) / panels);
    const right = at(i === panels ? 1 - 1e-12 : i / panels);
    sum += (left + 4 * at((i - 0.5) / panels) + right) / 6;
  }
  return ((sum / panels) * Tm * fade.duration) / (grip.perPressure * fade.startPressure);
}
