import { finite, impossible, notNegative, type Range } from "../../errors.ts";

/** A ring of fluid that turns with its drum: piston from `inner` to `outer`, free surface at radius `free` [m]. */
export interface TurningRing {
  readonly inner: number;
  readonly outer: number;
  readonly free: number;
}

/** Solid-body rotation, and a free surface that does not lie outside the piston. */
export const centrifugalRange: Range = {
  law: "pressure of fluid turning as a solid body",
  quantity: "drum speed",
  unit: "rad/s",
  low: 0,
  high: 1000,
  source: "hydrostatics in a turning frame (White, Fluid Mechanics, recalled)",
};

function check(ring: TurningRing, density: number, speed: number): void {
  notNegative("density", density, "kg/m³");
  notNegative("inner", ring.inner, "m");
  if (!(ring.outer > ring.inner && ring.outer < Infinity))
    impossible("outer", ring.outer, "a radius in m above the inner one");
  notNegative("free", ring.free, "m");
  finite("speed", speed, "rad/s");
}

/** Pressure at the outer edge [Pa] at a drum speed [rad/s]: p = rho w² (ro² − rf²)/2. */
export function centrifugalPressure(ring: TurningRing, density: number, speed: number): number {
  check(ring, density, speed);
  return Math.max(0, (density * speed * speed * (ring.outer - ring.free) * (ring.outer + ring.free)) / 2);
}

/** Force on the piston [N]: F = pi rho w² ((r2⁴ − r1⁴)/4 − rf² (r2² − r1²)/2), the wetted part only. */
export function centrifugalForce(ring: TurningRing, density: number, speed: number): number {
  check(ring, density, speed);
  if (ring.free >= ring.outer) return 0;
  const r2 = ring.outer ** 2;
  const rf = ring.free ** 2;
  // Fluid reaches no further in than its free surface.
  const r1 = Math.max(ring.inner ** 2, rf);
  return Math.PI * density * speed * speed * (r2 - r1) * ((r2 + r1) / 4 - rf / 2);
}

/**
 * Drum speed [rad/s] above which fluid trapped behind the piston overcomes the return spring of a released clutch
 * whose balance side has run dry; undefined when the ring holds nothing that could push.
 */
export function dragOnSpeed(ring: TurningRing, density: number, spring: number): number | undefined {
  notNegative("spring", spring, "N");
  const perSpeedSquared = centrifugalForce(ring, density, 1);
  return perSpeedSquared > 0 ? Math.sqrt(spring / perSpeedSquared) : undefined;
}
