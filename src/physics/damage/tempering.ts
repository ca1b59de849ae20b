import { finite, positive, type Range } from "../../errors.ts";

/** Softening of hardened steel, which is not its colour. */
export const temperingRange: Range = {
  law: "Hollomon-Jaffe tempering parameter",
  quantity: "temperature",
  unit: "K",
  low: 423.15,
  high: 973.15,
  source: "Hollomon and Jaffe, Trans. AIME 162, 1945 (recalled); time in hours with C = 20",
};

/** Tempering parameter [K]: P = T (C + log10 t), t in hours with C = 20; here the time is in seconds. */
export function hollomonJaffe(temperature: number, seconds: number, constant = 20): number {
  positive("temperature", temperature, "K");
  positive("seconds", seconds, "s");
  finite("constant", constant);
  return temperature * (constant + Math.log10(seconds / 3600));
}

/** Time [s] at a temperature [K] that softens as much as a tempering parameter [K] says; undefined where it is beyond all counting. */
export function temperingTime(temperature: number, parameter: number, constant = 20): number | undefined {
  positive("temperature", temperature, "K");
  finite("parameter", parameter, "K");
  finite("constant", constant);
  const time = 3600 * 10 ** (parameter / temperature - constant);
  return Number.isFinite(time) ? time : undefined;
}
