// What a foam pad or felt above the shield soaks up before it lets a drop through.
import { impossible, notNegative, positive, type Range } from "../../errors.ts";

export const soakRange: Range = {
  law: "oil soaked up by open foam",
  quantity: "density of the dry foam",
  unit: "kg/m³",
  low: 15,
  high: 100,
  source: "soft open-cell polyurethane; closed cells and coarse pores keep far less",
};

function refuse(dryDensity: number, solidDensity: number): void {
  positive("dryDensity", dryDensity, "kg/m³");
  if (!(solidDensity >= dryDensity && solidDensity < Infinity))
    impossible("solidDensity", solidDensity, "no less than the density of the dry pad");
}

/** Volume [m³] that the pores of a pad of a volume [m³] can hold, from the densities of the dry pad and its solid [kg/m³]. */
export function poreVolume(volume: number, dryDensity: number, solidDensity: number): number {
  notNegative("volume", volume, "m³");
  refuse(dryDensity, solidDensity);
  return volume * (1 - dryDensity / solidDensity);
}

/** Mass of oil that full pores hold, for each mass of dry pad: the upper bound of an uptake test (ASTM F726). */
export function fullUptake(dryDensity: number, solidDensity: number, oilDensity: number): number {
  positive("oilDensity", oilDensity, "kg/m³");
  return (poreVolume(1, dryDensity, solidDensity) * oilDensity) / dryDensity;
}

/** Volume [m³] that a pad of a dry mass [kg] soaks up by a tested uptake (mass of oil for each mass of dry pad). */
export function soakedVolume(dryMass: number, uptake: number, oilDensity: number): number {
  notNegative("dryMass", dryMass, "kg");
  notNegative("uptake", uptake);
  positive("oilDensity", oilDensity, "kg/m³");
  return (dryMass * uptake) / oilDensity;
}
