import { impossible } from "../../errors.ts";

/** What conduction needs to know of a material: conductivity k [W/(m K)] and diffusivity k/(rho c) [m²/s]. */
export interface Solid {
  readonly conductivity: number;
  readonly diffusivity: number;
}

/** A material from its conductivity [W/(m K)], density [kg/m³] and specific heat [J/(kg K)], all above zero. */
export function solid(conductivity: number, density: number, specificHeat: number): Solid {
  if (!(conductivity > 0)) impossible("conductivity", conductivity, "a conductivity above 0 W/(m K)");
  if (!(density > 0)) impossible("density", density, "a density above 0 kg/m³");
  if (!(specificHeat > 0)) impossible("specificHeat", specificHeat, "a specific heat above 0 J/(kg K)");
  return { conductivity, diffusivity: conductivity / (density * specificHeat) };
}

/** Plain carbon steel of separator plates: handbook values (recalled). */
export const separatorSteel: Solid = solid(46, 7850, 480);

/** Oil-wet friction paper: values of the order used in wet-clutch papers of about 1999 (recalled, uncertain). */
export const wetPaper: Solid = solid(0.24, 1125, 1600);

/** Effusivity e = sqrt(k rho c) [W s^0.5/(m² K)]: how strongly a surface resists being heated by contact. */
export function effusivity(material: Solid): number {
  return material.conductivity / Math.sqrt(material.diffusivity);
}
