// The three ways in which a level is checked. Each is a plain function of the depth there, so that the
// condition (hot and idling, cold, after a stand) lies in the volume that the pan holds at that moment.

import { depthAt, type Pan, volumeAtDepth } from "./pan.ts";

/** Depths of the low and full marks of a dipstick, at its foot [m]. */
export interface Marks {
  readonly low: number;
  readonly full: number;
}

/**
 * What a dipstick reads: 0 at the low mark, 1 at the full mark, below and above in proportion. Depth [m] at
 * the stick.
 */
export function dipstickReading(depth: number, marks: Marks): number {
  return (depth - marks.low) / (marks.full - marks.low);
}

/**
 * Height of fluid over the lip of an overflow tube [m]: positive, it runs; negative, that much is missing
 * there.
 */
export function overflowPlugReading(depth: number, lipHeight: number): number {
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
  if (depthAt(pan, volume, tiltX, tiltY, x, y) <= lipHeight) return 0;
  return Math.max(0, volume - volumeAtDepth(pan, lipHeight, tiltX, tiltY, x, y));
}
