// What runs at a leak, as one says it who stands there: drops while they can be counted, a cup and a watch from then on.

import { litres, millilitres, quarts } from "../units/literals.ts";
import type { UnitSystem } from "../units/show.ts";

/** Two a second: more drops a minute than a person counts. */
export const COUNTABLE = 120;

type Cup = readonly [unit: string, size: number];
const cups: Record<UnitSystem, readonly [small: Cup, large: Cup]> = {
  US: [
    ["fl oz/min", quarts(1 / 32)],
    ["qt/min", quarts(1)],
  ],
  SI: [
    ["mL/min", millilitres(1)],
    ["L/min", litres(1)],
  ],
};

/** "8.2 drops/min", or "12 mL/min" where drops a minute can no longer be counted; the flow [m³/s] at the leak. */
export function leakWords(drops: number, flow: number, system: UnitSystem): string {
  if (drops === 0) return "none";
  // Less than one in ten minutes is told by the hour.
  if (drops < 0.1) return `${Number((60 * drops).toPrecision(2))} drops/h`;
  if (drops <= COUNTABLE) return `${drops < 10 ? Number(drops.toPrecision(2)) : drops.toFixed(0)} drops/min`;
  const [small, large] = cups[system];
  const [unit, size] = 60 * flow < 1.5 * large[1] ? small : large;
  return `${Number(((60 * flow) / size).toPrecision(2))} ${unit}`;
}
