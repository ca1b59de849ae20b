import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";
import { type Friction } from "./friction.ts";

/** A ring of lining: outer and inner radius [m]. */
export interface Ring {
  readonly outer: number;
  readonly inner: number;
}

/** A multi-plate clutch or brake as built; every reaction of the chain to it follows from these numbers. SI. */
export interface Clutch extends Ring {
  readonly name: string;
  /** Friction faces in contact: n double-sided friction plates between steels give 2n. */
  readonly faces: number;
  /** Area of the apply piston [m²]. */
  readonly pistonArea: number;
  /** Force of the return spring when the plates just touch [N]. */
  readonly spring: number;
  /** Piston travel until the plates touch [m]; the open pack shares it among its faces. */
  readonly stroke: number;
  /** Volume behind the piston and in its passage before it moves [m³]. */
  readonly deadVolume: number;
  /** Diameter of the orifice that feeds the piston [m], and its discharge coefficient. */
  readonly fillOrifice: number;
  readonly fillDischarge: number;
  readonly friction: Friction;
  /** Mass of all steel separators [kg], and the thickness of one [m]. */
  readonly steelMass: number;
  readonly steelThickness: number;
  /** Thickness of the friction material on one face, when new [m]. */
  readonly liningThickness: number;
  /** Steel area wetted by the lubrication [m²]. */
  readonly coolingArea: number;
}

/** Both radius laws take the plates as rigid; the two differ by under 0.5 % above this radius ratio. */
export const radiusRange: Range = {
  law: "effective friction radius of a rigid ring",
  quantity: "inner radius / outer radius",
  unit: "1",
  low: 0.5,
  high: 1,
  source: "Shigley, Mechanical Engineering Design, ch. 16 (recalled)",
};

function checkRing(ring: Ring): void {
  if (ring.inner >= 0 && ring.inner < ring.outer && ring.outer < Infinity) return;
  positive("outer", ring.outer, "m");
  impossible("inner", ring.inner, "a radius from 0 m to below the outer one");
}

/** Effective radius of a worn-in ring [m]: pressure times radius is constant, so R = (ro + ri)/2. Shigley ch. 16. */
export function meanRadiusWear(ring: Ring): number {
  checkRing(ring);
  return (ring.outer + ring.inner) / 2;
}

/** Effective radius of a new ring under even pressure [m]: R = (2/3)(ro³ − ri³)/(ro² − ri²). Shigley ch. 16. */
export function meanRadiusPressure(ring: Ring): number {
  checkRing(ring);
  const { outer, inner } = ring;
  // The difference ro − ri is divided out, so a thin ring loses no digits.
  return ((2 / 3) * (outer * outer + outer * inner + inner * inner)) / (outer + inner);
}

/** Lining area of one face [m²], grooves not taken off (they take 10 to 30 %). */
export function faceArea(ring: Ring): number {
  checkRing(ring);
  return Math.PI * (ring.outer - ring.inner) * (ring.outer + ring.inner);
}

/** Clamp force [N] at which a worn-in ring has the given pressure [Pa] at its inner edge: F = 2π p ri (ro − ri). */
export function wearForce(ring: Ring, peakPressure: number): number {
  checkRing(ring);
  notNegative("peakPressure", peakPressure, "Pa");
  return 2 * Math.PI * peakPressure * ring.inner * (ring.outer - ring.inner);
}

/** Pressure at the inner edge of a worn-in ring [Pa] under a clamp force [N]; needs an inner radius above 0. */
export function wearPressure(ring: Ring, force: number): number {
  checkRing(ring);
  if (!(ring.inner > 0))
    impossible("inner", ring.inner, "a radius above 0 m: at 0 the wear pressure has no bound");
  notNegative("force", force, "N");
  return force / (2 * Math.PI * ring.inner * (ring.outer - ring.inner));
}

/** Mean lining pressure [Pa] under a clamp force [N]. */
export function evenPressure(ring: Ring, force: number): number {
  notNegative("force", force, "N");
  return force / faceArea(ring);
}

/** Sliding speed at the mean radius [m/s] for a slip between the two sides [rad/s]. */
export function slidingSpeed(ring: Ring, slip: number): number {
  const speed = ((ring.outer + ring.inner) / 2) * slip;
  if (!(Math.abs(speed) < Infinity && ring.outer > 0 && ring.inner >= 0)) refuseSlip(ring, slip);
  return speed;
}

function refuseSlip(ring: Ring, slip: number): void {
  checkRing(ring);
  finite("slip", slip, "rad/s");
}
