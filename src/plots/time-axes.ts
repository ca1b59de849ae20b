// Ticks for the running hours and for the odometer, which grows with them but not evenly.

import { format, ticks } from "d3";
import { axis, type UnitSystem } from "../units/show.ts";
import type { TimeAxis } from "./strip.ts";

/** Where the odometer [m] stood at a running time [s]. */
export interface Travelled {
  readonly running: number;
  readonly distance: number;
}

/** Hours of running between two running times [s]; the strip's time is in hours. */
export function runningAxis(from: number, to: number, width: number): TimeAxis {
  const values = ticks(from / 3600, to / 3600, Math.max(3, Math.round(width / 110)));
  return { label: "running time [h]", ticks: values.map((at) => ({ at, text: format(",")(at) })) };
}

/** Round odometer readings at the hours at which they were reached; rows in the order of time. */
export function odometerAxis(
  rows: readonly Travelled[],
  atStart: number,
  width: number,
  system: UnitSystem,
): TimeAxis {
  const { factor, unit } = axis("distance", system);
  const label = `odometer [${unit}]`;
  const [first, last] = [rows[0], rows[rows.length - 1]];
  if (first === undefined || last === undefined) return { label, ticks: [] };
  const reading = ({ distance }: Travelled) => (atStart + distance) * factor;
  const values = ticks(reading(first), reading(last), Math.max(2, Math.round(width / 150)));
  let i = 0;
  return {
    label,
    ticks: values.map((value) => {
      while (i < rows.length - 2 && reading(rows[i + 1]!) < value) i++;
      const [a, b] = [rows[i]!, rows[Math.min(i + 1, rows.length - 1)]!];
      const step = reading(b) - reading(a);
      const share = step > 0 ? (value - reading(a)) / step : 0;
      return { at: (a.running + share * (b.running - a.running)) / 3600, text: format(",.10~g")(value) };
    }),
  };
}
