// Short words that keep numbers in programs readable: mm(0.5), psi(70), hours(200). Each returns SI.

import { finite } from "../errors.ts";

const unit = (factor: number) => (number: number) => {
  finite("number", number);
  return number * factor;
};

export const mm = unit(1e-3);
export const micrometres = unit(1e-6);
export const inches = unit(0.0254);
export const kilometres = unit(1e3);
export const miles = unit(1609.344);
export const litres = unit(1e-3);
export const millilitres = unit(1e-6);
/** US liquid quarts. */
export const quarts = unit(9.46352946e-4);
export const kPa = unit(1e3);
export const psi = unit(4.4482216152605 / 0.0254 ** 2);
export const kmh = unit(1 / 3.6);
export const mph = unit(0.44704);
export const rpm = unit(Math.PI / 30);
export const minutes = unit(60);
export const hours = unit(3600);
export const days = unit(86400);
export const degC = (number: number) => unit(1)(number) + 273.15;
export const degF = (number: number) => unit(1)(number + 459.67) / 1.8;
