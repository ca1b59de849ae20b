// A crack through a tube wall: a slot that the stress on the tube holds open.
import { impossible, type Range } from "../../errors.ts";
import { shut, type GrowingOpening, type Opening } from "./flow.ts";
import { dischargeLimit } from "./hole.ts";

export const crackGapRange: Range = {
  law: "crack held open by stress",
  quantity: "shell parameter of the crack",
  unit: "1",
  low: 0,
  high: 5,
  source: "Wüthrich (1983), as in BS 7910, leak before break; elastic, axial crack",
};

/** `crackOpening` written into a record that is kept, for a crack that grows or breathes each second. */
export function crackOpeningInto(
  out: GrowingOpening,
  length: number,
  gap: number,
  wall: number,
  gape = 0,
): void {
  if (!(length >= 0 && length < Infinity)) impossible("length", length, "0 m or more");
  if (!(gap >= 0 && gap < Infinity)) impossible("gap", gap, "0 m or more");
  if (!(wall >= 0 && wall < Infinity)) impossible("wall", wall, "0 m or more");
  if (!(gape >= 0 && gape < Infinity)) impossible("gape", gape, "0 m or more");
  const mean = gap + gape;
  const area = length * mean;
  if (area === 0) {
    out.viscous = shut;
    out.inertial = shut;
    return;
  }
  const CA = dischargeLimit(wall / (2 * mean)) * area;
  const cube = gap * gap * (gap + 3 * gape) + gape * gape * (3 * ELLIPSE_SQUARE * gap + ELLIPSE_CUBE * gape);
  out.viscous = Math.min(shut, (12 * wall) / (length * cube));
  out.inertial = Math.min(shut, 1 / (2 * CA * CA));
}

/** Mean square and cube of a gap that is half an ellipse along the slot, over those of its mean: (2/3)/(π/4)², (3π/16)/(π/4)³. */
const ELLIPSE_SQUARE = 32 / (3 * Math.PI * Math.PI);
const ELLIPSE_CUBE = 12 / (Math.PI * Math.PI);

/**
 * A slot of a length [m] and gap [m, 0 is shut] through a wall [m]: viscous = 12 L/(w h³) (plane Poiseuille, for
 * w far above h), inertial = 1/(2 C² w² h²) with C for a hydraulic diameter of twice the gap. On top of the even gap it
 * may gape elastically by a mean [m], as an ellipse along its length: each place passes by its own gap, so the viscous part goes
 * with the mean of the cube, the inertial one with the mean. (Plane Poiseuille flow place by place, as lubrication theory has it.)
 */
export function crackOpening(length: number, gap: number, wall: number, gape = 0): Opening {
  const opening = { viscous: shut, inertial: shut };
  crackOpeningInto(opening, length, gap, wall, gape);
  return opening;
}

/** Shell parameter λ = [12(1 − ν²)]^¼ a/√(R t): how much a tube of this radius and wall [m] bulges at a crack. */
export function shellParameter(halfLength: number, radius: number, wall: number, poisson: number): number {
  if (!(halfLength >= 0 && halfLength < Infinity)) impossible("halfLength", halfLength, "0 m or more");
  if (!(radius > 0 && radius < Infinity)) impossible("radius", radius, "more than 0 m");
  if (!(wall > 0 && wall < Infinity)) impossible("wall", wall, "more than 0 m");
  if (!(poisson >= 0 && poisson <= 0.5)) impossible("poisson", poisson, "0 to 0.5");
  return Math.sqrt(Math.sqrt(12 * (1 - poisson * poisson)) / (radius * wall)) * halfLength;
}

/**
 * Mean gap [m] of an axial through crack of a half length [m] that a stress across it [Pa] holds open, in a tube of
 * an elastic modulus [Pa], mean radius [m], wall [m] and Poisson's ratio: (π/4)(4σa/E)(1 + 0.1λ + 0.16λ²).
 * Zero under compression: the crack shuts.
 * Source: the ellipse of a flat plate in plane stress, with Wüthrich's (1983) factor for the bulging of the tube.
 */
export function crackGap(
  stress: number,
  halfLength: number,
  modulus: number,
  radius: number,
  wall: number,
  poisson: number,
): number {
  if (!(Math.abs(stress) < Infinity)) impossible("stress", stress, "a finite stress in Pa");
  if (!(modulus > 0 && modulus < Infinity)) impossible("modulus", modulus, "more than 0 Pa");
  const lambda = shellParameter(halfLength, radius, wall, poisson);
  if (stress <= 0) return 0;
  return ((Math.PI * stress * halfLength) / modulus) * (1 + lambda * (0.1 + 0.16 * lambda));
}
