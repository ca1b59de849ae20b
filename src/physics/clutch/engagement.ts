import { finite, impossible, positive } from "../../errors.ts";

/**
 * Two turning masses with a closing clutch between them: the drive torque acts on the first [N m], the load torque
 * holds the second back [N m], the first turns faster by `slip` [rad/s]. Inertias in kg m².
 */
export interface TwoInertias {
  readonly driveTorque: number;
  readonly loadTorque: number;
  readonly driveInertia: number;
  readonly loadInertia: number;
  readonly slip: number;
}

function check(pair: TwoInertias): void {
  finite("driveTorque", pair.driveTorque, "N m");
  finite("loadTorque", pair.loadTorque, "N m");
  positive("driveInertia", pair.driveInertia, "kg m²");
  positive("loadInertia", pair.loadInertia, "kg m²");
  if (!(pair.slip >= 0 && pair.slip < Infinity))
    impossible("slip", pair.slip, "a slip of 0 rad/s or more; swap the sides for less");
}

/** Rate at which a clutch torque closes the slip [rad/s²]: a = (Tc − Te)/I1 + (Tc − Tl)/I2; below zero it opens. */
export function closingRate(clutchTorque: number, pair: TwoInertias): number {
  check(pair);
  finite("clutchTorque", clutchTorque, "N m");
  return (
    (clutchTorque - pair.driveTorque) / pair.driveInertia +
    (clutchTorque - pair.loadTorque) / pair.loadInertia
  );
}

/** Clutch torque below which the slip never closes [N m]: Tcrit = (Te/I1 + Tl/I2)/(1/I1 + 1/I2). */
export function criticalTorque(pair: TwoInertias): number {
  check(pair);
  const { driveTorque, loadTorque, driveInertia: I1, loadInertia: I2 } = pair;
  return (driveTorque * I2 + loadTorque * I1) / (I1 + I2);
}

/** Time until the slip is gone [s]: t = s/a; undefined when the torque is too small ever to close it. */
export function engagementTime(clutchTorque: number, pair: TwoInertias): number | undefined {
  const a = closingRate(clutchTorque, pair);
  if (pair.slip === 0) return 0;
  return a > 0 ? pair.slip / a : undefined;
}

/**
 * Heat of the whole engagement [J]: E = Tc s²/(2a); undefined when it never closes. Without outside torques
 * it is I1 I2 s²/(2(I1 + I2)) whatever the clutch torque (Shigley, energy considerations): a healthy shift costs
 * the same at any pressure, and grows without bound as the pressure falls towards the critical torque.
 */
export function engagementEnergy(clutchTorque: number, pair: TwoInertias): number | undefined {
  const time = engagementTime(clutchTorque, pair);
  return time === undefined ? undefined : (clutchTorque * pair.slip * time) / 2;
}

/** Speed of the driven side after an engagement that began with it at `loadSpeed` [rad/s]; undefined if it never closes. */
export function commonSpeed(clutchTorque: number, pair: TwoInertias, loadSpeed: number): number | undefined {
  const time = engagementTime(clutchTorque, pair);
  finite("loadSpeed", loadSpeed, "rad/s");
  return time === undefined
    ? undefined
    : loadSpeed + ((clutchTorque - pair.loadTorque) / pair.loadInertia) * time;
}

/** Clutch torque that closes the slip in a wanted time [N m]: the inverse of the engagement time. */
export function commandedTorque(time: number, pair: TwoInertias): number {
  positive("time", time, "s");
  const { driveInertia: I1, loadInertia: I2, slip } = pair;
  return criticalTorque(pair) + ((slip / time) * I1 * I2) / (I1 + I2);
}
