// A clutch that slips: two inertias, the engine's and the turbine's, coupled by the converter and braked by the clutch.
// The converter answers within milliseconds, so the step is implicit in its slopes: ROS2, a two-stage W-method of second
// order that is stable however stiff the converter is (Verwer, Spee, Blom and Hundsdorfer 1999).

import { clutchesNow, supplyNow } from "../physics/chain.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { turbinePerMetre, wheelForceFrom } from "../physics/drivetrain.ts";
import { converterSlopes, impellerTorque, turbineTorque } from "../physics/load/converter.ts";
import { engineSlope, engineTorque } from "../physics/load/engine.ts";
import { roadForce } from "../physics/load/road.ts";
import { advance } from "./advance.ts";
import type { Walk } from "./walk.ts";

const GAMMA = 1 - Math.SQRT1_2;
/** Longest implicit step [s]; the converter's time constant is a few milliseconds, the slip's tens of them. */
const STEP = 0.01;
const slopes = new Float64Array(4);
const rates = new Float64Array(2);

/** Carries a slipping unit over `seconds`; returns false once the slip is gone and the elements hold again. */
export function slipFor(walk: Walk, seconds: number): boolean {
  const { state, now, unit, slip, road } = walk;
  const { build } = unit;
  const gear = build.gears[state.gear]!;
  const perMetre = turbinePerMetre(build, gear);
  const { drive } = now;

  supplyNow(unit, state, state.engine, turbineTorque(build.converter, state.engine, state.turbine), false, now);
  const pumping = pumpTorque(build.pump, now.line.linePressure);
  const resisting = roadForce(build.vehicle, Math.max(state.speed, 1e-3), 0, Math.atan(road.grade));
  const steps = Math.ceil(seconds / STEP);
  const h = seconds / steps;
  let heat = 0;
  let churn = 0;
  let gears = 0;
  let slipped = 0;
  let holds = false;
  let taken = 0;

  while (taken < steps && !holds) {
    const before = state.turbine - perMetre * state.speed;
    clutchesNow(unit, state, gear, before, now);
    const carried = before >= 0 ? now.holds : -now.holds;
    spin(walk, h, carried, pumping);
    const force = wheelForceFrom(build, gear, carried);
    const pushed = (force - resisting) / (build.vehicle.mass * build.vehicle.rotating);
    drive.acceleration = Math.min(road.wish, pushed);
    const speed = Math.max(0, state.speed + drive.acceleration * h);
    state.distance += 0.5 * (state.speed + speed) * h;
    state.speed = speed;
    const after = state.turbine - perMetre * speed;
    holds = before === 0 ? after <= 0 : before * after <= 0;
    const mean = holds ? Math.abs(before) / 2 : (Math.abs(before) + Math.abs(after)) / 2;
    heat += now.holds * mean * h;
    slipped += mean * h;
    const turbine = turbineTorque(build.converter, state.engine, state.turbine);
    churn += Math.max(0, impellerTorque(build.converter, state.engine, state.turbine) * state.engine - turbine * state.turbine) * h;
    gears += Math.abs(carried * perMetre * speed) * (1 - build.gearEfficiency) * h;
    taken++;
  }

  const span = taken * h;
  slip.clutch = now.weakest;
  slip.heat = heat / span;
  slip.speed = slipped / span;
  now.converterHeat = churn / span;
  now.gearHeat = gears / span;
  now.lockUpHeat = 0;
  now.pumpHeat = pumping * state.engine;
  advance(walk, span);
  state.slipTime += span;
  if (holds) state.turbine = perMetre * state.speed;
  return !holds;
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
  const k1e = (d * rates[0]! - b * rates[1]!) / determinant;
  const k1t = (a * rates[1]! - c * rates[0]!) / determinant;
  turn(walk, state.engine + h * k1e, state.turbine + h * k1t, carried, pumping);
  const fe = rates[0]! - 2 * k1e;
  const ft = rates[1]! - 2 * k1t;
  const k2e = (d * fe - b * ft) / determinant;
  const k2t = (a * ft - c * fe) / determinant;
  state.engine = Math.max(build.engine.idleSpeed, state.engine + h * (1.5 * k1e + 0.5 * k2e)); // the idle control holds it
  state.turbine = Math.max(0, state.turbine + h * (1.5 * k1t + 0.5 * k2t));
}

/** Angular accelerations of engine and turbine [rad/s²], written to `rates`. */
function turn(walk: Walk, engine: number, turbine: number, carried: number, pumping: number): void {
  const { build } = walk.unit;
  const pump = impellerTorque(build.converter, engine, turbine);
  const given = engineTorque(build.engine, Math.max(0, engine), walk.pedal);
  rates[0] = (given - pumping - pump) / build.engine.inertia;
  rates[1] = (turbineTorque(build.converter, engine, turbine) - carried) / build.shiftControl.turbineInertia;
}
