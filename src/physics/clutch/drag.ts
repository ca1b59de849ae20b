import { impossible, type Range } from "../../errors.ts";
import { type Clutch } from "./geometry.ts";

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
  if (!(viscosity >= 0)) impossible("viscosity", viscosity, "a dynamic viscosity of 0 Pa s or more");
  if (!(clutch.stroke > 0)) impossible("stroke", clutch.stroke, "a travel above 0 m");
  if (!(clutch.faces > 0)) impossible("faces", clutch.faces, "at least one face");
  const film = clutch.stroke / clutch.faces;
  return (clutch.faces * Math.PI * viscosity * slip * (clutch.outer ** 4 - clutch.inner ** 4)) / (2 * film);
}
