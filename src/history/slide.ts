// Slipping on: how long each look at pressure and speeds may stand, and what the driver's foot does meanwhile.

import { turbinePerMetre, turbineTorqueFor } from "../physics/drivetrain.ts";
import { impellerSpeed, impellerTorque } from "../physics/load/converter.ts";
import { pedalFor } from "../physics/load/engine.ts";
import { gradeAngle, roadForce } from "../physics/load/road.ts";
import { ENGAGING } from "../physics/holding.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { setPoint } from "../physics/supply/regulator.ts";
import { takeStock } from "./advance.ts";
import { engaged } from "./entering.ts";
import { isCalm } from "./near-air.ts";
import { forgetPath } from "./path.ts";
import { settle, settleClutch } from "./settle.ts";
import { slipFor } from "./slip.ts";
import type { Walk } from "./walk.ts";

/** Lengths of a step, of the first one after a bend of the slip, and of the time between two settlings of heat and linings, in `finer` steps. */
const SHORTEST = 1 / 4;
const FIRST = 1 / 16;
const LONGEST = 10;
/** Once a slip has lasted [s] what its beginning stirred is over: from then on the longest is longer with its time, up to so many times as long, while the surface is calm. */
const LASTING = 2;
const LONGER = 5;
/** Before that it is so much shorter while the surface at the mouth moves by more than this [m] meanwhile and may pass it. */
const SWUNG = 1 / 4;
const SWINGS = 0.002;
/** A step may leave the straight line of the last one by so much of pressure, engine speed, plate and sound lining in all, for each `finer` squared [1/s²]: a look in the middle is wrong by a 24th of that. */
const BENT = 6;
/** more once it lasts. The engine counts for a part: its speed is carried on within the step, and only the pump is taken at that of the middle. */
const BENT_LASTING = 24;
const PUMPS = 1 / 4;
/** It may change these, and the gas, by so much of themselves, for each `finer` [1/s]. */
const CHANGED = 1.5;
/** Where a lining is all but charred, its last hundredth counts no more. */
const LINGERS = 0.01;
/** A pressure that is small against this share of the set point presses nothing: its changes count for less. */
const FAINT = 0.25;
/** The driver feels a slip after so long [s]. */
const FELT_AFTER = 1;
/** What is left of a time below this is over [s]: after months the clock itself has no finer digits. */
const INSTANT = 5e-7;

/** An element gives way: from here on the turbine turns by itself, at first in short steps. Speeds in rad/s. */
export function letGo(walk: Walk, turbine: number, engine: number): void {
  const { state } = walk;
  state.slipping = true;
  state.slipTime = 0;
  state.lockUpOn = false;
  forgetPath(walk.path);
  state.turbine = turbine;
  state.engine = Math.max(engine, turbine);
  walk.engineTrend = 0;
  walk.turbineTrend = 0;
  walk.pressureTrend = 0;
  walk.looked = SHORTEST * walk.finer;
  walk.slip.warming = 0;
  walk.slip.charring = 0;
  walk.stride = SHORTEST * walk.finer;
}

/** A slip that goes on otherwise than up to now, in a new gear or with a clutch that begins to press: closely looked at again. */
export function bend(walk: Walk): void {
  walk.stride = FIRST * walk.finer;
}

/**
 * Slips on for a time [s] of which one settling of heat is made at most, the schedule rising by `asked` [m/s²], or until the
 * elements hold again; returns the time taken. A step ends where the slip bends: when a clutch is full, when it gets all of the
 * line's pressure, when the driver feels it. Else it is as long as what it does goes on as in the last one, within the bounds above.
 */
export function slideOn(walk: Walk, wanted: number, asked: number): number {
  const { state, slip } = walk;
  slip.seconds = 0;
  slip.turned = 0;
  slip.made = 0;
  const start = state.clock;
  const atMost = longestNow(walk);
  const end = start + Math.min(wanted, atMost);
  while (state.slipping && end - state.clock > INSTANT) {
    const steps = Math.max(1, Math.ceil((end - state.clock) / walk.stride - 1e-6));
    slideBy(walk, (end - state.clock) / steps, asked, atMost);
  }
  slip.heat = slip.made / slip.seconds;
  slip.speed = slip.turned / slip.seconds;
  settle(walk);
  takeStock(walk);
  return state.clock - start;
}

/** One step of a slip, and how long the next one may be [s]. */
function slideBy(walk: Walk, wanted: number, asked: number, atMost: number): void {
  const { state, slip, now, engineTrend } = walk;
  const { gas, engine, unfilled, slipTime, shiftTime } = state;
  const { linePressure } = now.line;
  const { warming, charring } = slip;
  const { seconds, clutch: was } = slip;
  const step = Math.min(
    wanted,
    until(FELT_AFTER, slipTime),
    state.entering >= 0 ? until(ENGAGING, shiftTime) : Infinity,
  );
  pressPedal(walk, 0.5 * step, asked);
  if (!slipFor(walk, step)) {
    state.slipping = false;
    state.slipTime = 0;
    engaged(walk);
  }
  if (slip.clutch !== was) settleClutch(walk, was);
  const plate = state.plate[slip.clutch]!;
  const char = state.char[slip.clutch]!;
  settleClutch(walk, slip.clutch);
  const taken = slip.seconds - seconds; // the clock has fewer digits
  walk.scheduled += asked * taken;

  const warmed = state.plate[slip.clutch]! - plate;
  const charred = state.char[slip.clutch]! - char;
  const risen = now.line.linePressure - linePressure;
  const scale = now.line.linePressure + linePressure + FAINT * now.setPoint;
  const gained = state.engine - engine;
  const change =
    Math.abs(risen) / scale +
    Math.abs(state.gas - gas) +
    Math.abs(gained) / engine +
    Math.abs(warmed) / plate;
  // Pressures are those of the middles of two steps.
  const apart = 0.5 * (walk.looked + taken);
  const bent =
    Math.abs(risen - walk.pressureTrend * apart) / scale +
    (PUMPS * Math.abs(gained - engineTrend * taken)) / engine +
    Math.abs(warmed - warming * taken) / plate +
    Math.abs(charred - charring * taken) / (1 + LINGERS - char);
  slip.warming = warmed / taken;
  slip.charring = charred / taken;
  walk.pressureTrend = risen / apart;
  walk.looked = taken;
  const may = state.slipTime > LASTING ? BENT_LASTING : BENT;
  const calm = taken * walk.finer * Math.min(Math.sqrt(may / bent), CHANGED / change);
  const most = Math.min(2 * step, atMost);
  walk.stride = Math.min(most, Math.max(SHORTEST * walk.finer, calm));
  const felt = until(FELT_AFTER, slipTime) < Infinity && until(FELT_AFTER, state.slipTime) === Infinity;
  const pressed = until(ENGAGING, shiftTime) < Infinity && until(ENGAGING, state.shiftTime) === Infinity;
  if (felt || pressed || (unfilled > 0 && state.unfilled === 0)) bend(walk);
}

/** What is left until a time [s], as far as it counts; Infinity when it is over. */
const until = (time: number, now: number): number => (time - now > INSTANT ? time - now : Infinity);

/** Longest step of the slip as it now is, and longest time between two settlings [s]. */
function longestNow(walk: Walk): number {
  const usual = LONGEST * walk.finer;
  const { slipTime } = walk.state;
  if (slipTime <= LASTING) return isCalm(walk, usual, SWINGS) ? usual : SWUNG * usual;
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
