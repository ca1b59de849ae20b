import { finite, notNegative, positive, type Range } from "../../errors.ts";
import { kissPressure, lockPressure } from "./capacity.ts";
import { type Clutch } from "./geometry.ts";

/** Drive torque that falls on a straight line, T = torqueAtRest (1 − w/freeSpeed): N m and rad/s. */
export interface FallingLine {
  readonly torqueAtRest: number;
  readonly freeSpeed: number;
}

/** Constant drive torque up to a limiter: N m and rad/s. */
export interface LimitedLine {
  readonly torque: number;
  readonly governedSpeed: number;
}

/**
 * How a clutch settles between a drive and an output of given speed. "runs away": the drive torque stays above the
 * capacity up to the highest speed searched, so there is no steady slip and the numbers are those at that speed.
 */
export interface SteadySlip {
  readonly slip: number;
  readonly torque: number;
  readonly power: number;
  readonly state: "locked" | "slipping" | "runs away";
}

/** Slip heat is steady only while the pressure changes slowly against the engine's own time constant. */
export const steadySlipRange: Range = {
  law: "steady slip on an engine line",
  quantity: "time spent in the slip window",
  unit: "s",
  low: 8,
  high: 1e9,
  source: "computed: inertia takes a tenth off the heat at 28 engine time constants, 8 s for one of 0.3 s",
};

function checkLine(line: FallingLine): void {
  positive("torqueAtRest", line.torqueAtRest, "N m");
  positive("freeSpeed", line.freeSpeed, "rad/s");
}

/** Torque that the falling line asks of a clutch without slip [N m]; zero when the output outruns the free speed. */
export function torqueToLock(line: FallingLine, outputSpeed: number): number {
  checkLine(line);
  finite("outputSpeed", outputSpeed, "rad/s");
  return Math.max(0, line.torqueAtRest * (1 - outputSpeed / line.freeSpeed));
}

/** Steady slip heat on a falling line [W]: P = (w0/T0) Tc (TL − Tc), a parabola, zero at no capacity and from lock up. */
export function slipPowerLine(line: FallingLine, outputSpeed: number, capacity: number): number {
  const TL = torqueToLock(line, outputSpeed);
  notNegative("capacity", capacity, "N m");
  if (capacity >= TL) return 0;
  return (line.freeSpeed / line.torqueAtRest) * capacity * (TL - capacity);
}

/** The worst point of a falling line: capacity TL/2 [N m], heat w0 TL²/(4 T0) [W], half the free slip [rad/s]. */
export function peakSlip(line: FallingLine, outputSpeed: number): SteadySlip {
  const TL = torqueToLock(line, outputSpeed);
  const slip = ((line.freeSpeed / line.torqueAtRest) * TL) / 2;
  return { slip, torque: TL / 2, power: (slip * TL) / 2, state: TL > 0 ? "slipping" : "locked" };
}

/** Steady slip heat on a flat line with a limiter [W]: P = Tc (wg − wL) up to a cliff at lock, where it is worst. */
export function slipPowerLimiter(line: LimitedLine, outputSpeed: number, capacity: number): number {
  positive("torque", line.torque, "N m");
  finite("governedSpeed", line.governedSpeed, "rad/s");
  finite("outputSpeed", outputSpeed, "rad/s");
  notNegative("capacity", capacity, "N m");
  if (capacity >= line.torque || outputSpeed >= line.governedSpeed) return 0;
  return capacity * (line.governedSpeed - outputSpeed);
}

/** The highest drive speed at which steady slip is looked for [rad/s]: 19 000 rpm. */
export const highestSpeedSearched = 2000;

/**
 * Steady slip on any drive line by bracketing: the lowest speed above the output at which the drive torque [N m]
 * falls to the capacity. Locked when the capacity holds the torque without slip, even if the line rises further up.
 */
export function slipOnLine(
  driveTorque: (speed: number) => number,
  outputSpeed: number,
  capacity: number,
): SteadySlip {
  notNegative("capacity", capacity, "N m");
  finite("outputSpeed", outputSpeed, "rad/s");
  const without = driveTorque(outputSpeed);
  finite("driveTorque", without, "N m");
  if (!(without > capacity)) return { slip: 0, torque: Math.max(0, without), power: 0, state: "locked" };
  const top = Math.max(highestSpeedSearched, 2 * outputSpeed);
  const step = Math.max(4, (top - outputSpeed) / 1000);
  let low = outputSpeed;
  let high = Math.min(top, low + step);
  while (driveTorque(high) > capacity) {
    if (high >= top) {
      const slip = top - outputSpeed;
      return { slip, torque: capacity, power: capacity * slip, state: "runs away" };
    }
    low = high;
    high = Math.min(top, high + step);
  }
  // 60 halvings bring 4 rad/s below the spacing of doubles; a cliff is met from its upper side.
  for (let i = 0; i < 60 && high - low > 1e-13 * high; i++) {
    const middle = (low + high) / 2;
    if (driveTorque(middle) > capacity) low = middle;
    else high = middle;
  }
  const slip = (low + high) / 2 - outputSpeed;
  return { slip, torque: capacity, power: capacity * slip, state: "slipping" };
}

/** The window of partial apply [Pa]: slip under load means a pressure between kiss and lock. */
export function slipWindow(
  clutch: Clutch,
  torque: number,
  mu: number,
): { readonly kiss: number; readonly lock: number } {
  return { kiss: kissPressure(clutch), lock: lockPressure(clutch, torque, mu) };
}
