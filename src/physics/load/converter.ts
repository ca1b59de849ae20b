import { finite, impossible, type Range } from "../../errors.ts";

/** A three-element torque converter as a multiple of the one that Kotwicki measured. */
export interface Converter {
  /** Factor on all torques; goes with the fifth power of the diameter [-]. */
  readonly scale: number;
}

// Kotwicki's quadratic fit, SAE paper 820393 (1982), N m s2. p impeller, t turbine.
// Multiplication: Tp = a wp^2 + b wp wt - e wt^2, Tt = f wp^2 + g wp wt - h wt^2.
const [a, b, e] = [3.4325e-3, 2.221e-3, 4.6041e-3];
const [f, g, h] = [5.7656e-3, 0.3107e-3, 5.4323e-3];
// Coupling: Tp = Tt = -D wp^2 + (A + D) wp wt - A wt^2 = (wp - wt)(A wt - D wp). The fit's first number is printed
// so that torque would not vanish at equal speeds; D = 32.0084e-3 - A makes it vanish, as it must.
const A = 25.2441e-3;
const D = 32.0084e-3 - A;

const positiveRoot = (p: number, q: number, r: number) => (q + Math.sqrt(q * q + 4 * p * r)) / (2 * p); // p s2 = q s + r
/** Speed ratio from which the turbine no longer multiplies: both multiplication torques are equal (0.8832). */
export const couplingRatio = positiveRoot(h - e, g - b, f - a);
// Speed ratio from which the impeller follows the coupling branch: both branches are equal (0.8849).
const branchRatio = (A + D - b + Math.sqrt((A + D - b) ** 2 - 4 * (A - e) * (D + a))) / (2 * (A - e));

/** The fit is for drive. Behind it (turbine turning backwards) stall torque is held; in overrun nothing is carried. */
export const converterRange: Range = {
  law: "quadratic converter characteristic",
  quantity: "speed ratio turbine/impeller",
  unit: "1",
  low: 0,
  high: 1,
  source: "Kotwicki, SAE paper 820393 (1982)",
};

function check(converter: Converter, wp: number, wt: number): void {
  if (!(converter.scale > 0 && converter.scale < Infinity))
    impossible("converter.scale", converter.scale, "a factor above 0");
  // Torques are quadratic: a speed whose square is beyond all numbers has none.
  if (!(wp * wp < Infinity)) impossible("impeller speed", wp, "a finite speed in rad/s");
  if (!(wt * wt < Infinity)) impossible("turbine speed", wt, "a finite speed in rad/s");
}

/**
 * Torque [N m] that the impeller takes from the engine at impeller speed `wp` and turbine speed `wt` [rad/s].
 * Zero from equal speeds on (overrun is not modelled); with the turbine turning backwards as at stall. Continuous.
 */
export function impellerTorque(converter: Converter, wp: number, wt: number): number {
  check(converter, wp, wt);
  const t = Math.max(0, wt);
  if (wp <= t) return 0;
  const c = converter.scale;
  if (t > branchRatio * wp) return c * (wp - t) * (A * t - D * wp);
  return c * (a * wp * wp + b * wp * t - e * t * t);
}

/** Torque [N m] that the turbine gives to the gears; never less than the impeller's. Arguments as `impellerTorque`. */
export function turbineTorque(converter: Converter, wp: number, wt: number): number {
  const t = Math.max(0, wt);
  if (t > couplingRatio * wp) return impellerTorque(converter, wp, wt);
  check(converter, wp, wt);
  return converter.scale * (f * wp * wp + g * wp * t - h * t * t);
}

/**
 * Impeller speed [rad/s] at which the turbine gives `torque` [N m] at turbine speed `wt` [rad/s]: the exact inverse
 * of `turbineTorque`, from its quadratics. For a torque of zero or less: the turbine's own speed, where torque ends.
 */
export function impellerSpeed(converter: Converter, torque: number, wt: number): number {
  check(converter, 0, wt);
  if (!Number.isFinite(torque)) impossible("turbine torque", torque, "a finite torque in N m");
  const t = Math.max(0, wt);
  const T = torque / converter.scale;
  if (T < 1e-300) return t; // so small that its products would vanish
  const atBranch = t / branchRatio;
  if (T <= (atBranch - t) * (A * t - D * atBranch))
    // D wp^2 - (A+D) t wp + A t^2 + T = 0, lower root, in the form that keeps its digits
    return (2 * (A * t * t + T)) / ((A + D) * t + Math.sqrt((A - D) ** 2 * t * t - 4 * D * T));
  const atCoupling = t / couplingRatio;
  if (T <= f * atCoupling * atCoupling + g * atCoupling * t - h * t * t)
    return (2 * (T + e * t * t)) / (b * t + Math.sqrt(b * b * t * t + 4 * a * (T + e * t * t)));
  return (2 * (T + h * t * t)) / (g * t + Math.sqrt(g * g * t * t + 4 * f * (T + h * t * t)));
}

/**
 * The four slopes [N m s] for an implicit step, written to `out`: dTp/dwp, dTp/dwt, dTt/dwp, dTt/dwt.
 * At a corner the slope on the drive side (lower speed ratio); all zero in overrun.
 */
export function converterSlopes(converter: Converter, wp: number, wt: number, out: Float64Array): void {
  check(converter, wp, wt);
  const c = converter.scale;
  const t = Math.max(0, wt);
  const moves = wt >= 0 ? 1 : 0; // behind stall the torques do not depend on turbine speed
  if (wp <= t) {
    out.fill(0, 0, 4);
    return;
  }
  if (t > branchRatio * wp) {
    out[0] = c * ((A + D) * t - 2 * D * wp);
    out[1] = c * ((A + D) * wp - 2 * A * t);
  } else {
    out[0] = c * (2 * a * wp + b * t);
    out[1] = c * (b * wp - 2 * e * t) * moves;
  }
  if (t > couplingRatio * wp) {
    out[2] = out[0];
    out[3] = out[1];
  } else {
    out[2] = c * (2 * f * wp + g * t);
    out[3] = c * (g * wp - 2 * h * t) * moves;
  }
}

/** Turbine torque over impeller torque at `speedRatio` [-]: largest at stall, 1 from the coupling ratio on. */
export function torqueRatio(speedRatio: number): number {
  finite("speedRatio", speedRatio);
  const unit: Converter = { scale: 1 };
  if (speedRatio >= couplingRatio) return 1;
  return turbineTorque(unit, 1, speedRatio) / impellerTorque(unit, 1, speedRatio);
}

/** K factor wp/sqrt(Tp) [rad/s per sqrt(N m)] at `speedRatio` below 1; at 1 there is no torque and no K factor. */
export function kFactor(converter: Converter, speedRatio: number): number {
  if (!(speedRatio < 1)) impossible("speedRatio", speedRatio, "a speed ratio below 1");
  return 1 / Math.sqrt(impellerTorque(converter, 1, speedRatio));
}
