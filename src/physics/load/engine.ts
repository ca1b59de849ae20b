import { finite, impossible, type Range } from "../../errors.ts";

/** A petrol engine by what its plate and its coast-down say, in SI. */
export interface EngineLine {
  /** Rated power [W] at `ratedSpeed` [rad/s]. */
  readonly ratedPower: number;
  readonly ratedSpeed: number;
  /** Hot idle speed [rad/s]. */
  readonly idleSpeed: number;
  /** Closed-throttle drag: constant part [N m] and part that rises with speed [N m s]. */
  readonly drag0: number;
  readonly drag1: number;
  /** Crankshaft, flywheel and impeller [kg m2]. */
  readonly inertia: number;
}

// Share of rated power at full load, x = (n - idle)/(rated - idle) = 0, 0.1, ... 1.2: the normalised petrol curve
// of an open implementation of UN GTR 15. Linear in power between.
const share = [0.1, 0.21, 0.315, 0.394, 0.484, 0.58, 0.669, 0.761, 0.855, 0.942, 1, 0.956, 0.85] as const;
const last = share.length - 1;
const xLast = 1.2;
const xLimit = 1.25; // full-load torque is zero here: the speed limiter has taken the fuel away

/** Where the full-load curve is tabled. Below, torque is held; above, the limiter takes it away. */
export const fullTorqueRange: Range = {
  law: "normalised full-load curve of a petrol engine",
  quantity: "(speed - idle)/(rated - idle)",
  unit: "1",
  low: 0,
  high: xLast,
  source: "normalised full-load power curves used with UN Global Technical Regulation 15",
};

function check(engine: EngineLine, w: number): void {
  if (!(engine.ratedPower > 0)) impossible("engine.ratedPower", engine.ratedPower, "a power above 0 W");
  if (!(engine.idleSpeed > 0)) impossible("engine.idleSpeed", engine.idleSpeed, "a speed above 0 rad/s");
  if (!(engine.ratedSpeed > engine.idleSpeed))
    impossible("engine.ratedSpeed", engine.ratedSpeed, "a speed above idle");
  if (!(engine.drag0 >= 0)) impossible("engine.drag0", engine.drag0, "a torque of 0 N m or more");
  if (!(engine.drag1 >= 0)) impossible("engine.drag1", engine.drag1, "0 N m s or more");
  if (!(engine.ratedPower + engine.ratedSpeed + engine.drag0 + engine.drag1 < Infinity)) refuse(engine);
  if (!Number.isFinite(w)) impossible("engine speed", w, "a finite speed in rad/s");
}

/**
 * Torque [N m] with the throttle closed at `w` [rad/s]: minus the drag. Below standstill as at standstill.
 * A line in speed (Heywood, Internal Combustion Engine Fundamentals, 1988, ch. 13, shows the near-linear rise).
 */
export function closedTorque(engine: EngineLine, w: number): number {
  check(engine, w);
  return -(engine.drag0 + engine.drag1 * Math.max(0, w));
}

/**
 * Torque [N m] at full load at `w` [rad/s]. Below idle the torque at idle is held, so that a labouring engine
 * stays finite; above x = 1.2 it falls in a straight line through zero at x = 1.25 and on to closed-throttle drag.
 * Continuous everywhere. Source of the curve: see `fullTorqueRange`.
 */
export function fullTorque(engine: EngineLine, w: number): number {
  check(engine, w);
  const { ratedPower: P, idleSpeed: idle } = engine;
  const span = engine.ratedSpeed - idle;
  const x = (w - idle) / span;
  if (x <= 0) return (share[0] * P) / idle;
  if (x < xLast) {
    const i = Math.min(last - 1, Math.floor(x * 10));
    return (P * (share[i]! + (share[i + 1]! - share[i]!) * (x * 10 - i))) / w;
  }
  const atLast = (share[last]! * P) / (idle + xLast * span);
  return Math.max((atLast * (xLimit - x)) / (xLimit - xLast), closedTorque(engine, w));
}

// d(fullTorque)/dw [N m s]; at a corner of the curve the slope to its right.
function fullSlope(engine: EngineLine, w: number): number {
  const { ratedPower: P, idleSpeed: idle } = engine;
  const span = engine.ratedSpeed - idle;
  const x = (w - idle) / span;
  if (x < 0) return 0;
  if (x < xLast) {
    const i = Math.min(last - 1, Math.floor(x * 10));
    const rise = (10 * (share[i + 1]! - share[i]!)) / span;
    return (P * rise - fullTorque(engine, w)) / w;
  }
  const fall = -((share[last]! * P) / (idle + xLast * span)) / ((xLimit - xLast) * span);
  return fullTorque(engine, w) > closedTorque(engine, w) ? fall : -engine.drag1;
}

/** Torque [N m] at `w` [rad/s] with the pedal at 0 (closed) to 1 (full): the straight mix of the two lines. */
export function engineTorque(engine: EngineLine, w: number, pedal: number): number {
  if (!(pedal >= 0 && pedal <= 1)) impossible("pedal", pedal, "a share from 0 to 1");
  return pedal * fullTorque(engine, w) + (1 - pedal) * closedTorque(engine, w);
}

/** d(engineTorque)/dw [N m s] at a fixed pedal, for an implicit step; to the right of a corner of the curve. */
export function engineSlope(engine: EngineLine, w: number, pedal: number): number {
  check(engine, w);
  if (!(pedal >= 0 && pedal <= 1)) impossible("pedal", pedal, "a share from 0 to 1");
  return pedal * fullSlope(engine, w) - (w > 0 ? (1 - pedal) * engine.drag1 : 0);
}

/** Pedal, 0 to 1, that gives `torque` [N m] at `w` [rad/s]; at its stop when the engine cannot give it. */
export function pedalFor(engine: EngineLine, w: number, torque: number): number {
  const closed = closedTorque(engine, w);
  const reach = fullTorque(engine, w) - closed;
  if (Number.isNaN(torque)) impossible("torque", torque, "a torque in N m");
  if (torque <= closed) return 0;
  return torque >= closed + reach ? 1 : (torque - closed) / reach;
}

function refuse(engine: EngineLine): void {
  finite("engine.ratedPower", engine.ratedPower, "W");
  finite("engine.ratedSpeed", engine.ratedSpeed, "rad/s");
  finite("engine.drag0", engine.drag0, "N m");
  finite("engine.drag1", engine.drag1, "N m s");
}
