import { positive, type Range } from "../../errors.ts";

// Laws for transformer paper in oil: the best calibrated neighbours of a hot, oil-soaked cellulose lining, for comparison.

/** Hot-spot temperatures at which these guides are used. */
export const insulationRange: Range = {
  law: "ageing of transformer insulation",
  quantity: "hot-spot temperature",
  unit: "K",
  low: 353.15,
  high: 433.15,
  source: "IEEE C57.91 (constants read in two public implementations); IEC 60076-7 (recalled)",
};

function celsius(temperature: number): number {
  positive("temperature", temperature, "K");
  return temperature - 273.15;
}

/** Life per unit [1] at a temperature [K]: 9.80e-18 exp(15000/(theta + 273)), 1 at 110 °C. IEEE C57.91 (its zero is 273 K). */
export function ieeeLife(temperature: number): number {
  const kelvin = celsius(temperature) + 273;
  // Near absolute zero nothing ages: held at the largest number there is.
  return kelvin > 0 ? Math.min(Number.MAX_VALUE, 9.8e-18 * Math.exp(15000 / kelvin)) : Number.MAX_VALUE;
}

/** Ageing against that at 110 °C [1]: exp(15000/383 − 15000/(theta + 273)). IEEE C57.91. */
export function ieeeAgeing(temperature: number): number {
  const kelvin = celsius(temperature) + 273;
  return kelvin > 0 ? Math.exp(15000 / 383 - 15000 / kelvin) : 0;
}

/** Ageing of plain paper against that at 98 °C [1]: 2^((theta − 98)/6). IEC 60076-7. */
export function iecAgeing(temperature: number): number {
  return 2 ** ((celsius(temperature) - 98) / 6);
}
