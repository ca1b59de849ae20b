import { impossible, notNegative, positive, type Range } from "../../errors.ts";
import { gasConstant } from "./arrhenius.ts";

/** Dry cellulose in inert gas: the nearest published process to a charring paper lining, not for below 250 °C. */
export const pyrolysisRange: Range = {
  law: "cellulose pyrolysis (Broido-Shafizadeh)",
  quantity: "temperature",
  unit: "K",
  low: 523.15,
  high: 700,
  source:
    "Miller and Bellan, Combust. Sci. Technol. 126, 1997; Bradbury, Sakai and Shafizadeh 1979 (recalled)",
};

const tar = { factor: 3.28e14, energy: 196.5e3 };
const charAndGas = { factor: 1.3e10, energy: 150.5e3 };

function rate(factor: number, energy: number, temperature: number): number {
  if (!(temperature > 0)) impossible("temperature", temperature, "an absolute temperature above 0 K");
  return factor * Math.exp(-energy / (gasConstant * temperature));
}

/** Rate at which sound cellulose turns active [1/s], the step that starts the char: A 2.8e19 1/s, E 242.4 kJ/mol. */
export function charRate(temperature: number): number {
  return rate(2.8e19, 242.4e3, temperature);
}

/** Rate from active cellulose to tar [1/s]: A 3.28e14 1/s, E 196.5 kJ/mol. */
export function tarRate(temperature: number): number {
  return rate(tar.factor, tar.energy, temperature);
}

/** Rate from active cellulose to char and gas [1/s]: A 1.3e10 1/s, E 150.5 kJ/mol. */
export function charAndGasRate(temperature: number): number {
  return rate(charAndGas.factor, charAndGas.energy, temperature);
}

/** Share of the cellulose that ends as char [0..0.35]: more at lower temperature, so dark lining tells of slow overheat. */
export function charYield(temperature: number): number {
  positive("temperature", temperature, "K");
  // Tar over char as one exponential: near absolute zero both rates vanish.
  const tarOverChar =
    (tar.factor / charAndGas.factor) *
    Math.exp((charAndGas.energy - tar.energy) / (gasConstant * temperature));
  return 0.35 / (1 + tarOverChar);
}

/** Half-life [s] of a first-order process of a given rate [1/s]. */
export function halfLife(ratePerSecond: number): number {
  positive("ratePerSecond", ratePerSecond, "1/s");
  return Math.LN2 / ratePerSecond;
}

/** Share charred [0..1] after a time [s] at a rate [1/s] from a share charred before: first order, so it never passes 1. */
export function charAfter(char: number, ratePerSecond: number, time: number): number {
  if (!(char >= 0 && char <= 1)) impossible("char", char, "a share from 0 to 1");
  if (!(ratePerSecond >= 0 && ratePerSecond < Infinity && time >= 0 && time < Infinity))
    refuse(ratePerSecond, time);
  return Math.min(1, char - (1 - char) * Math.expm1(-ratePerSecond * time));
}

function refuse(ratePerSecond: number, time: number): void {
  notNegative("ratePerSecond", ratePerSecond, "1/s");
  notNegative("time", time, "s");
}
