// The line-pressure test: a gauge on the line, at idle and then at stall, hot, in drive and in reverse.

import type { Unit } from "../physics/build.ts";
import { holdInGear } from "./in-gear.ts";
import { idlePressure } from "./idle-pressure.ts";
import { HOT, idling, inReverse } from "./ready.ts";

/** What the gauge shows in one gear [Pa], and at stall also the engine's speed [rad/s] and whether an element slipped. */
export interface LinePressure {
  readonly idle: number;
  readonly stallLowest: number;
  readonly stallFinal: number;
  readonly stallSpeed: number;
  readonly stallSlips: boolean;
}

/** The longest that a stall test may last [s]. */
const LONGEST_STALL = 5;

/**
 * Line pressure of a unit that lacks `shortage` [m³], fluid at 80 °C, wheels held by the brakes. The stall is always
 * computed; whether a tester would make it is for the reader of the idle pressure to say.
 */
export function linePressureTest(unit: Unit, shortage: number, gear: "drive" | "reverse"): LinePressure {
  const walk = idling(gear === "drive" ? unit : inReverse(unit), shortage, HOT);
  const idle = idlePressure(walk);

  let stallLowest = Infinity;
  let stallSpeed = 0;
  let stallSlips = false;
  holdInGear(walk, 1, LONGEST_STALL, ({ state, now }) => {
    stallLowest = Math.min(stallLowest, now.line.linePressure);
    stallSpeed = Math.max(stallSpeed, state.engine);
    stallSlips ||= state.slipping;
    return true;
  });
  return { idle, stallLowest, stallFinal: walk.now.line.linePressure, stallSpeed, stallSlips };
}
