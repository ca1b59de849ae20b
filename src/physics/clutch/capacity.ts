import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";
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

function refuse(clutch: Clutch, pressure = 0, mu = 0): void {
  positive("faces", clutch.faces);
  positive("pistonArea", clutch.pistonArea, "m²");
  notNegative("spring", clutch.spring, "N");
  finite("pressure", pressure, "Pa");
  notNegative("mu", mu);
}

/**
 * Kiss pressure [Pa]: spring force [N] over piston area [m²]; below it the return spring keeps the plates apart and nothing is carried, just above it the clutch is neither
 * on nor off. Law: the balance of forces on the piston; 0 without a spring. Errors: faces or piston area not above 0, a spring below 0.
 */
export function kissPressure(clutch: Clutch): number {
  const kiss = clutch.spring / clutch.pistonArea;
  if (!(kiss >= 0 && kiss < Infinity)) refuse(clutch);
  return kiss;
}

/** Clamp force [N] at an apply pressure [Pa, gauge]: pressure times piston area less the spring, never below zero. */
export function clampForce(clutch: Clutch, pressure: number): number {
  const force = pressure * clutch.pistonArea - clutch.spring;
  if (!(Math.abs(force) < Infinity && clutch.pistonArea > 0 && clutch.spring >= 0)) refuse(clutch, pressure);
  return force > 0 ? force : 0;
}

/** Largest torque of a number of faces [N m]: T = mu N F R. Shigley, Mechanical Engineering Design, ch. 16. */
export function frictionTorque(
  clampForce: number,
  mu: number,
  pack: { readonly faces: number; readonly radius: number },
): number {
  notNegative("clampForce", clampForce, "N");
  notNegative("mu", mu);
  positive("faces", pack.faces);
  notNegative("radius", pack.radius, "m");
  return mu * pack.faces * clampForce * pack.radius;
}

/**
 * Capacity of a worn-in clutch [N m]: the most that it can carry at an apply pressure [Pa] and a
 * coefficient of friction mu. Zero up to kiss pressure, linear above.
 */
export function capacity(clutch: Clutch, pressure: number, mu: number): number {
  if (!(mu >= 0 && mu < Infinity && clutch.faces > 0 && clutch.faces < Infinity))
    refuse(clutch, pressure, mu);
  return mu * clutch.faces * clampForce(clutch, pressure) * meanRadiusWear(clutch);
}

/** Capacity gained by each pascal above kiss pressure [N m/Pa]: K = mu N R A. */
export function torquePerPressure(clutch: Clutch, mu: number): number {
  refuse(clutch, 0, mu);
  return mu * clutch.faces * meanRadiusWear(clutch) * clutch.pistonArea;
}

/** Lock pressure [Pa]: from here up a torque [N m] is carried without slip. Friction must be above zero. */
export function lockPressure(clutch: Clutch, torque: number, mu: number): number {
  finite("torque", torque, "N m");
  if (!(mu > 0)) impossible("mu", mu, "a coefficient above 0: nothing locks without friction");
  return kissPressure(clutch) + Math.max(0, torque) / torquePerPressure(clutch, mu);
}

/** Mean pressure on the lining [Pa] at an apply pressure [Pa]. */
export function liningPressure(clutch: Clutch, pressure: number): number {
  return clampForce(clutch, pressure) / faceArea(clutch);
}
