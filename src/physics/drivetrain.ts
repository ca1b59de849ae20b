// The road's demand carried back to the engine: wheel force, turbine torque, converter or lock-up, engine.
// These balances have no memory; each is a closed form, or one bracketed root where the engine gives all it has.

import type { Build, Gear } from "./build.ts";
import { converterSlopes, impellerSpeed, impellerTorque, turbineTorque } from "./load/converter.ts";
import { engineSlope, fullTorque } from "./load/engine.ts";
import { roadForce } from "./load/road.ts";

/** What the driveline carries at one instant; written in place. */
export interface Drive {
  /** Acceleration that is reached [m/s²]: the wish, unless the engine has no more to give. */
  acceleration: number;
  /** Force at the wheels that the road asks for at that acceleration [N] (negative: brakes and overrun). */
  wheelForce: number;
  turbine: number;
  turbineTorque: number;
  engine: number;
  impellerTorque: number;
  engineTorque: number;
  /** Lock-up clutch: torque carried and slip. */
  lockTorque: number;
  lockSlip: number;
  /** The lock-up clutch cannot hold the slip that the controller asks for. */
  lockSaturated: boolean;
}

export const newDrive = (): Drive => ({
  acceleration: 0,
  wheelForce: 0,
  turbine: 0,
  turbineTorque: 0,
  engine: 0,
  impellerTorque: 0,
  engineTorque: 0,
  lockTorque: 0,
  lockSlip: 0,
  lockSaturated: false,
});

/** Turns of the turbine per metre driven [rad/m] in a gear whose elements hold. */
export function turbinePerMetre(build: Build, gear: Gear): number {
  return (Math.abs(gear.ratio) * build.finalRatio) / build.vehicle.tyreRadius;
}

/** Turbine torque that gives a wheel force in a gear [N m]; the gears' losses act against the flow of power. */
export function turbineTorqueFor(build: Build, gear: Gear, wheelForce: number): number {
  const arm = 1 / turbinePerMetre(build, gear);
  return wheelForce >= 0
    ? (wheelForce * arm) / build.gearEfficiency
    : wheelForce * arm * build.gearEfficiency;
}

/** Wheel force that a turbine torque gives in a gear [N]. */
export function wheelForceFrom(build: Build, gear: Gear, torque: number): number {
  const perMetre = turbinePerMetre(build, gear);
  return torque >= 0 ? torque * perMetre * build.gearEfficiency : (torque * perMetre) / build.gearEfficiency;
}

/**
 * The driveline while every element of the gear holds: the turbine turns with the wheels and carries what the road asks.
 * `pumpTorque` is what the pump takes from the engine, `lockCapacity` the most that the lock-up clutch can carry (0: released).
 */
export function driveHolding(
  build: Build,
  gear: Gear,
  speed: number,
  wish: number,
  gradeAngle: number,
  pumpTorque: number,
  lockCapacity: number,
  out: Drive,
): void {
  const { engine, converter, vehicle } = build;
  out.acceleration = wish;
  out.turbine = turbinePerMetre(build, gear) * speed;
  out.wheelForce = roadForce(vehicle, speed, wish, gradeAngle);
  carry(build, turbineTorqueFor(build, gear, out.wheelForce), lockCapacity, out);
  out.engineTorque = out.impellerTorque + out.lockTorque + pumpTorque;
  if (out.engineTorque <= fullTorque(engine, out.engine)) return;

  // The engine gives all it has: the lock-up is released and the vehicle accelerates less.
  out.lockTorque = 0;
  out.lockSlip = 0;
  out.lockSaturated = false;
  out.engine = fullThrottleSpeed(build, out.turbine, pumpTorque);
  out.impellerTorque = impellerTorque(converter, out.engine, out.turbine);
  out.engineTorque = out.impellerTorque + pumpTorque;
  const most = turbineTorque(converter, out.engine, out.turbine);
  if (most >= out.turbineTorque) {
    // Without the lock-up the converter multiplies enough after all, at a speed below full throttle's.
    out.engine = impellerSpeed(converter, out.turbineTorque, out.turbine);
    out.impellerTorque = impellerTorque(converter, out.engine, out.turbine);
    out.engineTorque = out.impellerTorque + pumpTorque;
    return;
  }
  out.turbineTorque = most;
  out.wheelForce = wheelForceFrom(build, gear, most);
  out.acceleration =
    (out.wheelForce - roadForce(vehicle, speed, 0, gradeAngle)) / (vehicle.mass * vehicle.rotating);
}

