// The engine idles and nothing is carried: in neutral or park, before a gear is chosen and while the bay looks.

import { supplyNow } from "../physics/chain.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { flow, lookAhead, takeStock } from "./advance.ts";
import { forgetPath } from "./path.ts";
import { settle } from "./settle.ts";
import type { AfterStep } from "./tick.ts";
import type { Walk } from "./walk.ts";

/** Idles in neutral for a time at an engine speed [rad/s] on a grade, in fine steps, so that the suction passage and the pan settle. */
export function idleInNeutral(
  walk: Walk,
  seconds: number,
  engineSpeed: number,
  after?: AfterStep,
  grade = 0,
): boolean {
  const { state, unit, now, road, slip } = walk;
  const { drive } = now;
  road.wish = 0;
  road.grade = grade;
  road.lateral = 0;
  road.speed = 0;
  forgetPath(walk.path);
  const steps = Math.ceil(seconds / walk.fine);
  for (let i = 0; i < steps; i++) {
    takeStock(walk);
    lookAhead(walk, (0.5 * seconds) / steps, 0);
    supplyNow(unit, state, engineSpeed, 0, false, now);
    drive.acceleration = 0;
    drive.turbine = engineSpeed;
    drive.turbineTorque = 0;
    drive.engine = engineSpeed;
    drive.lockTorque = 0;
    drive.lockSlip = 0;
    drive.lockSaturated = false;
    state.engine = engineSpeed;
    state.turbine = engineSpeed;
    now.converterHeat = 0;
    now.gearHeat = 0;
    now.lockUpHeat = 0;
    now.pumpHeat = pumpTorque(unit.build.pump, now.line.linePressure) * engineSpeed;
    now.holds = Infinity;
    slip.heat = 0;
    slip.speed = 0;
    flow(walk, seconds / steps);
    settle(walk);
    if (after !== undefined && !after(walk)) return false;
  }
  return true;
}
