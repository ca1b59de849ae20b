import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";
import { type Clutch, meanRadiusPressure } from "./geometry.ts";

/** The converter clutch: clamped by the difference of two pressures in the converter circuit. */
export interface Lockup extends Clutch {
  /** Largest pressure difference that the converter's shell and valves allow [Pa]. */
  readonly most: number;
  /** Pressure on the release side while applied [Pa, gauge]. */
  readonly back: number;
  /** True when its feed comes from the regulator's overflow, so that it fades as that feed starves. */
  readonly fedFromOverflow: boolean;
}

/** Pressure differences at which one or two faces carry 60 to 350 N m; no measured value was found. */
export const lockupPressureRange: Range = {
  law: "clamp of a converter clutch by a pressure difference",
  quantity: "pressure difference",
  unit: "Pa",
  low: 0,
  high: 7e5,
  source: "computed from a generic lining ring; the orifice law of its feed is assumed",
};

/**
 * Pressure difference on the piston [Pa] at a line pressure [Pa, gauge]: min(most, (line − back) min(1, share²)),
 * where `feedShare` is the feed of the converter branch over its full feed. The square is the orifice law of the
 * feed: half the flow leaves a quarter of the difference (assumed). A clutch with its own feed ignores the share.
 */
export function lockupPressure(lockup: Lockup, linePressure: number, feedShare: number): number {
  const over = linePressure - lockup.back;
  if (!(feedShare >= 0 && Math.abs(over) < Infinity && lockup.most >= 0))
    refusePressure(lockup, linePressure, feedShare);
  const fed = lockup.fedFromOverflow ? Math.min(1, feedShare * feedShare) : 1;
  return Math.min(lockup.most, Math.max(0, over) * fed);
}

/** Capacity [N m] at a pressure difference [Pa]: T = mu N R (A dp − spring), with the even-pressure radius of a bonded ring. */
export function lockupCapacity(lockup: Lockup, difference: number, mu: number): number {
  const over = difference * lockup.pistonArea - lockup.spring;
  const perNewton = mu * lockup.faces * meanRadiusPressure(lockup);
  if (!(Math.abs(over) < Infinity && perNewton >= 0 && perNewton < Infinity && lockup.pistonArea > 0))
    refuseDifference(lockup, difference, mu);
  return perNewton * Math.max(0, over);
}

/** Pressure difference that holds a torque [Pa]: what the slip controller has to ask for. */
export function lockupPressureFor(lockup: Lockup, torque: number, mu: number): number {
  finite("torque", torque, "N m");
  refuse(lockup, mu);
  if (!(mu > 0)) impossible("mu", mu, "a coefficient above 0: nothing locks without friction");
  const perNewton = mu * lockup.faces * meanRadiusPressure(lockup);
  return (Math.max(0, torque) / perNewton + lockup.spring) / lockup.pistonArea;
}

function refuse(lockup: Lockup, mu: number): void {
  positive("faces", lockup.faces);
  positive("pistonArea", lockup.pistonArea, "m²");
  notNegative("spring", lockup.spring, "N");
  notNegative("mu", mu);
}

function refusePressure(lockup: Lockup, linePressure: number, feedShare: number): void {
  notNegative("most", lockup.most, "Pa");
  finite("back", lockup.back, "Pa");
  finite("linePressure", linePressure, "Pa");
  notNegative("feedShare", feedShare);
}

function refuseDifference(lockup: Lockup, difference: number, mu: number): void {
  refuse(lockup, mu);
  finite("difference", difference, "Pa");
}
