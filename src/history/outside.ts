// Laws used outside their range during a history: noted as they happen, told at the end. Silence would be the only wrong answer.

import type { Range } from "../errors.ts";
import { liningPressure, liningPressureRange } from "../physics/clutch/capacity.ts";
import { pyrolysisRange } from "../physics/damage/pyrolysis.ts";
import { densityRange } from "../physics/fluid/density.ts";
import { viscosityTemperatureRange } from "../physics/fluid/viscosity.ts";
import type { Walk } from "./walk.ts";

/** A law that a history watches, what it watches of it, and the extremes it has seen. */
interface Seen {
  readonly range: Range;
  readonly value: (walk: Walk) => number | undefined;
  low: number;
  high: number;
}

export type Outside = readonly Seen[];

export function newOutside(): Outside {
  const seen = (range: Range, value: Seen["value"]): Seen => ({ range, value, low: Infinity, high: -Infinity });
  return [
    seen(viscosityTemperatureRange, ({ now }) => now.temperature),
    seen(densityRange, ({ now }) => now.temperature),
    // Below its range the rate is too small to matter in a history; above it the law is stretched.
    seen(pyrolysisRange, ({ state, slip }) => Math.max(pyrolysisRange.low, state.plate[slip.clutch]!)),
    seen(liningPressureRange, ({ now, unit }) => {
      const clutch = unit.build.clutches[now.weakest];
      if (clutch === undefined) return undefined;
      return liningPressure(clutch, now.line.linePressure);
    }),
  ];
}

/** Looks at every watched law at this instant. */
export function noteRanges(outside: Outside, walk: Walk): void {
  for (const seen of outside) {
    const value = seen.value(walk);
    if (value === undefined) continue;
    if (value < seen.low) seen.low = value;
    if (value > seen.high) seen.high = value;
  }
}

/** In words: which law, at which value, and where it holds. */
export function outsideOf(outside: Outside): string[] {
  return outside.flatMap(({ range, low, high }) => {
    const past = low < range.low ? low : high > range.high ? high : undefined;
    if (past === undefined) return [];
    const { law, quantity, unit } = range;
    return [`${law} used at ${quantity} = ${past.toPrecision(4)} ${unit} (holds from ${range.low} to ${range.high} ${unit})`];
  });
}
