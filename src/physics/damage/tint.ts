import { impossible, positive, type Range } from "../../errors.ts";

/** A temper colour of bright plain carbon steel and the temperature [K] at which it shows after minutes in air. */
export interface Tint {
  readonly name: string;
  readonly temperature: number;
}

// Middle of three published lists (a tool-steel list in °F, a gauge-plate maker's chart, an encyclopaedia), which spread by ±15 K.
const celsius: readonly (readonly [string, number])[] = [
  ["bright", 20],
  ["faint straw", 205],
  ["straw", 224],
  ["dark straw", 240],
  ["brown", 247],
  ["red-brown", 260],
  ["purple", 267],
  ["violet", 281],
  ["full blue", 297],
  ["light blue", 310],
  ["grey", 330],
];

/** Colours in the order in which they come; grey is the end of useful reading. */
export const tints: readonly Tint[] = celsius.map(([name, t]) => ({ name, temperature: t + 273.15 }));

/** Bright plain steel in air; oil keeps air out, and its brown varnish looks like straw but wipes off. */
export const tintRange: Range = {
  law: "temper colours of bright carbon steel in air",
  quantity: "time at temperature",
  unit: "s",
  low: 60,
  high: 3600,
  source: "three colour lists; ASM Handbook vol. 4D, 2014, pp. 550-551 exists, not read",
};

/** Minutes in which the lists were made, taken as five [s] (assumed). */
export const tintListTime = 300;

/**
 * The colour is a thickness of oxide, T^m t^(1/n) with T absolute: m 3.165 follows from the lists themselves (straw to
 * blue), n runs from 2 to 20 and beyond (McAdam and Geil, NBS, 1939-42). So colour reads temperature, hardly time.
 */
export const tintGrowth = {
  temperaturePower: 3.165,
  timePower: 10,
  timePowerLow: 2,
  timePowerHigh: 20,
} as const;

/** Temperature [K] that would give in the lists' own time what a temperature [K] held for a time [s] gives. */
export function listTemperature(
  temperature: number,
  seconds: number,
  timePower: number = tintGrowth.timePower,
): number {
  positive("temperature", temperature, "K");
  positive("seconds", seconds, "s");
  positive("timePower", timePower);
  return temperature * (seconds / tintListTime) ** (1 / (tintGrowth.temperaturePower * timePower));
}

/** Place in the row of colours [0..10] that a temperature [K] held for a time [s] leaves; never falls with either. */
export function tintNumber(temperature: number, seconds: number): number {
  const T = listTemperature(temperature, seconds);
  let n = 0;
  while (n + 1 < tints.length && (tints[n + 1] as Tint).temperature <= T) n++;
  return n;
}

/** Name of that colour. */
export function temperColour(temperature: number, seconds: number): string {
  return (tints[tintNumber(temperature, seconds)] as Tint).name;
}

/**
 * Peak temperature of the steel [K] from its colour: likely value, and the span that ±15 K between the lists and an
 * unknown time from `shortest` to `longest` [s] leave open. The colour of a hot spot dates nothing.
 */
export function temperatureOfTint(
  name: string,
  held: { readonly shortest: number; readonly longest: number },
): { readonly low: number; readonly likely: number; readonly high: number } | undefined {
  const n = tints.findIndex((tint) => tint.name === name);
  if (n < 0) return undefined;
  positive("shortest", held.shortest, "s");
  if (!(held.longest >= held.shortest && held.longest < Infinity))
    impossible("longest", held.longest, "a time not below the shortest");
  const T = (tints[n] as Tint).temperature;
  const shift = (seconds: number) =>
    (tintListTime / seconds) ** (1 / (tintGrowth.temperaturePower * tintGrowth.timePower));
  const middle = Math.sqrt(held.shortest) * Math.sqrt(held.longest);
  return {
    low: (T - 15) * shift(held.longest),
    likely: T * shift(middle),
    high: (T + 15) * shift(held.shortest),
  };
}

/** Times [1] as long at the lower of two temperatures [K] for the same colour, (T/Tlow)^(m n): 2 to 300 for 50 K, so no clock. */
export function tintTimeRatio(temperature: number, lower: number, timePower: number): number {
  positive("temperature", temperature, "K");
  positive("lower", lower, "K");
  positive("timePower", timePower);
  return (temperature / lower) ** (tintGrowth.temperaturePower * timePower);
}
