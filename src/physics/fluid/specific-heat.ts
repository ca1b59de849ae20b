// How much heat oil takes up and lets through: Cragoe, NBS Miscellaneous Publication 97 (1929).
import { impossible, type Range } from "../../errors.ts";

export const specificHeatRange: Range = {
  law: "heat capacity of petroleum oil",
  quantity: "temperature",
  unit: "K",
  low: 273.15,
  high: 473.15,
  source:
    "Cragoe, NBS Misc. Pub. 97 (1929): specific gravity 0.75 to 0.96; 2 to 4 % in heat, 10 % in conductivity",
};

const water15 = 999.0; // kg/m³ at 15.6 °C, to which specific gravity refers

function specificGravity(density15: number): number {
  if (!(density15 > 0 && density15 < Infinity)) impossible("density15", density15, "more than 0 kg/m³");
  return density15 / water15;
}

function celsius(temperature: number): number {
  if (!(temperature > 0 && temperature < Infinity)) impossible("temperature", temperature, "more than 0 K");
  return temperature - 273.15;
}

/** Specific heat [J/(kg K)] of oil of a density at 15 °C [kg/m³] at a temperature [K]: (1685 + 3.39 t)/√s. */
export function specificHeat(density15: number, temperature: number): number {
  return (1685 + 3.39 * celsius(temperature)) / Math.sqrt(specificGravity(density15));
}

/** Heat content above 0 °C [J/kg]: the exact integral of `specificHeat`, negative below 0 °C. */
export function specificEnergy(density15: number, temperature: number): number {
  const t = celsius(temperature);
  return (t * (1685 + 1.695 * t)) / Math.sqrt(specificGravity(density15));
}

/** Thermal conductivity [W/(m K)]: (0.1172/s)(1 − 0.00054 t), held at zero where that line would end (1850 °C). */
export function thermalConductivity(density15: number, temperature: number): number {
  return (0.1172 / specificGravity(density15)) * Math.max(0, 1 - 0.00054 * celsius(temperature));
}
