// What a leak loses while the vehicle stands: the line's column above the hole as long as that is higher, then what stands in the pan over it.

import type { Leak } from "./build.ts";
import { levelAfter } from "./leak/drain-down.ts";
import type { Opening } from "./leak/flow.ts";
import type { Pan } from "./sump/pan.ts";

/** Height of the column over the hole [m] when so much fluid stands in the line above it [m³]. */
export function columnOver(leak: Leak, inLine: number): number {
  return inLine > 0 ? (leak.columnHeight * inLine) / leak.lineAbove : 0;
}

/** Area by which the column sinks [m²]. */
export const columnArea = (leak: Leak): number => leak.lineAbove / leak.columnHeight;

/** Area by which the surface in the pan sinks [m²]. */
export const panArea = (pan: Pan): number => pan.length * pan.width * pan.free;

/** Volume [m³] that an opening loses in a time [s] from a vessel of an area [m²] that stands so high over it [m]; 0 when it does not. */
export function sinks(
  opening: Opening,
  area: number,
  head: number,
  seconds: number,
  viscosity: number,
  density: number,
): number {
  if (!(head > 0)) return 0;
  return area * (head - levelAfter(opening, area, head, seconds, viscosity, density));
}
