// Slope of the free surface in a vehicle that speeds up, climbs or turns.

import { gravity as g } from "../fluid/surroundings.ts";
import { finite, impossible } from "../../errors.ts";

/**
 * Slope of the surface along the vehicle, positive: fluid to the rear. From the forward acceleration [m/s²]
 * and the grade angle [rad], positive uphill, within ±π/2. Hydrostatics in a uniformly accelerated frame
 * (White, Fluid Mechanics).
 */
export function tiltAlong(acceleration: number, gradeAngle: number): number {
  if (!(Math.abs(acceleration) < Infinity && Math.abs(gradeAngle) < Math.PI / 2))
    refuse(acceleration, gradeAngle);
  return (acceleration + g * Math.sin(gradeAngle)) / (g * Math.cos(gradeAngle));
}

/**
 * Slope of the surface across the vehicle from its lateral acceleration [m/s²]; positive pushes fluid to y =
 * 0.
 */
export function tiltAcross(lateral: number): number {
  if (!(Math.abs(lateral) < Infinity)) impossible("lateral acceleration", lateral, "a finite one in m/s²");
  return lateral / g;
}

/** Lateral acceleration [m/s²] in a turn of the radius [m, Infinity straight on] at the speed [m/s]. */
export function turnAcceleration(speed: number, radius: number): number {
  finite("speed", speed, "m/s");
  if (!(radius > 0)) impossible("radius", radius, "more than 0 m");
  return (speed * speed) / radius;
}

/** Angle of the surface [rad] of a slope. */
export function tiltAngle(slope: number): number {
  finite("slope", slope);
  return Math.atan(slope);
}

function refuse(acceleration: number, gradeAngle: number): void {
  finite("acceleration", acceleration, "m/s²");
  impossible("grade angle", gradeAngle, "an angle within ±π/2 rad");
}
