// The ring-shaped gap of a fitting: past a hardened O-ring, a crimp that has shrunk, a loose ferrule.
import { impossible, type Range } from "../../errors.ts";
import { shut, type GrowingOpening, type Opening } from "./flow.ts";
import { dischargeLimit } from "./hole.ts";

export const annulusRange: Range = {
  law: "ring gap of a fitting",
  quantity: "clearance over diameter",
  unit: "1",
  low: 0,
  high: 0.05,
  source: "plane Poiseuille flow unrolled: the clearance is small beside the diameter",
};

/** `annulusOpening` written into a record that is kept, for a seal that loosens each second. */
export function annulusOpeningInto(
  out: GrowingOpening,
  diameter: number,
  clearance: number,
  length: number,
  eccentricity: number,
): void {
  if (!(diameter >= 0 && diameter < Infinity)) impossible("diameter", diameter, "0 m or more");
  if (!(clearance >= 0 && clearance < Infinity)) impossible("clearance", clearance, "0 m or more");
  if (!(length >= 0 && length < Infinity)) impossible("length", length, "0 m or more");
  if (!(eccentricity >= 0 && eccentricity <= 1)) impossible("eccentricity", eccentricity, "0 to 1");
  const area = Math.PI * diameter * clearance;
  if (area === 0) {
    out.viscous = shut;
    out.inertial = shut;
    return;
  }
  const CA = dischargeLimit(length / (2 * clearance)) * area;
  out.viscous = Math.min(
    shut,
    (12 * length) / (area * clearance * clearance * (1 + 1.5 * eccentricity * eccentricity)),
  );
  out.inertial = Math.min(shut, 1 / (2 * CA * CA));
}

/**
 * A ring gap on a diameter [m] with a radial clearance [m, 0 is shut] along a length [m]; eccentricity is offset over
 * clearance, 0 (centred) to 1 (touching, which leaks 2.5 times as much while the flow is viscous).
 * viscous = 12 L/(π D c³ (1 + 1.5 ε²)), inertial = 1/(2 C² (π D c)²). Source: textbook annulus, thin gap.
 */
export function annulusOpening(
  diameter: number,
  clearance: number,
  length: number,
  eccentricity: number,
): Opening {
  const opening = { viscous: shut, inertial: shut };
  annulusOpeningInto(opening, diameter, clearance, length, eccentricity);
  return opening;
}
