// Air dissolved in oil, and what comes out of it where the pressure is low.
import { impossible, type Range } from "../../errors.ts";
import { atmosphere } from "./surroundings.ts";

export const solubilityRange: Range = {
  law: "air dissolved in oil",
  quantity: "absolute pressure",
  unit: "Pa",
  low: 0,
  high: 3e7,
  source: "Henry's law, linear in mineral oil to about 300 bar; Bunsen coefficient 0.08 to 0.10",
};

function refuse(bunsen: number, absolutePressure: number): void {
  if (!(bunsen >= 0 && bunsen < Infinity)) impossible("bunsen", bunsen, "0 or more");
  if (!(absolutePressure >= 0 && absolutePressure < Infinity))
    impossible("absolutePressure", absolutePressure, "0 Pa abs or more");
}

/**
 * Gas dissolved at equilibrium in one volume of oil under an absolute pressure [Pa], as a volume at 0 °C and one
 * atmosphere. The Bunsen coefficient of air in mineral oil is about 0.09. Source: Henry's law; IUPAC, Bunsen coefficient.
 */
export function dissolvedVolume(bunsen: number, absolutePressure: number): number {
  refuse(bunsen, absolutePressure);
  return bunsen * (absolutePressure / atmosphere);
}

/**
 * Gas that oil saturated at one atmosphere would give up at a lower absolute pressure [Pa], per volume of oil, at 0 °C
 * and one atmosphere; zero above one atmosphere. An upper bound: release takes 0.1 to 10 s.
 */
export function dissolvedExcess(bunsen: number, absolutePressure: number): number {
  refuse(bunsen, absolutePressure);
  return bunsen * Math.max(0, 1 - absolutePressure / atmosphere);
}

/** Gas volume fraction that this excess makes at that pressure [Pa abs, above 0] and temperature [K]. */
export function excessFraction(bunsen: number, absolutePressure: number, temperature: number): number {
  if (!(absolutePressure > 0)) impossible("absolutePressure", absolutePressure, "more than 0 Pa abs");
  if (!(temperature > 0 && temperature < Infinity)) impossible("temperature", temperature, "more than 0 K");
  const squeezed = dissolvedExcess(bunsen, absolutePressure) * (temperature / 273.15);
  return squeezed / (absolutePressure / atmosphere + squeezed);
}

/**
 * Absolute pressure [Pa] at which oil saturated at one atmosphere has taken in all of a free-gas fraction (at one
 * atmosphere) that it is given time to dissolve: p₀[1 + x/((1 − x)·bunsen)].
 */
export function dissolvingPressure(bunsen: number, gas0: number): number {
  if (!(bunsen > 0 && bunsen < Infinity)) impossible("bunsen", bunsen, "more than 0");
  if (!(gas0 >= 0 && gas0 < 1)) impossible("gas0", gas0, "0 to less than 1");
  return atmosphere * (1 + gas0 / (1 - gas0) / bunsen);
}

/** Share of an excess that has come out (or gone back) after so long: 1 − e^(−t/τ), times in seconds. */
export function releasedShare(seconds: number, timeConstant: number): number {
  if (!(seconds >= 0 && seconds < Infinity)) impossible("seconds", seconds, "0 s or more");
  if (!(timeConstant > 0 && timeConstant < Infinity))
    impossible("timeConstant", timeConstant, "more than 0 s");
  return -Math.expm1(-seconds / timeConstant);
}
