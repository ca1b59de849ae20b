import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";

/** Specific wear of paper in oil; only back-derived values were found, so it stays an input with this range. */
export const wearRange: Range = {
  law: "wear of a paper lining in oil by energy",
  quantity: "specific wear",
  unit: "m³/J",
  low: 1e-15,
  high: 1e-13,
  source:
    "1e-14 and up back-derived from about 0.05 mm over thousands of 0.5 J/mm² engagements (recalled, uncertain); less in milder service (assumed)",
};

/** Depth worn off [m] by a friction energy [J] on an area [m²]: specific wear w [m³/J] times energy per area. Archard 1953. */
export function wearDepth(energy: number, area: number, perEnergy: number): number {
  if (!(area > 0)) impossible("area", area, "an area above 0 m²");
  if (!(energy >= 0)) impossible("energy", energy, "an energy of 0 J or more");
  if (!(perEnergy >= 0)) impossible("perEnergy", perEnergy, "a specific wear of 0 m³/J or more");
  return (perEnergy * energy) / area;
}

/** Depth worn off [m] by Archard's law: k p s, k [m³/(N m)], mean pressure [Pa], distance slid [m]. Archard 1953. */
export function archardDepth(perLoadDistance: number, pressure: number, distance: number): number {
  notNegative("perLoadDistance", perLoadDistance, "m³/(N m)");
  notNegative("pressure", pressure, "Pa");
  finite("distance", distance, "m");
  return perLoadDistance * pressure * Math.abs(distance);
}

/** Specific wear per energy [m³/J] from wear per load and distance [m³/(N m)]: friction turns N m of load into mu J of heat. */
export function wearPerEnergy(perLoadDistance: number, mu: number): number {
  notNegative("perLoadDistance", perLoadDistance, "m³/(N m)");
  positive("mu", mu);
  return perLoadDistance / mu;
}

/** Friction energy per area [J/m²] that wears off a depth [m]. */
export function energyToWear(depth: number, perEnergy: number): number {
  notNegative("depth", depth, "m");
  positive("perEnergy", perEnergy, "m³/J");
  return depth / perEnergy;
}
