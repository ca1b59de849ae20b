// A brisk launch on a level road with the gauge still connected: the fluid runs to the rear of the pan, away from a pickup in front.

import { noEngagement } from "../history/shift.ts";
import { tick } from "../history/tick.ts";
import type { Unit } from "../physics/build.ts";
import { gravity } from "../physics/fluid/surroundings.ts";
import { holdAt, HOT, idling } from "./ready.ts";

export interface Launch {
  /** Lowest line pressure [Pa] and largest share of gas at the pump, from the start to five seconds after. */
  readonly lowest: number;
  readonly mostGas: number;
}

/** Acceleration [m/s²] and how long it lasts [s]: as brisk as traffic asks, 0.25 g to 35 km/h. */
const BRISK = 0.25 * gravity;
const LASTING = 4;

/** Launches a unit that lacks `shortage` [m³] and lets it roll on at the speed reached, fluid at 80 °C, lever in drive. */
export function launchTest(unit: Unit, shortage: number): Launch {
  const walk = idling(unit, shortage, HOT);
  const engagement = noEngagement();
  let lowest = Infinity;
  let mostGas = 0;
  const seen = () => {
    lowest = Math.min(lowest, walk.now.line.linePressure);
    mostGas = Math.max(mostGas, walk.state.gas);
    return holdAt(walk, HOT);
  };
  for (let s = 1; s <= LASTING; s++) tick(walk, 1, BRISK * s, 0, 0, engagement, seen);
  for (let s = 0; s < 5; s++) tick(walk, 1, BRISK * LASTING, 0, 0, engagement, seen);
  return { lowest, mostGas };
}
