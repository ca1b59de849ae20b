// The three ways in which a level is checked. Each is a plain function of the depth there, so that the
// condition (hot and idling, cold, after a stand) lies in the volume that the pan holds at that moment.

import { finite, impossible } from "../../errors.ts";
import { depthAt, type Pan, volumeAtDepth } from "./pan.ts";

/** Depths of the low and full marks of a dipstick, at its foot [m]. */
export interface Marks {
  readonly low: number;
  readonly full: number;
}

/**
 * What a dipstick reads: 0 at the low mark, 1 at the full mark, below and above in proportion. Depth [m] at
 * the stick; the full mark stands above the low one.
 */
export function dipstickReading(depth: number, marks: Marks): number {
  finite("depth", depth, "m");
  finite("low mark", marks.low, "m");
  if (!(marks.full > marks.low && marks.full < Infinity))
    impossible("full mark", marks.full, "a depth in m above the low mark");
  return (depth - marks.low) / (marks.full - marks.low);
}

/**
 * Height of fluid over the lip of an overflow tube [m]: positive, it runs; negative, that much is missing
 * there.
 */
export function overflowPlugReading(depth: number, lipHeight: number): number {
  finite("depth", depth, "m");
  finite("height of the lip", lipHeight, "m");
  return depth - lipHeight;
}

/**
 * Volume [m³] to add until fluid runs from an overflow of the height [m] at (x, y); 0 when it runs already.
 * Tilts as in `depthAt`.
 */
export function amountUntilRuns(
  pan: Pan,
  volume: number,
  tiltX: number,
  tiltY: number,
  x: number,
  y: number,
  lipHeight: number,
): number {
  finite("volume in the pan", volume, "m³");
  return Math.max(0, volumeAtDepth(pan, lipHeight, tiltX, tiltY, x, y) - Math.max(volume, 0));
}

/** Volume [m³] that runs out before an overflow of the height [m] at (x, y) stops; 0 when it does not run. */
export function amountThatRuns(
  pan: Pan,
  volume: number,
  tiltX: number,
  tiltY: number,
  x: number,
  y: number,
  lipHeight: number,
): number {
  finite("volume in the pan", volume, "m³");
  finite("height of the lip", lipHeight, "m");
  if (depthAt(pan, volume, tiltX, tiltY, x, y) <= lipHeight) return 0;
  return Math.max(0, volume - volumeAtDepth(pan, lipHeight, tiltX, tiltY, x, y));
}
