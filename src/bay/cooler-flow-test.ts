// The cooler-flow test: the return line led into a measuring can for twenty seconds, idling in neutral, hot.

import { idleInNeutral } from "../history/idle.ts";
import type { Unit } from "../physics/build.ts";
import { holdAt, HOT, idling } from "./ready.ts";

export interface CoolerFlow {
  /** Liquid caught in the twenty seconds [m³]; the gas in it rises out of the can. */
  readonly caught: number;
  /** The same as a flow [m³/s]. */
  readonly flow: number;
}

/** How long the can is held under the line [s]. */
const CATCHING = 20;

/**
 * Cooler flow of a unit that lacks `shortage` [m³], at 80 °C; the build's thermostat has to be open there, else the bypass
 * takes part of it. What is caught is taken to be poured back as it comes.
 */
export function coolerFlowTest(unit: Unit, shortage: number): CoolerFlow {
  const walk = idling(unit, shortage, HOT);
  let caught = 0;
  let clock = walk.state.clock;
  idleInNeutral(walk, CATCHING, unit.build.engine.idleSpeed, ({ state, now }) => {
    caught += now.line.cooler * (1 - now.line.lineGas) * (state.clock - clock);
    clock = state.clock;
    return holdAt(walk, HOT);
  });
  return { caught, flow: caught / CATCHING };
}
