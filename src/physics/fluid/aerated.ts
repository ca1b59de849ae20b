// Oil with bubbles in it: softer, lighter, slower to carry a pressure wave.
import { impossible, type Range } from "../../errors.ts";
import { atmosphere } from "./surroundings.ts";

export const aeratedRange: Range = {
  law: "oil with free air",
  quantity: "gas volume fraction",
  unit: "1",
  low: 0,
  high: 0.15,
  source: "bubbly oil; above 15 to 20 % it is foam, which flows quite differently",
};

function refuse(gas0: number, absolutePressure: number, exponent: number, liquidModulus: number): void {
  if (!(gas0 >= 0 && gas0 <= 1)) impossible("gas0", gas0, "0 to 1");
  if (!(absolutePressure > 0 && absolutePressure < Infinity))
    impossible("absolutePressure", absolutePressure, "more than 0 Pa abs");
  if (!(exponent >= 1 && exponent <= 5 / 3)) impossible("exponent", exponent, "1 (isothermal) to 5/3");
  if (!(liquidModulus > 0 && liquidModulus < Infinity))
    impossible("liquidModulus", liquidModulus, "more than 0 Pa");
}

// Volume of the liquid, as a share of the mixture's volume at one atmosphere, times (p/p₀)^(1/k): in these units the
// gas keeps its first volume, and nothing overflows near vacuum.
const liquidShare = (liquidModulus: number, gas0: number, pressure: number, exponent: number) =>
  (1 - gas0) * Math.exp((atmosphere - pressure) / liquidModulus) * (pressure / atmosphere) ** (1 / exponent);

/**
 * Tangent bulk modulus [Pa] of oil with a free-gas fraction (0 to 1, at one atmosphere) at an absolute pressure [Pa],
 * nothing dissolving: K = (V_l + V_g)/(V_l/K_l + V_g/(k p)). Exponent 1 for slow change, 1.4 for a clutch fill.
 * Source: exact form, as given for Cho and others (2002) by Gholizadeh, Burton and Schoenau (2012).
 */
export function bulkModulus(
  liquidModulus: number,
  gas0: number,
  absolutePressure: number,
  exponent: number,
): number {
  refuse(gas0, absolutePressure, exponent, liquidModulus);
  if (gas0 === 0) return liquidModulus;
  const liquid = liquidShare(liquidModulus, gas0, absolutePressure, exponent);
  return (liquid + gas0) / (liquid / liquidModulus + gas0 / (exponent * absolutePressure));
}

/**
 * Gas volume fraction at an absolute pressure [Pa] of oil whose fraction at one atmosphere is `gas0`, nothing
 * dissolving; the liquid is compressed too (modulus in Pa).
 */
export function gasFractionAt(
  gas0: number,
  absolutePressure: number,
  exponent: number,
  liquidModulus = 1.5e9,
): number {
  refuse(gas0, absolutePressure, exponent, liquidModulus);
  return gas0 === 0 ? 0 : gas0 / (gas0 + liquidShare(liquidModulus, gas0, absolutePressure, exponent));
}

/** Density [kg/m³] of a mixture with a gas volume fraction (0 to 1) of a liquid and a gas [kg/m³]. */
export function aeratedDensity(gas: number, liquidDensity: number, gasDensity: number): number {
  if (!(gas >= 0 && gas <= 1)) impossible("gas", gas, "0 to 1");
  if (!(liquidDensity > 0 && liquidDensity < Infinity))
    impossible("liquidDensity", liquidDensity, "more than 0 kg/m³");
  if (!(gasDensity >= 0 && gasDensity < Infinity)) impossible("gasDensity", gasDensity, "0 kg/m³ or more");
  return (1 - gas) * liquidDensity + gas * gasDensity;
}

/** A bubbly mixture: gas volume fraction there, moduli [Pa] (of the gas: exponent times pressure) and densities [kg/m³]. */
export interface Mixture {
  readonly gas: number;
  readonly liquidModulus: number;
  readonly liquidDensity: number;
  readonly gasModulus: number;
  readonly gasDensity: number;
}

/**
 * Speed of sound [m/s] in a bubbly mixture, well below the resonance of its bubbles: c = √(K/ρ) with 1/K the mean of
 * 1/K by volume. Source: Wood, A Textbook of Sound (1930).
 */
export function soundSpeed(mixture: Mixture): number {
  const { gas, liquidModulus, liquidDensity, gasModulus, gasDensity } = mixture;
  if (!(liquidModulus > 0 && liquidModulus < Infinity))
    impossible("liquidModulus", liquidModulus, "more than 0 Pa");
  if (!(gasModulus > 0 && gasModulus < Infinity)) impossible("gasModulus", gasModulus, "more than 0 Pa");
  if (!(gasDensity > 0)) impossible("gasDensity", gasDensity, "more than 0 kg/m³");
  const density = aeratedDensity(gas, liquidDensity, gasDensity);
  return 1 / Math.sqrt(density * ((1 - gas) / liquidModulus + gas / gasModulus));
}

/**
 * Dynamic viscosity [Pa s] of oil with a volume fraction of fine bubbles: μ(1 + 0.015 B), B in percent.
 * Source: Hayward (1961); between Taylor's mobile bubbles (1 + gas) and Einstein's rigid spheres (1 + 2.5 gas).
 */
export function aeratedViscosity(viscosity: number, gas: number): number {
  if (!(viscosity > 0 && viscosity < Infinity)) impossible("viscosity", viscosity, "more than 0 Pa s");
  if (!(gas >= 0 && gas <= 1)) impossible("gas", gas, "0 to 1");
  return viscosity * (1 + 1.5 * gas);
}
