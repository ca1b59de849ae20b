import { impossible, type Range } from "../../errors.ts";

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

function check(ring: TurningRing, density: number): void {
  if (!(density >= 0)) impossible("density", density, "a density of 0 kg/m³ or more");
  if (!(ring.inner >= 0 && ring.outer > ring.inner))
    impossible("outer", ring.outer, "a radius above the inner one, which is 0 m or more");
  if (!(ring.free >= 0)) impossible("free", ring.free, "a radius of 0 m or more");
}

/** Pressure at the outer edge [Pa] at a drum speed [rad/s]: p = rho w² (ro² − rf²)/2. */
export function centrifugalPressure(ring: TurningRing, density: number, speed: number): number {
  check(ring, density);
  return Math.max(0, (density * speed * speed * (ring.outer - ring.free) * (ring.outer + ring.free)) / 2);
}

/** Force on the piston [N]: F = pi rho w² ((r2⁴ − r1⁴)/4 − rf² (r2² − r1²)/2), the wetted part only. */
export function centrifugalForce(ring: TurningRing, density: number, speed: number): number {
  check(ring, density);
  const r2 = ring.outer ** 2;
  const rf = ring.free ** 2;
  // Fluid reaches no further in than its free surface.
  const r1 = Math.max(ring.inner ** 2, Math.min(rf, r2));
  return Math.PI * density * speed * speed * (r2 - r1) * ((r2 + r1) / 4 - rf / 2);
}

/**
 * Drum speed [rad/s] above which fluid trapped behind the piston overcomes the return spring of a released clutch
 * whose balance side has run dry; undefined when the ring holds nothing that could push.
 */
export function dragOnSpeed(ring: TurningRing, density: number, spring: number): number | undefined {
  if (!(spring >= 0)) impossible("spring", spring, "a force of 0 N or more");
  const perSpeedSquared = centrifugalForce(ring, density, 1);
  return perSpeedSquared > 0 ? Math.sqrt(spring / perSpeedSquared) : undefined;
}
