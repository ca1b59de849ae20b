import { finite, notNegative, positive, type Range } from "../../errors.ts";

/** Friction of an oil-wet lining: mu(v, T) = (base + rise tanh(v/riseSpeed) + slope v)(1 − heatLoss (T − reference)). */
export interface Friction {
  /** Coefficient at the lowest sliding speed [1]. */
  readonly base: number;
  /** Gain from creeping to sliding [1], reached over riseSpeed [m/s]: above 0 for good friction-modified fluid. */
  readonly rise: number;
  readonly riseSpeed: number;
  /** Slope at speed [s/m], slightly negative where a film carries part of the load. */
  readonly slope: number;
  /** Loss with temperature [1/K], and the temperature at which the coefficients hold [K]. */
  readonly heatLoss: number;
  readonly reference: number;
}

/** No universal temperature law exists: 0 to 1.5e-3 per K is a recalled range, held here between 0.3 and 1.2. */
export const frictionRange: Range = {
  law: "friction of oil-wet paper",
  quantity: "sliding speed",
  unit: "m/s",
  low: 0,
  high: 40,
  source: "SAE J2490 (2003) and JASO M348 span 0.7 to 3600 rpm (recalled); temperature loss assumed linear",
};

/**
 * Coefficient of friction [1] at a sliding speed [m/s], whatever its sign, and an interface temperature [K].
 * Never below zero; the temperature factor is held between 0.3 and 1.2.
 */
export function frictionCoefficient(friction: Friction, slidingSpeed: number, temperature: number): number {
  return slidingFriction(friction, Math.abs(slidingSpeed)) * heatFactor(friction, temperature);
}

/** The coefficient [1] at the reference temperature, for a sliding speed of 0 m/s or more. */
export function slidingFriction(friction: Friction, speed: number): number {
  const cold = friction.base + friction.rise * Math.tanh(speed / friction.riseSpeed) + friction.slope * speed;
  if (!(Math.abs(cold) < Infinity && speed >= 0 && friction.base >= 0 && friction.riseSpeed > 0))
    refuseSliding(friction, speed);
  return cold > 0 ? cold : 0;
}

/** What an interface temperature [K] leaves of the coefficient: a line through 1 at the reference, held between 0.3 and 1.2. */
export function heatFactor(friction: Friction, temperature: number): number {
  const factor = 1 - friction.heatLoss * (temperature - friction.reference);
  if (!(temperature > 0 && Math.abs(factor) < Infinity && friction.reference > 0))
    refuseHeat(friction, temperature);
  return factor > 1.2 ? 1.2 : factor < 0.3 ? 0.3 : factor;
}

/** Slope dmu/dv [s/m] at the reference temperature; below zero the clutch can shudder. */
export function frictionSlope(friction: Friction, slidingSpeed: number): number {
  const v0 = friction.riseSpeed;
  const c = Math.cosh(Math.min(350, Math.abs(slidingSpeed) / v0));
  const slope = friction.rise / (v0 * c * c) + friction.slope;
  if (!(Math.abs(slope) < Infinity && v0 > 0 && Math.abs(slidingSpeed) < Infinity))
    refuseSlope(friction, v0, slidingSpeed);
  return slope;
}

/** Stribeck curve of a worn-out fluid: static above sliding, which is what shudders. */
export interface Stribeck {
  readonly coulomb: number;
  readonly atRest: number;
  /** Speed [m/s] and exponent of the fall from `atRest` to `coulomb`. */
  readonly speed: number;
  readonly exponent: number;
  /** Slope at speed [s/m]. */
  readonly viscous: number;
}

/** mu = muC + (muS − muC) exp(−(v/vS)^d) + kv v [1]. Bo and Pavelescu 1982, Armstrong-Hélouvry 1991. */
export function stribeckFriction(curve: Stribeck, slidingSpeed: number): number {
  notNegative("coulomb", curve.coulomb);
  notNegative("atRest", curve.atRest);
  positive("speed", curve.speed, "m/s");
  positive("exponent", curve.exponent);
  finite("viscous", curve.viscous, "s/m");
  finite("slidingSpeed", slidingSpeed, "m/s");
  const v = Math.abs(slidingSpeed);
  const mixed = Math.exp(-((v / curve.speed) ** curve.exponent));
  return curve.coulomb + (curve.atRest - curve.coulomb) * mixed + curve.viscous * v;
}

/** Coefficient that a test rig reports [1]: torque over faces, clamp force and mean radius. SAE J286. */
export function frictionFromTest(
  torque: number,
  clampForce: number,
  rig: { readonly faces: number; readonly radius: number },
): number {
  finite("torque", torque, "N m");
  positive("clampForce", clampForce, "N");
  positive("faces", rig.faces);
  positive("radius", rig.radius, "m");
  return torque / (rig.faces * clampForce * rig.radius);
}

function refuseSliding(friction: Friction, speed: number): void {
  notNegative("base", friction.base);
  finite("rise", friction.rise);
  positive("riseSpeed", friction.riseSpeed, "m/s");
  finite("slope", friction.slope, "s/m");
  notNegative("slidingSpeed", speed, "m/s");
}

function refuseHeat(friction: Friction, temperature: number): void {
  finite("heatLoss", friction.heatLoss, "1/K");
  positive("reference", friction.reference, "K");
  positive("temperature", temperature, "K");
}

function refuseSlope(friction: Friction, v0: number, slidingSpeed: number): void {
  finite("rise", friction.rise);
  positive("riseSpeed", v0, "m/s");
  finite("slope", friction.slope, "s/m");
  finite("slidingSpeed", slidingSpeed, "m/s");
}
