// A hard stop on a level road with the gauge still connected: the fluid runs to the front of the pan, away from the pickup.

import { noEngagement } from "../history/shift.ts";
import { tick } from "../history/tick.ts";
import type { Unit } from "../physics/build.ts";
import { gravity } from "../physics/fluid/surroundings.ts";
import { holdAt, HOT, idling } from "./ready.ts";

export interface HardStop {
  /** Lowest line pressure [Pa] and largest share of gas at the pump, from braking to five seconds after standing. */
  readonly lowest: number;
  readonly mostGas: number;
}

/** Speed from which it stops [m/s], and how hard [m/s²]: hard, and still short of what brakes can do. */
const FROM = 50 / 3.6;
const BRAKING = 0.5 * gravity;

/** Stops a unit that lacks `shortage` [m³] from 50 km/h at half a g, fluid at 80 °C, lever in drive. */
export function hardStopTest(unit: Unit, shortage: number): HardStop {
  const walk = idling(unit, shortage, HOT);
  const engagement = noEngagement();
  const reached = () => holdAt(walk, HOT);
  for (let s = 1; s <= 20; s++) tick(walk, 1, (FROM * s) / 20, 0, 0, engagement, reached);
  for (let s = 0; s < 10; s++) tick(walk, 1, FROM, 0, 0, engagement, reached);

  let lowest = Infinity;
  let mostGas = 0;
  const stopping = FROM / BRAKING;
  const seen = () => {
    lowest = Math.min(lowest, walk.now.line.linePressure);
    mostGas = Math.max(mostGas, walk.state.gas);
    return holdAt(walk, HOT);
  };
  tick(walk, stopping, 0, 0, 0, engagement, seen);
  for (let s = 0; s < 5; s++) tick(walk, 1, 0, 0, 0, engagement, seen);
  return { lowest, mostGas };
}
