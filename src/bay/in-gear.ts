// In gear at a standstill. The brakes hold the wheels, and with them the turbine for as long as the gear's elements hold.

import { flow, takeStock } from "../history/advance.ts";
import { settle } from "../history/settle.ts";
import { slipFor } from "../history/slip.ts";
import type { AfterStep } from "../history/tick.ts";
import type { Walk } from "../history/walk.ts";
import { clutchesNow, heatNow, supplyNow } from "../physics/chain.ts";
import { fullThrottleSpeed } from "../physics/drivetrain.ts";
import { impellerTorque, turbineTorque } from "../physics/load/converter.ts";
import { pumpTorque } from "../physics/supply/pump.ts";

/**
 * Holds a unit in the first of its build's gears for some seconds, at idle (pedal 0) or on full throttle (pedal 1). An
 * element that carries less than the turbine gives slips and lets the turbine turn. `after` sees every step.
 */
export function holdInGear(walk: Walk, pedal: 0 | 1, seconds: number, after: AfterStep): void {
  const { state, road } = walk;
  road.wish = 0;
  road.grade = 0;
  road.lateral = 0;
  road.speed = 0;
  state.gear = 0;
  state.speed = 0;
  state.slipping = false;
  walk.scheduled = 0;
  walk.pedal = pedal;
  const steps = Math.ceil(seconds / walk.finer);
  for (let i = 0; i < steps; i++) {
    takeStock(walk);
    if (!state.slipping) turbineHeld(walk, pedal, seconds / steps);
    if (state.slipping) state.slipping = slipFor(walk, seconds / steps);
    settle(walk);
    if (!after(walk)) return;
  }
}

/** One step with the turbine held; without a step when an element gives way instead. */
function turbineHeld(walk: Walk, pedal: 0 | 1, seconds: number): void {
  const { state, unit, now, slip } = walk;
  const { build } = unit;
  const { drive } = now;
  const pumping = pumpTorque(build.pump, now.line.linePressure);
  drive.acceleration = 0;
  drive.turbine = 0;
  drive.engine = pedal === 0 ? build.engine.idleSpeed : fullThrottleSpeed(build, 0, pumping);
  drive.impellerTorque = impellerTorque(build.converter, drive.engine, 0);
  drive.turbineTorque = turbineTorque(build.converter, drive.engine, 0);
  drive.engineTorque = drive.impellerTorque + pumping;
  drive.lockTorque = 0;
  drive.lockSlip = 0;
  drive.lockSaturated = false;
  supplyNow(unit, state, drive.engine, drive.turbineTorque, false, now);
  clutchesNow(unit, state, build.gears[0]!, 0, now);
  state.engine = drive.engine;
  if (drive.turbineTorque > now.holds) {
    state.slipping = true;
    state.slipTime = 0;
    state.turbine = 0;
    return;
  }
  state.turbine = 0;
  heatNow(build, now);
  slip.clutch = now.weakest;
  slip.heat = 0;
  slip.speed = 0;
  flow(walk, seconds);
}
