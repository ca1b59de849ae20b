// A clutch that slips: two inertias, the engine's and the turbine's, coupled by the converter and braked by the clutch.
// The converter answers within milliseconds and friction near standstill is as steep, so the step is implicit in the slopes of
// both (ros2.ts), of second order and stable however stiff they are.

import type { Gear } from "../physics/build.ts";
import { clutchesNow, supplyNow } from "../physics/chain.ts";
import { frictionSlope, slidingFriction, type Friction } from "../physics/clutch/friction.ts";
import { slidingSpeed } from "../physics/clutch/geometry.ts";
import { turbinePerMetre, wheelForceFrom } from "../physics/drivetrain.ts";
import { appliedPressure, elementGrip } from "../physics/holding.ts";
import { converterSlopes, impellerTorque, turbineTorque } from "../physics/load/converter.ts";
import { engineSlope, engineTorque } from "../physics/load/engine.ts";
import { gradeAngle, roadForce } from "../physics/load/road.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { flow, lookAhead } from "./advance.ts";
import { fullAfter } from "./entering.ts";
import { ros2Step } from "./ros2.ts";
import { settleClutch } from "./settle.ts";
import type { Walk } from "./walk.ts";

/** A look at the pressure takes one implicit step, or more where it would go wrong by so much of the speeds: at the kinks of converter and friction. */
const WRONG = 0.02;
/** Shortest of them [s]. */
const SHORTEST = 1e-4;
/** A slip that ends within a step ends the step, but not before this share of it, so that time goes on. */
const LEAST_SHARE = 0.1;
const slopes = new Float64Array(4);
/** Speeds of engine and turbine [rad/s], in a step; whose they are, and the pump's torque [N m]. */
const speeds = new Float64Array(2);
let turned: Walk;
let pumps = 0;

/** What brakes the turbine meanwhile: friction that follows the slip over the gear's own speed. */
interface Brake {
  friction: Friction;
  /** Torque at the turbine for each unit of friction [N m]; the sense of the slip, 1 or -1; the gear's speed at the turbine [rad/s]. */
  grip: number;
  sense: number;
  gearSpeed: number;
  /** Sliding speed for each unit of slip at the turbine [m/rad]. */
  arm: number;
}

const even: Friction = { base: 1, rise: 0, riseSpeed: 1, slope: 0, heatLoss: 0, reference: 1 };
const brake: Brake = { friction: even, grip: 0, sense: 1, gearSpeed: 0, arm: 0 };

/** Torque that the brake takes from a turbine speed [N m]; past the end of the slip as at its end. */
function braking(turbine: number): number {
  const turned = brake.sense * (turbine - brake.gearSpeed);
  return brake.sense * brake.grip * slidingFriction(brake.friction, turned > 0 ? turned * brake.arm : 0);
}