/** Engine speed and torque split between converter and lock-up for a turbine torque; the idling engine's creep is held by the brakes. */
function carry(build: Build, wanted: number, lockCapacity: number, out: Drive): void {
  const { converter, engine, lockUp } = build;
  out.lockTorque = 0;
  out.lockSlip = 0;
  out.lockSaturated = false;
  // The converter carries its part at the held slip, the lock-up the rest; what that cannot hold goes to the converter, with more slip.
  const atHeld =
    lockCapacity > 0 ? turbineTorque(converter, out.turbine + lockUp.heldSlip, out.turbine) : Infinity;
  if (wanted > atHeld) {
    out.turbineTorque = wanted;
    out.lockSaturated = wanted - atHeld > lockCapacity;
    out.lockTorque = out.lockSaturated ? lockCapacity : wanted - atHeld;
    out.engine = out.lockSaturated
      ? impellerSpeed(converter, wanted - lockCapacity, out.turbine)
      : out.turbine + lockUp.heldSlip;
    out.lockSlip = out.engine - out.turbine;
    out.impellerTorque = impellerTorque(converter, out.engine, out.turbine);
    return;
  }
  const creep = turbineTorque(converter, engine.idleSpeed, out.turbine);
  if (wanted <= creep) {
    out.engine = Math.max(engine.idleSpeed, out.turbine);
    out.turbineTorque = creep; // 0 when the turbine overruns
  } else {
    out.engine = impellerSpeed(converter, wanted, out.turbine);
    out.turbineTorque = wanted;
  }
  out.impellerTorque = impellerTorque(converter, out.engine, out.turbine);
}

const slopes = new Float64Array(4);

/**
 * Speed at which the full throttle meets the converter at a given turbine speed [rad/s]: the surplus falls from idle to the
 * limiter, so Newton's steps are kept in a bracket that each of them narrows, and halve it where they leave it.
 */
export function fullThrottleSpeed(build: Build, turbine: number, pumpTorque: number): number {
  const { engine, converter } = build;
  let low = Math.max(engine.idleSpeed, turbine);
  if (fullThrottleSurplus(build, low, turbine, pumpTorque) <= 0) return low;
  let high = engine.idleSpeed + 1.25 * (engine.ratedSpeed - engine.idleSpeed);
  if (high <= low || fullThrottleSurplus(build, high, turbine, pumpTorque) >= 0) return Math.max(low, high);
  let w = 0.5 * (low + high);
  for (let i = 0; i < 60; i++) {
    const surplus = fullThrottleSurplus(build, w, turbine, pumpTorque);
    if (surplus > 0) low = w;
    else high = w;
    converterSlopes(converter, w, turbine, slopes);
    const next = w - surplus / (engineSlope(engine, w, 1) - slopes[0]!);
    const within = next >= low && next <= high;
    if (within && Math.abs(next - w) <= 1e-9 * w) return next;
    w = within ? next : 0.5 * (low + high);
    if (high - low <= 1e-9 * high) return w;
  }
  return w;
}

/** Turbine torque that full throttle gives through the converter at a turbine speed [rad/s], in N m. */
export function fullThrottleTorque(build: Build, turbine: number, pumpTorque: number): number {
  return turbineTorque(build.converter, fullThrottleSpeed(build, turbine, pumpTorque), turbine);
}

function fullThrottleSurplus(build: Build, engine: number, turbine: number, pumpTorque: number): number {
  return fullTorque(build.engine, engine) - pumpTorque - impellerTorque(build.converter, engine, turbine);
}
