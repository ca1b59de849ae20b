// How fast hot fluid is used up: the trade's life table, as a rate.
import { impossible, type Range } from "../../errors.ts";

export const fluidAgeingRange: Range = {
  law: "fluid life by temperature",
  quantity: "temperature",
  unit: "K",
  low: 352.6,
  high: 472,
  source: "common practice: trade life table, 175 to 390 degF; it ranks, it does not predict",
};

const lifeAt175F = (100_000 / 30) * 3600; // s: 100,000 miles at 30 miles an hour

/**
 * Share of the fluid's life used up each second [1/s] at a temperature [K]: 100,000 miles of life at 175 °F, driven
 * at 30 miles an hour, and half of that for each 20 °F more. Common practice; no test stands behind it.
 */
export function fluidAgeingRate(temperature: number): number {
  if (!(temperature > 0 && temperature < Infinity)) impossible("temperature", temperature, "more than 0 K");
  const halvings = (1.8 * temperature - 459.67 - 175) / 20;
  return Math.exp(Math.LN2 * Math.min(halvings, 1000)) / lifeAt175F; // the cap only keeps a star's temperature finite
}

/** Age (share of life used) of a charge [kg] after fresh fluid [kg] is added: a mean by mass. */
export function ageAfterTopUp(age: number, mass: number, added: number): number {
  if (!(age >= 0 && age < Infinity)) impossible("age", age, "0 or more");
  if (!(mass >= 0 && mass < Infinity)) impossible("mass", mass, "0 kg or more");
  if (!(added >= 0 && added < Infinity)) impossible("added", added, "0 kg or more");
  return mass === 0 ? 0 : age * (mass / (mass + added));
}
