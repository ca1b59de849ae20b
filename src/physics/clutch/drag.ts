import { finite, notNegative, positive, type Range } from "../../errors.ts";
import { faceArea, type Clutch } from "./geometry.ts";

/** A full film is needed; at speed it breaks up and the law reads too high. */
export const dragRange: Range = {
  law: "viscous drag of an open pack, full film",
  quantity: "slip",
  unit: "rad/s",
  low: 0,
  high: 200,
  source:
    "Newton's law of viscosity for two flat rings; break-up of the film recalled from drag measurements",
};

/**
 * Drag of an open pack [N m] at a slip [rad/s]: T = N pi mu w (ro⁴ − ri⁴)/(2h), the film h being the piston's stroke
 * shared among the faces. Dynamic viscosity in Pa s.
 */
export function openPackDrag(clutch: Clutch, viscosity: number, slip: number): number {
  notNegative("viscosity", viscosity, "Pa s");
  positive("stroke", clutch.stroke, "m");
  positive("faces", clutch.faces);
  finite("slip", slip, "rad/s");
  const film = clutch.stroke / clutch.faces;
  const polar = (faceArea(clutch) * (clutch.outer * clutch.outer + clutch.inner * clutch.inner)) / 2;
  return (clutch.faces * viscosity * slip * polar) / film;
}
