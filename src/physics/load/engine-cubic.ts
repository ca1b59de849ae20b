import { notNegative, positive, type Range } from "../../errors.ts";

/** Below a fifth of rated speed no real engine follows the cubic. */
export const cubicFullTorqueRange: Range = {
  law: "cubic full-load power of a spark-ignition engine",
  quantity: "speed over speed of rated power",
  unit: "1",
  low: 0.2,
  high: 1.2,
  source: "Genta, Motor Vehicle Dynamics (1997), ch. 4; range assumed",
};

/**
 * Full-load torque [N m] by the textbook cubic P = Pm (x + x^2 - x^3), x = w/wm: T = (Pm/wm)(1 + x - x^2).
 * `ratedPower` [W] at `ratedSpeed` [rad/s]; `w` [rad/s]. A comparison: it is a fifth too strong in mid-range.
 */
export function cubicFullTorque(ratedPower: number, ratedSpeed: number, w: number): number {
  positive("ratedPower", ratedPower, "W");
  positive("ratedSpeed", ratedSpeed, "rad/s");
  notNegative("engine speed", w, "rad/s");
  const x = w / ratedSpeed;
  return (ratedPower / ratedSpeed) * (1 + x - x * x);
}
