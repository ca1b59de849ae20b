// Laws used outside their range during a history: noted as they happen, told at the end. Silence would be the only wrong answer.

import type { Range } from "../errors.ts";
import { viscosityTemperatureRange } from "../physics/fluid/viscosity.ts";
import { densityRange } from "../physics/fluid/density.ts";
import { pyrolysisRange } from "../physics/damage/pyrolysis.ts";
import type { Walk } from "./walk.ts";

interface Seen {
  readonly range: Range;
  low: number;
  high: number;
}

export type Outside = readonly Seen[];

const watched = (range: Range): Seen => ({ range, low: Infinity, high: -Infinity });

export const newOutside = (): Outside => [viscosityTemperatureRange, densityRange, pyrolysisRange].map(watched);

export function noteRanges(outside: Outside, walk: Walk): void {
  const [viscosity, density] = outside;
  see(viscosity!, walk.now.temperature);
  see(density!, walk.unit.fluid.density15);
}

function see(seen: Seen, value: number): void {
  if (value < seen.low) seen.low = value;
  if (value > seen.high) seen.high = value;
}

export function outsideOf(outside: Outside): string[] {
  return outside.flatMap(({ range, low, high }) => {
    const past = low < range.low ? low : high > range.high ? high : undefined;
    if (past === undefined) return [];
    return [`${range.law} used at ${range.quantity} = ${past.toPrecision(4)} ${range.unit} (holds from ${range.low} to ${range.high})`];
  });
}
