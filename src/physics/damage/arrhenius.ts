import { finite, notNegative, positive, type Range } from "../../errors.ts";

/** Gas constant [J/(mol K)], CODATA 2018. */
export const gasConstant = 8.314462618;

/** One process only: constants hold in the range of temperature in which they were measured. */
export const arrheniusRange: Range = {
  law: "Arrhenius rate",
  quantity: "temperature",
  unit: "K",
  low: 250,
  high: 1000,
  source: "Arrhenius 1889; range by common use",
};

/** Rate [unit of A]: k = A exp(−E/(RT)). Activation energy [J/mol], temperature [K]. */
export function arrheniusRate(factor: number, activationEnergy: number, temperature: number): number {
  notNegative("factor", factor);
  finite("activationEnergy", activationEnergy, "J/mol");
  positive("temperature", temperature, "K");
  return factor * Math.exp(-activationEnergy / (gasConstant * temperature));
}

/** Activation energy [J/mol] that makes a rate double over `step` [K] above a temperature [K]: R ln 2/(1/T1 − 1/T2). */
export function energyOfDoubling(temperature: number, step: number): number {
  positive("temperature", temperature, "K");
  positive("step", step, "K");
  return (gasConstant * Math.LN2 * temperature * (temperature + step)) / step;
}

/** How many times faster a process runs for a rise in temperature [K] by the doubling rule: 2^(rise/step). */
export function doublingFactor(rise: number, step: number): number {
  finite("rise", rise, "K");
  positive("step", step, "K");
  return 2 ** (rise / step);
}

/** Time at the first temperature [s] that ages as much as a steady rise by `rise` [K] at `rate` [K/s], by the doubling rule. */
export function rampEquivalent(rise: number, rate: number, step: number): number {
  finite("rise", rise, "K");
  positive("rate", rate, "K/s");
  positive("step", step, "K");
  return ((step / Math.LN2) * Math.expm1((Math.LN2 * rise) / step)) / rate;
}
