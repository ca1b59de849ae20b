// What the linings have lost, as mass: the dark grains in the pan, and what charring has let go into the fluid.
import { fraction, impossible, notNegative, positive, type Range } from "../../errors.ts";

/** Density of dry friction paper [kg/m³], the one that its heat conduction is reckoned with: recalled, uncertain. */
export const liningDensity = 1125;

/** Most that pyrolysis of cellulose leaves as char: the limit of `charYield` in the cold. */
const mostChar = 0.35;

export const debrisRange: Range = {
  law: "mass of lost lining",
  quantity: "share charred",
  unit: "1",
  low: 0,
  high: 1,
  source:
    "paper taken as cellulose (Bradbury, Sakai and Shafizadeh 1979, recalled): at most 35 % of what chars stays as char",
};

/** Lining of one clutch [kg]: worn off, charred, and the least and most of it that has left the plates. */
export interface Debris {
  readonly worn: number;
  readonly charred: number;
  readonly least: number;
  readonly most: number;
}

/**
 * Debris of one clutch [kg] from its lining's area over all faces [m²], the thickness of one when new and the depth worn off
 * [m], and the share of what is left that has charred [0..1]. All that is worn off is loose; of what has charred at least 65 %
 * has gone as tar and gas, and the char itself either still sits on the plate (`least`) or has crumbled off too (`most`). Where
 * it is now, in pan, filter or fluid, or gone with the leak, this does not say.
 */
export function debris(area: number, thickness: number, wornDepth: number, charredShare: number): Debris {
  positive("area", area, "m²");
  notNegative("thickness", thickness, "m");
  if (!(wornDepth >= 0 && wornDepth <= thickness)) impossible("wornDepth", wornDepth, "0 m to the thickness");
  fraction("charredShare", charredShare);
  const worn = liningDensity * area * wornDepth;
  const charred = liningDensity * area * (thickness - wornDepth) * charredShare;
  return { worn, charred, least: worn + (1 - mostChar) * charred, most: worn + charred };
}
