import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";

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
    finite("grade", grade);
    onGrade = grade;
    angle = Math.atan(grade);
  }
  return angle;
}

/** Refuses a vehicle that cannot be. */
export function checkVehicle(vehicle: Vehicle): void {
  positive("vehicle.mass", vehicle.mass, "kg");
  notNegative("vehicle.dragArea", vehicle.dragArea, "m²");
  notNegative("vehicle.rolling", vehicle.rolling);
  positive("vehicle.tyreRadius", vehicle.tyreRadius, "m");
  if (!(vehicle.rotating >= 1 && vehicle.rotating < Infinity))
    impossible("vehicle.rotating", vehicle.rotating, "1 or more");
  notNegative("vehicle.airDensity", vehicle.airDensity, "kg/m³");
}

/**
 * Force at the driven wheels [N] that holds `speed` [m/s] and `acceleration` [m/s2] on a road at `gradeAngle`
 * [rad, uphill positive]: F = m g Crr cos(alpha) + rho CdA v^2/2 + m g sin(alpha) + delta m a.
 * Rolling resistance only while the vehicle rolls: what stands is held by the brake. Negative: the road drives.
 * Law: Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 4. Throws for a vehicle that cannot be.
 */
export function roadForce(vehicle: Vehicle, speed: number, acceleration: number, gradeAngle: number): number {
  const { mass: m, dragArea: CdA, rolling: Crr, rotating: delta, airDensity: rho } = vehicle;
  if (!(m > 0 && CdA >= 0 && Crr >= 0 && delta >= 1 && rho >= 0 && speed >= 0 && speed < Infinity))
    refuseSpeed(vehicle, speed);
  if (gradeAngle !== onAngle) {
    finite("gradeAngle", gradeAngle, "rad");
    onAngle = gradeAngle;
    cosine = Math.cos(gradeAngle);
    sine = Math.sin(gradeAngle);
  }
  const rolling = speed > 0 ? m * gravity * Crr * cosine : 0;
  const force = rolling + 0.5 * rho * CdA * speed * speed + m * gravity * sine + m * delta * acceleration;
  if (!(Math.abs(force) < Infinity)) refuseAcceleration(vehicle, acceleration);
  return force;
}

function refuseSpeed(vehicle: Vehicle, speed: number): void {
  checkVehicle(vehicle);
  notNegative("speed", speed, "m/s");
}

function refuseAcceleration(vehicle: Vehicle, acceleration: number): void {
  checkVehicle(vehicle);
  finite("acceleration", acceleration, "m/s²");
}
