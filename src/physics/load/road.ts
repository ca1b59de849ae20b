import { impossible, type Range } from "../../errors.ts";

/** What the road asks of a vehicle, in SI. */
export interface Vehicle {
  /** Mass with load and trailer [kg]. */
  readonly mass: number;
  /** Drag coefficient times frontal area [m2]. */
  readonly dragArea: number;
  /** Rolling resistance coefficient [-]. */
  readonly rolling: number;
  /** Rolling radius of the driven tyre [m]. */
  readonly tyreRadius: number;
  /** Factor on the mass for wheels and shafts that spin up with it, 1.03 to 1.08 [-]. */
  readonly rotating: number;
  /** Air density [kg/m3]. */
  readonly airDensity: number;
}

export const gravity = 9.80665; // standard gravity, m/s2

/** Above about 200 km/h the rolling coefficient is no longer constant. */
export const roadForceRange: Range = {
  law: "road load with constant rolling and drag coefficients",
  quantity: "vehicle speed",
  unit: "m/s",
  low: 0,
  high: 55,
  source: "Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 4",
};

// The last grade and angle asked for, with what they gave: a road is asked for many times before it bends.
let [onGrade, angle] = [0, 0];
let [onAngle, cosine, sine] = [0, 1, 0];

/** Angle of the road [rad] at a grade, rise over run. */
export function gradeAngle(grade: number): number {
  if (grade !== onGrade) {
    onGrade = grade;
    angle = Math.atan(grade);
  }
  return angle;
}

/**
 * Force at the driven wheels [N] that holds `speed` [m/s] and `acceleration` [m/s2] on a road at `gradeAngle`
 * [rad, uphill positive]: F = m g Crr cos(alpha) + rho CdA v^2/2 + m g sin(alpha) + delta m a.
 * Rolling resistance only while the vehicle rolls: what stands is held by the brake. Negative: the road drives.
 * Law: Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 4. Throws for a vehicle that cannot be.
 */
export function roadForce(vehicle: Vehicle, speed: number, acceleration: number, gradeAngle: number): number {
  const { mass: m, dragArea: CdA, rolling: Crr, rotating: delta, airDensity: rho } = vehicle;
  if (!(m > 0 && m < Infinity)) impossible("vehicle.mass", m, "a mass above 0 kg");
  if (!(CdA >= 0)) impossible("vehicle.dragArea", CdA, "a drag area of 0 m2 or more");
  if (!(Crr >= 0)) impossible("vehicle.rolling", Crr, "a rolling coefficient of 0 or more");
  if (!(delta >= 1)) impossible("vehicle.rotating", delta, "a factor of 1 or more");
  if (!(rho >= 0)) impossible("vehicle.airDensity", rho, "a density of 0 kg/m3 or more");
  if (!(speed >= 0)) impossible("speed", speed, "a speed of 0 m/s or more");
  if (gradeAngle !== onAngle) {
    onAngle = gradeAngle;
    cosine = Math.cos(gradeAngle);
    sine = Math.sin(gradeAngle);
  }
  const rolling = speed > 0 ? m * gravity * Crr * cosine : 0;
  return rolling + 0.5 * rho * CdA * speed * speed + m * gravity * sine + m * delta * acceleration;
}
