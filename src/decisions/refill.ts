// How much fluid a unit takes by what was emptied, and what of the old fluid stays in it.

import { fraction, impossible, notNegative, positive } from "../errors.ts";
import type { HoldUp } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";

/** What is emptied: the pan alone, or with it what is renewed and comes dry. */
export const emptyings = [
  "pan",
  "pan, lines and cooler",
  "pan, lines, cooler and converter",
  "all of it",
] as const;
export type Emptying = (typeof emptyings)[number];

export interface Refill {
  readonly emptied: Emptying;
  /** Fluid that goes in until the level is right [m³ at the temperature asked for]. */
  readonly poured: number;
  /** Share of the fluid that is old afterwards, 0 to 1. */
  readonly old: number;
}

/** What a refill needs to know of a unit: a `Build` has it. */
export interface Filled {
  readonly fill: number;
  readonly fillTemperature: number;
  readonly holdUp: HoldUp;
}

/**
 * What goes into a unit that was full, after it stood overnight and was emptied, as far as the drain reaches: what stays in converter (`converterDrains`), lines and passages
 * (`passagesDrain`) is not drained with the pan. `temperature` [K] is that of the unit as it is drained and of the fluid as it is poured: cold fluid takes less room than it will when hot, while what stays fills what holds it.
 * Volumes in m³. Source: the mass that is missing is the mass that goes in. Errors: volumes, shares or a temperature that cannot be.
 */
export function refills(unit: Filled, fluid: { readonly density15: number }, temperature: number): Refill[] {
  const { fill, fillTemperature, holdUp } = unit;
  positive("fill", fill, "m³");
  positive("temperature", temperature, "K");
  notNegative("converter", holdUp.converter, "m³");
  notNegative("coolerAndLines", holdUp.coolerAndLines, "m³");
  notNegative("passages", holdUp.passages, "m³");
  fraction("converterDrains", holdUp.converterDrains);
  fraction("passagesDrain", holdUp.passagesDrain);
  const converter = holdUp.converter * (1 - holdUp.converterDrains);
  const passages = holdUp.passages * (1 - holdUp.passagesDrain);
  const lines = holdUp.coolerAndLines;
  const stays: Readonly<Record<Emptying, number>> = {
    pan: converter + lines + passages,
    "pan, lines and cooler": converter + passages,
    "pan, lines, cooler and converter": passages,
    "all of it": 0,
  };
  const swells = density(fluid.density15, fillTemperature) / density(fluid.density15, temperature);
  if (!(swells > 0 && swells < Infinity)) impossible("density15", fluid.density15, "the density of a fluid");
  const full = fill * swells;
  return emptyings.map((emptied) => {
    const left = Math.min(full, stays[emptied]);
    return { emptied, poured: full - left, old: left / full };
  });
}
