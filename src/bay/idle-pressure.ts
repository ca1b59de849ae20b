// The gauge on the line at idle: for the test with the gauge, and for whoever asks nothing else of it.

import type { Walk } from "../history/walk.ts";
import { holdInGear } from "./in-gear.ts";
import { holdAt, HOT } from "./ready.ts";

/** Time in gear before the gauge is read [s]. */
const AT_IDLE = 30;

/** Line pressure [Pa] of a unit that idles hot in neutral, once it is held in its first gear. */
export function idlePressure(walk: Walk): number {
  holdInGear(walk, 0, AT_IDLE, () => holdAt(walk, HOT));
  return walk.now.line.linePressure;
}
