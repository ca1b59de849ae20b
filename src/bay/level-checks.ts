// The three ways to check the level, and two ways to misread a dipstick.

import type { Walk } from "../history/walk.ts";
import type { Unit } from "../physics/build.ts";
import { amountUntilRuns, dipstickReading, overflowPlugReading } from "../physics/sump/level.ts";
import { depthAt } from "../physics/sump/pan.ts";
import { HOT, idling, inThePan, stoodFor } from "./ready.ts";

/** Depth at the stick [m], and where that is between its marks: 0 low, 1 full. */
export interface StickReading {
  readonly depth: number;
  readonly position: number;
}

export interface LevelChecks {
  /** The check proper: idling in park, hot, level. */
  readonly stick: StickReading;
  /** The same stick idling with the fluid at 20 °C, and with the engine off after a night at 20 °C. */
  readonly stickCold: StickReading;
  readonly stickStood: StickReading;
  /** Idling at 40 °C, the plug out: height of the fluid over its lip [m], whether it runs, what is added until it does [m³]. */
  readonly overLip: number;
  readonly runs: boolean;
  readonly added: number;
  /** Fluid temperature [K] from which on it runs while warming up from 0 °C; null when it does not by 120 °C. */
  readonly runsFrom: number | null;
}

const COOL = 293.15;
/** Middle of the window in which the plug is taken out, 35 to 45 °C [K]. */
const PLUG = 313.15;
const NIGHT = 12 * 3600;

/** What every level check shows on a unit that lacks `shortage` [m³]; negative when it has too much. */
export function levelChecks(unit: Unit, shortage: number): LevelChecks {
  const { pan, overflow } = unit.build.sump;
  const plug = idling(unit, shortage, PLUG);
  const overLip = heightOverLip(plug);
  return {
    stick: stickIdling(unit, shortage, HOT),
    stickCold: stickIdling(unit, shortage, COOL),
    stickStood: stickReading(stoodFor(unit, shortage, NIGHT, COOL)),
    overLip,
    runs: overLip > 0,
    added: amountUntilRuns(pan, inThePan(plug), 0, 0, overflow.x, overflow.y, overflow.height),
    runsFrom: runsFrom(unit, shortage),
  };
}

/** The dipstick of a unit that lacks `shortage` [m³], idling in park with its fluid at a temperature [K]. */
export function stickIdling(unit: Unit, shortage: number, temperature: number): StickReading {
  return stickReading(idling(unit, shortage, temperature));
}

function stickReading(walk: Walk): StickReading {
  const { pan, stick } = walk.unit.build.sump;
  const depth = depthAt(pan, inThePan(walk), 0, 0, stick.x, stick.y);
  return { depth, position: dipstickReading(depth, stick) };
}

function heightOverLip(walk: Walk): number {
  const { pan, overflow } = walk.unit.build.sump;
  return overflowPlugReading(depthAt(pan, inThePan(walk), 0, 0, overflow.x, overflow.y), overflow.height);
}

// The level rises as fluid warms: it expands, and less of it is in flight. Halved to a twentieth of a kelvin.
function runsFrom(unit: Unit, shortage: number): number | null {
  const runsAt = (temperature: number) => heightOverLip(idling(unit, shortage, temperature)) > 0;
  let low = 273.15;
  let high = 393.15;
  if (runsAt(low)) return low;
  if (!runsAt(high)) return null;
  while (high - low > 0.05) {
    const middle = 0.5 * (low + high);
    if (runsAt(middle)) high = middle;
    else low = middle;
  }
  return high;
}
