import { impossible, type Range } from "../../errors.ts";
import { type Clutch, faceArea, meanRadiusWear } from "./geometry.ts";

/** Lining pressures for which oil-immersed paper is rated. */
export const liningPressureRange: Range = {
  law: "clutch capacity, oil-immersed paper",
  quantity: "lining pressure",
  unit: "Pa",
  low: 0,
  high: 1.75e6,
  source: "Neale (ed.), The Tribology Handbook, table 7.4",
};

function checkPiston(clutch: Clutch): void {
  if (!(clutch.pistonArea > 0)) impossible("pistonArea", clutch.pistonArea, "an area above 0 m²");
  if (!(clutch.spring >= 0)) impossible("spring", clutch.spring, "a force of 0 N or more");
}

/** Kiss pressure [Pa]: below it the return spring keeps the plates apart and nothing is carried. */
export function kissPressure(clutch: Clutch): number {
  checkPiston(clutch);
  return clutch.spring / clutch.pistonArea;
}

/** Clamp force [N] at an apply pressure [Pa, gauge]: pressure times piston area less the spring, never below zero. */
export function clampForce(clutch: Clutch, pressure: number): number {
  checkPiston(clutch);
  if (Number.isNaN(pressure)) impossible("pressure", pressure, "a gauge pressure in Pa");
  return Math.max(0, pressure * clutch.pistonArea - clutch.spring);
}

/** Largest torque of a number of faces [N m]: T = mu N F R. Shigley, Mechanical Engineering Design, ch. 16. */
export function frictionTorque(
  clampForce: number,
  mu: number,
  pack: { readonly faces: number; readonly radius: number },
): number {
  if (!(mu >= 0)) impossible("mu", mu, "a coefficient of 0 or more");
  return mu * pack.faces * clampForce * pack.radius;
}

/**
 * Capacity of a worn-in clutch [N m]: the most that it can carry at an apply pressure [Pa] and a
 * coefficient of friction mu. Zero up to kiss pressure, linear above.
 */
export function capacity(clutch: Clutch, pressure: number, mu: number): number {
  if (!(mu >= 0)) impossible("mu", mu, "a coefficient of 0 or more");
  return mu * clutch.faces * clampForce(clutch, pressure) * meanRadiusWear(clutch);
}

/** Capacity gained by each pascal above kiss pressure [N m/Pa]: K = mu N R A. */
export function torquePerPressure(clutch: Clutch, mu: number): number {
  checkPiston(clutch);
  if (!(mu >= 0)) impossible("mu", mu, "a coefficient of 0 or more");
  return mu * clutch.faces * meanRadiusWear(clutch) * clutch.pistonArea;
}

/** Lock pressure [Pa]: from here up a torque [N m] is carried without slip. Friction must be above zero. */
export function lockPressure(clutch: Clutch, torque: number, mu: number): number {
  if (!(mu > 0)) impossible("mu", mu, "a coefficient above 0: nothing locks without friction");
  if (!(clutch.faces > 0)) impossible("faces", clutch.faces, "at least one face");
  return kissPressure(clutch) + Math.max(0, torque) / torquePerPressure(clutch, mu);
}

/** Mean pressure on the lining [Pa] at an apply pressure [Pa]. */
export function liningPressure(clutch: Clutch, pressure: number): number {
  return clampForce(clutch, pressure) / faceArea(clutch);
}