/** Carries a slipping unit over `wanted` seconds at one line pressure, or until a clutch that fills is full and begins to press; returns false once the slip is gone and the elements hold again. */
export function slipFor(walk: Walk, wanted: number): boolean {
  const { state, now, unit, road, sums, slip } = walk;
  const { build } = unit;
  const gear = build.gears[state.gear]!;
  const perMetre = turbinePerMetre(build, gear);
  const { drive } = now;

  lookAhead(walk, 0.5 * wanted, drive.acceleration);
  const engine = Math.max(build.engine.idleSpeed, state.engine + 0.5 * wanted * walk.engineTrend);
  const turbine = Math.max(0, state.turbine + 0.5 * wanted * walk.turbineTrend);
  drive.turbineTorque = turbineTorque(build.converter, engine, turbine);
  supplyNow(unit, state, engine, drive.turbineTorque, false, now);
  const seconds = Math.min(wanted, fullAfter(walk));
  const startSlip = state.turbine - perMetre * state.speed;
  const sliding = slip.clutch;
  const plate = state.plate[sliding]!;
  const char = state.char[sliding]!;
  state.plate[sliding] = Math.max(0.5 * plate, plate + 0.5 * seconds * slip.warming);
  state.char[sliding] = Math.min(0.5 * (1 + char), char + 0.5 * seconds * slip.charring);
  clutchesNow(unit, state, gear, startSlip, now);
  const share = shareOf(gear, now.weakest);
  const clutch = build.clutches[now.weakest]!;
  brake.friction = clutch.friction;
  brake.grip =
    elementGrip(build, state, now.weakest, appliedPressure(state, now.weakest, now.line.linePressure)) /
    share;
  state.plate[sliding] = plate;
  state.char[sliding] = char;
  brake.sense = startSlip >= 0 ? 1 : -1;
  brake.arm = slidingSpeed(clutch, 1) / share;
  const pumping = pumpTorque(build.pump, now.line.linePressure);
  const midway = Math.max(1e-3, state.speed + 0.5 * seconds * drive.acceleration);
  const resisting = roadForce(build.vehicle, midway, 0, gradeAngle(road.grade));
  const inertia = build.vehicle.mass * build.vehicle.rotating;
  const longest = seconds;
  let h = longest;
  const { engine: engineBefore, turbine: turbineBefore } = state;
  let heat = 0;
  let churn = 0;
  let through = 0;
  let lossBefore = converterLoss(walk);
  let holds = false;
  let taken = 0;

  while (!holds && taken < (1 - 1e-9) * seconds) {
    h = Math.min(h, seconds - taken);
    const { engine: engineFrom, turbine: turbineFrom } = state;
    const before = turbineFrom - perMetre * state.speed;
    brake.gearSpeed = perMetre * state.speed;
    const first = braking(turbineFrom);
    brake.gearSpeed = perMetre * Math.max(0, state.speed + 0.5 * h * drive.acceleration);
    const wrong = spinOn(walk, h, pumping) / (WRONG * (engineFrom + turbineFrom));
    if (wrong > 1 && h > SHORTEST) {
      state.engine = engineFrom;
      state.turbine = turbineFrom;
      h = Math.max(SHORTEST, 0.5 * h);
      continue;
    }
    brake.gearSpeed = perMetre * Math.max(0, state.speed + h * drive.acceleration);
    const carried = 0.5 * (first + braking(state.turbine));
    const pushed = (wheelForceFrom(build, gear, carried) - resisting) / inertia;
    let speed = Math.max(0, state.speed + Math.min(road.wish, pushed) * h);
    const after = state.turbine - perMetre * speed;
    holds = before === 0 ? after <= 0 : before * after <= 0;
    let step = h;
    if (holds && before !== 0) {
      // The slip has run out on the way: the step ends there.
      const part = Math.max(LEAST_SHARE, before / (before - after));
      step = part * h;
      speed = state.speed + part * (speed - state.speed);
      state.engine = engineFrom + part * (state.engine - engineFrom);
    }
    if (holds) state.turbine = perMetre * speed;
    drive.acceleration = (speed - state.speed) / step; // what holds a standing vehicle is no acceleration
    const covered = 0.5 * (state.speed + speed) * step;
    state.distance += covered;
    sums.distance += covered;
    state.speed = speed;
    const loss = converterLoss(walk);
    churn += 0.5 * step * (lossBefore + loss);
    lossBefore = loss;
    const mean = 0.5 * Math.abs(before + (holds ? 0 : after));
    const held = Math.abs(carried);
    heat += held * mean * step;
    through += held * perMetre * covered;
    slip.turned += mean * step;
    taken += step;
    if (wrong < 0.2) h = Math.min(longest, 2 * h);
  }

  walk.engineTrend = (state.engine - engineBefore) / taken;
  walk.turbineTrend = (state.turbine - turbineBefore) / taken;
  if (now.weakest !== sliding) settleClutch(walk, now.weakest); // what it slips from here on is not spread over the time before
  slip.clutch = now.weakest;
  slip.seconds += taken;
  slip.made += heat;
  sums.slip[now.weakest]! += heat;
  now.converterHeat = churn / taken;
  now.gearHeat = (through / taken) * (1 - build.gearEfficiency);
  now.lockUpHeat = 0;
  now.pumpHeat = 0.5 * pumping * (engineBefore + state.engine);
  drive.engine = state.engine;
  flow(walk, taken);
  state.slipTime += taken;
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
  return Math.max(
    0,
    impellerTorque(converter, engine, turbine) * engine - turbineTorque(converter, engine, turbine) * turbine,
  );
}

/** One implicit step of engine and turbine speed [s] under a clutch torque that stays [N m at the turbine]. */
export function spin(walk: Walk, h: number, carried: number, pumping: number): void {
  brake.friction = even;
  brake.grip = carried;
  brake.sense = 1;
  brake.arm = 0;
  spinOn(walk, h, pumping);
}

/** One implicit step of engine and turbine speed [s] under the brake; returns by how much a first-order step differs [rad/s], both speeds together. */
function spinOn(walk: Walk, h: number, pumping: number): number {
  const { state, unit, pedal } = walk;
  const { build } = unit;
  const engineInertia = build.engine.inertia;
  const turbineInertia = build.shiftControl.turbineInertia;

  converterSlopes(build.converter, state.engine, state.turbine, slopes);
  const slide = Math.max(0, brake.sense * (state.turbine - brake.gearSpeed)) * brake.arm;
  const stiffness = brake.grip * brake.arm * Math.max(0, frictionSlope(brake.friction, slide));
  slopes[0] = (engineSlope(build.engine, state.engine, pedal) - slopes[0]!) / engineInertia;
  slopes[1] = -slopes[1]! / engineInertia;
  slopes[2] = slopes[2]! / turbineInertia;
  slopes[3] = (slopes[3]! - stiffness) / turbineInertia;
  speeds[0] = state.engine;
  speeds[1] = state.turbine;
  turned = walk;
  pumps = pumping;
  const wrong = ros2Step(speeds, h, slopes, turn);
  state.engine = Math.max(build.engine.idleSpeed, speeds[0]); // the idle control holds it
  state.turbine = Math.max(0, speeds[1]);
  return wrong;
}

/** Angular accelerations [rad/s²] at given speeds. */
function turn(engine: number, turbine: number, out: Float64Array): void {
  const { build } = turned.unit;
  const impeller = impellerTorque(build.converter, engine, turbine);
  const given = engineTorque(build.engine, Math.max(0, engine), turned.pedal);
  const driven = turbineTorque(build.converter, engine, turbine);
  const carried = braking(turbine);
  out[0] = (given - pumps - impeller) / build.engine.inertia;
  out[1] = (driven - carried) / build.shiftControl.turbineInertia;
}
