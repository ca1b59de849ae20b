// The pull of an oil surface: it sets the size of a drop and what a dry pinhole holds back.
import { impossible, type Range } from "../../errors.ts";

export const surfaceTensionRange: Range = {
  law: "surface tension of lubricating oil",
  quantity: "temperature",
  unit: "K",
  low: 273.15,
  high: 423.15,
  source:
    "lubrication handbooks: 28 to 33 mN/m at 25 degC, falling 0.06 to 0.10 mN/m each kelvin; good to 10 %",
};

/** Surface tension [N/m] of mineral and synthetic transmission oil against air at a temperature [K]; never negative. */
export function surfaceTension(temperature: number): number {
  if (!(temperature > 0 && temperature < Infinity)) impossible("temperature", temperature, "more than 0 K");
  return Math.max(0, 0.0315 - 7.2e-5 * (temperature - 298.15));
}

/**
 * Surface tension [N/m] of a petroleum liquid from its critical temperature [K] and Watson factor (about 850 K
 * and 12 for a base oil); zero from the critical point up. Average error 10.7 %.
 * Source: API Technical Data Book, procedure 10A3.2 (its number is in mN/m).
 */
export function apiSurfaceTension(
  temperature: number,
  criticalTemperature: number,
  watsonFactor: number,
): number {
  if (!(temperature > 0 && temperature < Infinity)) impossible("temperature", temperature, "more than 0 K");
  if (!(criticalTemperature > 0 && criticalTemperature < Infinity))
    impossible("criticalTemperature", criticalTemperature, "more than 0 K");
  if (!(watsonFactor > 0 && watsonFactor < Infinity)) impossible("watsonFactor", watsonFactor, "more than 0");
  if (temperature >= criticalTemperature) return 0;
  return (0.6737 * (1 - temperature / criticalTemperature) ** 1.232) / watsonFactor;
}
