// What stands over a place on the rail that the pan hangs on.

import { depthAt, type Pan } from "./pan.ts";

/** Times the pan's height: no surface swings up so far. */
const TALL = 1000;
const tall = { length: 1, width: 1, height: 1, free: 1 };

/**
 * Height [m] over the floor to which fluid stands at the place (x, y) of the rail, as if the pan's walls went on upwards: a
 * surface that swings up them, and what an overfull pan cannot hold, press on the rail. Else as `depthAt`.
 */
export function depthAtRail(
  pan: Pan,
  volume: number,
  tiltX: number,
  tiltY: number,
  x: number,
  y: number,
): number {
  tall.length = pan.length;
  tall.width = pan.width;
  tall.height = TALL * pan.height;
  tall.free = pan.free;
  return depthAt(tall, volume, tiltX, tiltY, x, y);
}
