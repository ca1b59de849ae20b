// Density against temperature: API MPMS 11.1 (ASTM D1250, 1980), generalised lubricating oils.
import { impossible, type Range } from "../../errors.ts";

export const densityRange: Range = {
  law: "density of lubricating oil",
  quantity: "temperature",
  unit: "K",
  low: 253.15,
  high: 423.15,
  source: "API MPMS 11.1 (1980), tables 53D and 54D; 800 to 1164 kg/m³ at 15 degC",
};

/**
 * Volume of oil at 15 °C [288.15 K] that fills one unit of volume at a temperature [K]: the standard's volume
 * correction factor, 1 at 15 °C and less when hot. α = 0.6278/ρ₁₅; VCF = exp[−α Δt (1 + 0.8 α Δt)].
 */
export function volumeCorrection(density15: number, temperature: number): number {
  if (!(density15 > 0 && density15 < Infinity)) impossible("density15", density15, "more than 0 kg/m³");
  if (!(temperature > 0 && temperature < Infinity)) impossible("temperature", temperature, "more than 0 K");
  const stretch = (0.6278 / density15) * (temperature - 288.15);
  return Math.exp(-stretch * (1 + 0.8 * stretch));
}

/**
 * Density [kg/m³] of oil at a temperature [K], from its density at 15 °C [kg/m³].
 * Source: API MPMS 11.1 (1980) with the constants for lubricating oils, K₀ = 0 and K₁ = 0.6278.
 */
export function density(density15: number, temperature: number): number {
  return density15 * volumeCorrection(density15, temperature);
}
