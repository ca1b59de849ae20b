import { impossible, type Range } from "../../errors.ts";
import { gasConstant } from "./arrhenius.ts";

/** Cellulose in oil; used here up to its char range as the nearest published process to glazing. */
export const glazeRange: Range = {
  law: "chain scission of cellulose in oil",
  quantity: "temperature",
  unit: "K",
  low: 333.15,
  high: 433.15,
  source: "Emsley and Stevens, IEE Proc. Sci. Meas. Technol. 141, 1994 (recalled)",
};

/** Scissions per second of dry kraft paper in oil: A 1.07e8 per hour, E 111 kJ/mol. Water of 1 % makes it about three times faster. */
export function scissionRate(temperature: number): number {
  if (!(temperature > 0)) impossible("temperature", temperature, "an absolute temperature above 0 K");
  return (1.07e8 / 3600) * Math.exp(-111e3 / (gasConstant * temperature));
}

/** Scissions [1] between paper of one mean chain length and another: 1/DP − 1/DP0. */
export function scissions(from: number, to: number): number {
  if (!(from > 0)) impossible("from", from, "a chain length above 0");
  if (!(to > 0)) impossible("to", to, "a chain length above 0");
  return 1 / to - 1 / from;
}

/** Rate of glazing [1/s]: share per second of the way from sound (chain length 1000) to spent (200), where glaze is 1. */
export function glazeRate(temperature: number): number {
  return scissionRate(temperature) / 0.004;
}
