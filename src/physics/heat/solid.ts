import { positive } from "../../errors.ts";

/** What conduction needs to know of a material: conductivity k [W/(m K)] and diffusivity k/(rho c) [m²/s]. */
export interface Solid {
  readonly conductivity: number;
  readonly diffusivity: number;
}

/** A material from its conductivity [W/(m K)], density [kg/m³] and specific heat [J/(kg K)], all above zero. */
export function solid(conductivity: number, density: number, specificHeat: number): Solid {
  positive("conductivity", conductivity, "W/(m K)");
  positive("density", density, "kg/m³");
  positive("specificHeat", specificHeat, "J/(kg K)");
  return { conductivity, diffusivity: conductivity / (density * specificHeat) };
}

/** Plain carbon steel of separator plates: handbook values (recalled). */
export const separatorSteel: Solid = solid(46, 7850, 480);

/** Oil-wet friction paper: values of the order used in wet-clutch papers of about 1999 (recalled, uncertain). */
export const wetPaper: Solid = solid(0.24, 1125, 1600);

/** Refuses a material that cannot be. */
export function checkSolid(body: Solid): void {
  positive("conductivity", body.conductivity, "W/(m K)");
  positive("diffusivity", body.diffusivity, "m²/s");
}

/** Effusivity e = sqrt(k rho c) [W s^0.5/(m² K)]: how strongly a surface resists being heated by contact. */
export function effusivity(material: Solid): number {
  checkSolid(material);
  return material.conductivity / Math.sqrt(material.diffusivity);
}
