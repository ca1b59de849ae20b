// A clutch that slips: two inertias, the engine's and the turbine's, coupled by the converter and braked by the clutch.
// The converter answers within milliseconds, so the step is implicit in its slopes: ROS2, a two-stage W-method of second
// order that is stable however stiff the converter is (Verwer, Spee, Blom and Hundsdorfer 1999).

import type { Gear } from "../physics/build.ts";
import { clutchesNow, supplyNow } from "../physics/chain.ts";
import { turbinePerMetre, wheelForceFrom } from "../physics/drivetrain.ts";
import { elementCapacity } from "../physics/holding.ts";
import { converterSlopes, impellerTorque, turbineTorque } from "../physics/load/converter.ts";
import { engineSlope, engineTorque } from "../physics/load/engine.ts";
import { roadForce } from "../physics/load/road.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { flow, lookAhead } from "./advance.ts";
import type { Walk } from "./walk.ts";

const GAMMA = 1 - Math.SQRT1_2;
/** Implicit steps for each look at the pressure. */
const SPINS = 2;
const slopes = new Float64Array(4);
/** Angular accelerations of engine and turbine [rad/s²]: the last evaluation of `turn`. */
const turning = new Float64Array(2);

/** Carries a slipping unit over `seconds` at one line pressure; returns false once the slip is gone and the elements hold again. */
export function slipFor(walk: Walk, seconds: number): boolean {
  const { state, now, unit, road, sums } = walk;
  const { build } = unit;
  const gear = build.gears[state.gear]!;
  const perMetre = turbinePerMetre(build, gear);
  const { drive } = now;

  lookAhead(walk, 0.5 * seconds, drive.acceleration);
  const engine = Math.max(build.engine.idleSpeed, state.engine + 0.5 * seconds * walk.engineTrend);
  drive.turbineTorque = turbineTorque(build.converter, engine, state.turbine);
  supplyNow(unit, state, engine, drive.turbineTorque, false, now);
  clutchesNow(unit, state, gear, state.turbine - perMetre * state.speed, now);
  const share = shareOf(gear, now.weakest);
  const pumping = pumpTorque(build.pump, now.line.linePressure);
  const resisting = roadForce(build.vehicle, Math.max(state.speed, 1e-3), 0, Math.atan(road.grade));
  const h = seconds / SPINS;
  const started = state.engine;
  let heat = 0;
  let churn = 0;
  let lossBefore = converterLoss(walk);
  let holds = false;
  let taken = 0;

  while (taken < SPINS && !holds) {
    const before = state.turbine - perMetre * state.speed;
    const slip = before / share;
    const held = elementCapacity(build, state, now.weakest, slip, now.line.linePressure) / share;
    const carried = before >= 0 ? held : -held;
    spin(walk, h, carried, pumping);
    const loss = converterLoss(walk);
    churn += 0.5 * h * (lossBefore + loss);
    lossBefore = loss;
    const pushed = (wheelForceFrom(build, gear, carried) - resisting) / (build.vehicle.mass * build.vehicle.rotating);
    const speed = Math.max(0, state.speed + Math.min(road.wish, pushed) * h);
    drive.acceleration = (speed - state.speed) / h; // what holds a standing vehicle is no acceleration
    const covered = 0.5 * (state.speed + speed) * h;
    state.distance += covered;
    sums.distance += covered;
    state.speed = speed;
    const after = state.turbine - perMetre * speed;
    holds = before === 0 ? after <= 0 : before * after <= 0;
    // Mean slip of the step: up to the moment at which it ran out, if it did.
    const mean = holds ? (0.5 * before * before) / Math.max(1e-12, Math.abs(before - after)) : 0.5 * Math.abs(before + after);
    heat += held * mean * h;
    sums.slipped += mean * h;
    taken++;
  }

  const span = taken * h;
  walk.engineTrend = (state.engine - started) / span;
  sums.slip[now.weakest]! += heat;
  now.converterHeat = churn / span;
  now.gearHeat = now.holds * perMetre * state.speed * (1 - build.gearEfficiency);
  now.lockUpHeat = 0;
  now.pumpHeat = pumping * state.engine;
  drive.engine = state.engine;
  flow(walk, span);
  state.slipTime += span;
  if (holds) state.turbine = perMetre * state.speed;
  return !holds;
}

function shareOf(gear: Gear, clutch: number): number {
  for (const hold of gear.holds) if (hold.clutch === clutch) return hold.share;
  return 1;
}

/** Power lost in the converter [W]. */
function converterLoss(walk: Walk): number {
  const { engine, turbine } = walk.state;
  const { converter } = walk.unit.build;
  return Math.max(0, impellerTorque(converter, engine, turbine) * engine - turbineTorque(converter, engine, turbine) * turbine);
}

/** One implicit step of engine and turbine speed [s] under a clutch torque that stays [N m at the turbine]. */
export function spin(walk: Walk, h: number, carried: number, pumping: number): void {
  const { state, unit, pedal } = walk;
  const { build } = unit;
  const engineInertia = build.engine.inertia;
  const turbineInertia = build.shiftControl.turbineInertia;

  converterSlopes(build.converter, state.engine, state.turbine, slopes);
  const g = GAMMA * h;
  const a = 1 - (g * (engineSlope(build.engine, state.engine, pedal) - slopes[0]!)) / engineInertia;
  const b = (g * slopes[1]!) / engineInertia;
  const c = (-g * slopes[2]!) / turbineInertia;
  const d = 1 - (g * slopes[3]!) / turbineInertia;
  const determinant = a * d - b * c;

  turn(walk, state.engine, state.turbine, carried, pumping);
  const k1e = (d * turning[0]! - b * turning[1]!) / determinant;
  const k1t = (a * turning[1]! - c * turning[0]!) / determinant;
  turn(walk, state.engine + h * k1e, state.turbine + h * k1t, carried, pumping);
  const fe = turning[0]! - 2 * k1e;
  const ft = turning[1]! - 2 * k1t;
  const k2e = (d * fe - b * ft) / determinant;
  const k2t = (a * ft - c * fe) / determinant;
  state.engine = Math.max(build.engine.idleSpeed, state.engine + h * (1.5 * k1e + 0.5 * k2e)); // the idle control holds it
  state.turbine = Math.max(0, state.turbine + h * (1.5 * k1t + 0.5 * k2t));
}

/** Angular accelerations at given speeds, written to `turning`. */
function turn(walk: Walk, engine: number, turbine: number, carried: number, pumping: number): void {
  const { build } = walk.unit;
  const impeller = impellerTorque(build.converter, engine, turbine);
  const given = engineTorque(build.engine, Math.max(0, engine), walk.pedal);
  const driven = turbineTorque(build.converter, engine, turbine);
  turning[0] = (given - pumping - impeller) / build.engine.inertia;
  turning[1] = (driven - carried) / build.shiftControl.turbineInertia;
}
