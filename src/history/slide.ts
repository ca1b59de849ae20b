// Slipping on: how long each look at pressure and speeds may stand, and what the driver's foot does meanwhile.

import { turbinePerMetre, turbineTorqueFor } from "../physics/drivetrain.ts";
import { impellerSpeed, impellerTorque } from "../physics/load/converter.ts";
import { pedalFor } from "../physics/load/engine.ts";
import { gradeAngle, roadForce } from "../physics/load/road.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { setPoint } from "../physics/supply/regulator.ts";
import { takeStock } from "./advance.ts";
import { engaged } from "./entering.ts";
import { isCalm } from "./near-air.ts";
import { settle, settleClutch } from "./settle.ts";
import { slipFor } from "./slip.ts";
import type { Walk } from "./walk.ts";

/** Lengths of a step and of the time between two settlings of heat and linings, in `finer` steps. */
const SHORTEST = 1 / 4;
const LONGEST = 10;
/** Once a slip has lasted [s] what its beginning stirred is over: from then on the longest is longer with its time, up to so many times as long, while the surface is calm. */
const LASTING = 2;
const LONGER = 5;
/** A step may change pressure, gas and engine speed by so much of themselves in all, for each second of `finer`. */
const CALM_RATE = 0.7;
/** A pressure that is small against this share of the set point presses nothing: its changes count for less. */
const FAINT = 0.25;
/** The driver feels a slip after so long [s]. */
const FELT_AFTER = 1;
/** Shortest time that counts [s]. */
const INSTANT = 1e-9;

/** An element gives way: from here on the turbine turns by itself, at first in short steps. Speeds in rad/s. */
export function letGo(walk: Walk, turbine: number, engine: number): void {
  const { state } = walk;
  state.slipping = true;
  state.slipTime = 0;
  state.lockUpOn = false;
  state.turbine = turbine;
  state.engine = Math.max(engine, turbine);
  walk.engineTrend = 0;
  walk.turbineTrend = 0;
  walk.slip.warming = 0;
  walk.stride = SHORTEST * walk.finer;
}

/**
 * Slips on for a time [s] of which one settling of heat is made at most, the schedule rising by `asked` [m/s²], or until the
 * elements hold again; returns the time taken. A step is as long as pressure, gas and engine speed move by a set share, by what
 * they did in the last one, at most twice as long as that, and within the bounds above.
 */
export function slideOn(walk: Walk, wanted: number, asked: number): number {
  const { state, slip, now } = walk;
  slip.seconds = 0;
  slip.turned = 0;
  slip.made = 0;
  const start = state.clock;
  const atMost = longestNow(walk);
  const until = start + Math.min(wanted, atMost);
  while (state.slipping && until - state.clock > INSTANT) {
    const { clock, slipTime, gas, engine } = state;
    const { linePressure } = now.line;
    const steps = Math.max(1, Math.ceil((until - clock) / walk.stride - 1e-6));
    let step = (until - clock) / steps;
    const unfelt = FELT_AFTER - slipTime;
    if (unfelt > INSTANT && unfelt < step) step = unfelt;
    pressPedal(walk, 0.5 * step, asked);
    const was = slip.clutch;
    if (!slipFor(walk, step)) {
      state.slipping = false;
      state.slipTime = 0;
      engaged(walk);
    }
    if (slip.clutch !== was) settleClutch(walk, was);
    const plate = state.plate[slip.clutch]!;
    const char = state.char[slip.clutch]!;
    settleClutch(walk, slip.clutch);
    const taken = state.clock - clock;
    const warmed = state.plate[slip.clutch]! - plate;
    slip.warming = warmed / taken;
    walk.scheduled += asked * taken;
    const change =
      Math.abs(now.line.linePressure - linePressure) /
        (now.line.linePressure + linePressure + FAINT * now.setPoint) +
      Math.abs(state.gas - gas) +
      Math.abs(state.engine - engine) / engine +
      Math.abs(warmed) / plate +
      (state.char[slip.clutch]! - char);
    const calm = Math.min((CALM_RATE * walk.finer * taken) / change, 2 * step);
    walk.stride = Math.min(atMost, Math.max(SHORTEST * walk.finer, calm));
  }
  slip.heat = slip.made / slip.seconds;
  slip.speed = slip.turned / slip.seconds;
  settle(walk);
  takeStock(walk);
  return state.clock - start;
}

/** Longest step of the slip as it now is, and longest time between two settlings [s]. */
function longestNow(walk: Walk): number {
  const usual = LONGEST * walk.finer;
  const { slipTime } = walk.state;
  if (slipTime <= LASTING) return usual;
  const longer = usual * Math.min(LONGER, slipTime / LASTING);
  return isCalm(walk, longer) ? longer : usual;
}

/** The foot in the middle of a step: what the wished acceleration would need of a sound unit, more when lagging, less when a slip is felt. */
function pressPedal(walk: Walk, ahead: number, asked: number): void {
  const { state, road, unit, now } = walk;
  const { build, driver } = unit;
  const gear = build.gears[state.gear]!;
  const speed = Math.max(0, state.speed + ahead * now.drive.acceleration);
  const torque = turbineTorqueFor(
    build,
    gear,
    roadForce(build.vehicle, speed, road.wish, gradeAngle(road.grade)),
  );
  const turbine = turbinePerMetre(build, gear) * speed;
  if (torque <= 0) {
    walk.pedal = 0;
    return;
  }
  const engine = Math.max(build.engine.idleSpeed, impellerSpeed(build.converter, torque, turbine));
  const pumping = pumpTorque(
    build.pump,
    setPoint(build.regulator, torque, false, now.temperature, state.trim),
  );
  const needed = impellerTorque(build.converter, engine, turbine) + pumping;
  const lag = Math.max(0, walk.scheduled + ahead * asked - speed);
  const pressed = Math.min(1, pedalFor(build.engine, engine, needed) + driver.pressOn * lag);
  walk.pedal = state.slipTime > FELT_AFTER - INSTANT ? pressed * driver.easeOff : pressed;
}
