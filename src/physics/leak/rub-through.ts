// A line that rubs on a bracket or on a second line until the wall is gone.
import { impossible, type Range } from "../../errors.ts";

export const wearRange: Range = {
  law: "wear by rubbing",
  quantity: "wear coefficient",
  unit: "1",
  low: 1e-7,
  high: 1e-1,
  source: "fretting 1e-6 to 1e-4, adhesive 1e-4, abrasive 1e-2 to 1e-1 (lecture and encyclopedia tables)",
};

/** Volume [m³] worn off the softer body of a hardness [Pa] by a force [N] over a slid distance [m]: k F s/H. Archard (1953). */
export function wornVolume(coefficient: number, force: number, distance: number, hardness: number): number {
  if (!(coefficient >= 0 && coefficient < Infinity)) impossible("coefficient", coefficient, "0 or more");
  if (!(force >= 0 && force < Infinity)) impossible("force", force, "0 N or more");
  if (!(distance >= 0 && distance < Infinity)) impossible("distance", distance, "0 m or more");
  if (!(hardness > 0 && hardness < Infinity)) impossible("hardness", hardness, "more than 0 Pa");
  return (coefficient * force * distance) / hardness;
}

/** Distance [m] slid in so many seconds by a to-and-fro motion of an amplitude [m] at a frequency [Hz]: 4 a f t. */
export function slidDistance(amplitude: number, frequency: number, seconds: number): number {
  if (!(amplitude >= 0 && amplitude < Infinity)) impossible("amplitude", amplitude, "0 m or more");
  if (!(frequency >= 0 && frequency < Infinity)) impossible("frequency", frequency, "0 Hz or more");
  if (!(seconds >= 0 && seconds < Infinity)) impossible("seconds", seconds, "0 s or more");
  return 4 * amplitude * frequency * seconds;
}

/** Seconds until a volume [m³] (patch times wall) is worn away at a wear rate [m³/s]; undefined when nothing wears. */
export function rubThroughTime(volume: number, wearRate: number): number | undefined {
  if (!(volume >= 0 && volume < Infinity)) impossible("volume", volume, "0 m³ or more");
  if (!(wearRate >= 0 && wearRate < Infinity)) impossible("wearRate", wearRate, "0 m³/s or more");
  return wearRate === 0 ? undefined : volume / wearRate;
}
