// One tick of a drive: what the controller decides once, then the chain in one step, or in fine ones where it matters.

import { drivingNow } from "../physics/chain.ts";
import { turbinePerMetre, turbineTorqueFor } from "../physics/drivetrain.ts";
import { impellerSpeed, impellerTorque } from "../physics/load/converter.ts";
import { pedalFor } from "../physics/load/engine.ts";
import { roadForce } from "../physics/load/road.ts";
import { gearFor } from "../physics/load/shift.ts";
import { depthAt, meanDepth } from "../physics/sump/pan.ts";
import { isCovered } from "../physics/sump/pickup.ts";
import { tiltAcross, tiltAlong } from "../physics/sump/tilt.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { flow, lookAhead, lookBack, takeStock } from "./advance.ts";
import { settle } from "./settle.ts";
import { shiftTo, type Engagement } from "./shift.ts";
import { slipFor } from "./slip.ts";
import type { Walk } from "./walk.ts";

/** Acceleration beyond the schedule's that a driver uses to catch up [m/s²]. */
const CATCH_UP = 1;
/** A lock-up that slips uncontrolled for so long is released until the key is turned [s], slipping this much [rad/s]. */
const LOCK_UP_PATIENCE = 10;
const LOCK_UP_SLIP = (150 * Math.PI) / 30;

/** No more gas than this many times the fluid's own, and this much more depth than air needs [m]: nothing comes within a double step. */
const CALM_GAS = 1.02;
const CALM_DEPTH = 0.012;
/** Heat and linings are settled so often while a clutch slips [s]. */
const SLIP_SETTLES = 0.1;
/** An element that holds less than this many times its torque is looked at closely. */
const WEAK = 1.1;
/** The speed in the middle of a step at full throttle settles by a factor of some hundred each turn. */
const FULL_THROTTLE_TURNS = 2;
/** What is left of a tick below this is over [s]: after months the clock itself has no finer digits. */
const SHORTEST_STEP = 1e-6;
/** Depth to spare over the pickup, for what a tick may yet change, before the steps stay coarse [m]. */
const SPARE_DEPTH = 0.001;

export type AfterStep = (walk: Walk) => boolean;

/** Drives one tick towards a scheduled speed; `after` looks at every step taken and may end the drive. Returns false when it did. */
export function tick(
  walk: Walk,
  seconds: number,
  target: number,
  grade: number,
  lateral: number,
  engagement: Engagement,
  after: AfterStep,
): boolean {
  const { state, road, unit } = walk;
  const { build } = unit;
  const asked = (target - walk.scheduled) / seconds;
  const wish = Math.min((target - state.speed) / seconds, Math.max(0, asked) + CATCH_UP);
  road.wish = wish;
  road.grade = grade;
  road.lateral = lateral;

  takeStock(walk);
  const gear = gearFor(build.shiftPlan, state.gear + 1, state.speed, wish) - 1;
  engagement.time = 0;
  if (gear !== state.gear) {
    road.speed = state.speed;
    shiftTo(walk, gear, engagement);
  }
  decideLockUp(walk);

  const from = walk.scheduled;
  let left = seconds;
  let closely = mayDrawAir(walk);
  while (left > SHORTEST_STEP) {
    if (state.slipping) {
      closely = true;
      left -= slipOn(walk, Math.min(left, SLIP_SETTLES), asked);
    } else left -= roll(walk, closely ? Math.min(left, fineStep(walk)) : left);
    walk.scheduled = from + (target - from) * (1 - left / seconds);
    if (!after(walk)) {
      settle(walk);
      return false;
    }
  }
  settle(walk);
  walk.scheduled = target;
  return true;
}

/** Slips on for a time [s], the schedule rising by `asked` [m/s²], or until the elements hold again, and settles the heat; returns the time taken. */
function slipOn(walk: Walk, wanted: number, asked: number): number {
  const { state, sums, slip } = walk;
  settle(walk);
  const start = state.clock;
  const until = start + wanted;
  while (state.slipping && until - state.clock > SHORTEST_STEP) {
    const before = state.clock;
    pressPedal(walk);
    if (!slipFor(walk, Math.min(walk.finer, until - state.clock))) {
      state.slipping = false;
      state.slipTime = 0;
    }
    walk.scheduled += asked * (state.clock - before);
  }
  slip.clutch = walk.now.weakest;
  slip.heat = sum(sums.slip) / sums.seconds;
  slip.speed = sums.slipped / sums.seconds;
  settle(walk);
  takeStock(walk);
  return state.clock - start;
}

function sum(values: Float64Array): number {
  let total = 0;
  for (let i = 0; i < values.length; i++) total += values[i]!;
  return total;
}

/**
 * One step with every element holding: as long as wanted, or shorter where an element is weak. Returns the time taken; 0 when an
 * element gave way and slips from here on.
 */
function roll(walk: Walk, wanted: number): number {
  const { state, road, unit, now, slip } = walk;
  const { drive } = now;
  if (state.speed === 0 && road.wish < 0) road.wish = 0;
  let seconds = lookAt(walk, wanted);
  // Weak: look closer before deciding whether it holds, and closer still for the moment at which it gives way.
  if (seconds > 2 * walk.fine && now.holds < WEAK * drive.turbineTorque) seconds = lookAt(walk, walk.fine);
  if (seconds > walk.finer && drive.turbineTorque > now.holds) seconds = lookAt(walk, walk.finer);
  if (drive.turbineTorque > now.holds) {
    lookBack(walk);
    state.slipping = true;
    state.slipTime = 0;
    state.lockUpOn = false;
    state.turbine = turbinePerMetre(unit.build, unit.build.gears[state.gear]!) * state.speed;
    state.engine = Math.max(drive.engine, state.turbine);
    walk.engineTrend = 0;
    return 0;
  }
  slip.heat = 0;
  slip.speed = 0;
  slip.clutch = now.weakest;
  state.engine = drive.engine;
  state.turbine = drive.turbine;
  state.lockUpSlipTime = drive.lockSaturated && drive.lockSlip > LOCK_UP_SLIP ? state.lockUpSlipTime + seconds : 0;
  const speed = Math.max(0, state.speed + drive.acceleration * seconds);
  const covered = 0.5 * (state.speed + speed) * seconds;
  state.distance += covered;
  walk.sums.distance += covered;
  state.speed = speed;
  flow(walk, seconds);
  return seconds;
}

/** Takes the instant in the middle of a step, which ends when the vehicle stands; returns the step's length. */
function lookAt(walk: Walk, wanted: number): number {
  const { state, road } = walk;
  if (walk.ahead > 0) lookBack(walk);
  const seconds = untilStanding(state.speed, road.wish, wanted);
  if (seconds <= 2 * walk.fine) lookAhead(walk, 0.5 * seconds, road.wish);
  const { drive } = walk.now;
  road.speed = Math.max(0, state.speed + 0.5 * road.wish * seconds);
  drivingNow(walk.unit, state, road, walk.now);
  // Where the engine has no more to give, the middle of the step is slower than wished: once more at the speed that is reached.
  for (let i = 0; i < FULL_THROTTLE_TURNS && drive.acceleration < road.wish; i++) {
    road.speed = Math.max(0, state.speed + 0.5 * drive.acceleration * seconds);
    drivingNow(walk.unit, state, road, walk.now);
  }
  return seconds;
}

/** Time of a step that ends when the vehicle stands. */
function untilStanding(speed: number, acceleration: number, seconds: number): number {
  return speed + acceleration * seconds < 0 ? -speed / acceleration : seconds;
}

/** The foot: what the wished acceleration would need of a sound unit, more when lagging, less when a slip is felt. */
function pressPedal(walk: Walk): void {
  const { state, road, unit, now } = walk;
  const { build, driver } = unit;
  const gear = build.gears[state.gear]!;
  const torque = turbineTorqueFor(build, gear, roadForce(build.vehicle, state.speed, road.wish, Math.atan(road.grade)));
  const turbine = turbinePerMetre(build, gear) * state.speed;
  if (torque <= 0) {
    walk.pedal = 0;
    return;
  }
  const engine = Math.max(build.engine.idleSpeed, impellerSpeed(build.converter, torque, turbine));
  const needed = impellerTorque(build.converter, engine, turbine) + pumpTorque(build.pump, now.setPoint);
  const lag = Math.max(0, walk.scheduled - state.speed);
  const pressed = Math.min(1, pedalFor(build.engine, engine, needed) + driver.pressOn * lag);
  walk.pedal = state.slipTime > 1 ? pressed * driver.easeOff : pressed;
}

/** Whether air could reach the pickup within the next second, as the surface swings: then the steps are fine. */
function mayDrawAir(walk: Walk): boolean {
  const { state, now, road, unit } = walk;
  const { pan, pickup, sloshDamping } = unit.build.sump;
  if (state.gas > pickup.baseGas * 1.5) return true;
  const depth = meanDepth(pan, now.panVolume);
  const along = tiltAlong(road.wish, Math.atan(road.grade));
  const across = tiltAcross(road.lateral);
  const swingX = swing(state.slosh[0]! - along, state.slosh[1]!, walk.along.frequency, sloshDamping);
  const swingY = swing(state.slosh[2]! - across, state.slosh[3]!, walk.across.frequency, sloshDamping);
  const reachX = pan.length / 2 - pickup.x;
  const reachY = pan.width / 2 - pickup.y;
  const steep = (Math.abs(along) + swingX) * pan.length * 0.5 + (Math.abs(across) + swingY) * pan.width * 0.5;
  let lowest = depth + along * reachX + across * reachY - swingX * Math.abs(reachX) - swingY * Math.abs(reachY);
  if (depth < steep || depth + steep > pan.height) {
    // The plane may meet floor or lid: look at the four ends of the swing.
    for (let end = 0; end < 4; end++) {
      const x = along + (end & 1 ? swingX : -swingX);
      const y = across + (end & 2 ? swingY : -swingY);
      lowest = Math.min(lowest, depthAt(pan, now.panVolume, x, y, pickup.x, pickup.y));
    }
  }
  return !isCovered(pickup, 0.9 * (lowest - pickup.height) - SPARE_DEPTH, 1.1 * now.line.drawn);
}

/** Twice the fine step as long as no air comes and the surface stands further over the mouth than it can fall meanwhile. */
function fineStep(walk: Walk): number {
  const { state, now, unit } = walk;
  const { pickup } = unit.build.sump;
  const calm = state.gas < CALM_GAS * pickup.baseGas && isCovered(pickup, now.submergence - CALM_DEPTH, now.line.drawn);
  return calm ? 2 * walk.fine : walk.fine;
}

/** No swing about a standing target goes further than this: w² e² + 2 z w e e' + e'² never grows. */
function swing(offset: number, rate: number, frequency: number, damping: number): number {
  if (!(frequency > 0)) return Math.abs(offset);
  const w = frequency;
  const energy = w * w * offset * offset + 2 * damping * w * offset * rate + rate * rate;
  return damping < 1 ? Math.sqrt(Math.max(0, energy) / (1 - damping * damping)) / w : Math.abs(offset) + Math.abs(rate) / w;
}

function decideLockUp(walk: Walk): void {
  const { state, unit, now } = walk;
  const { lockUp } = unit.build;
  if (state.lockUpSlipTime > LOCK_UP_PATIENCE) state.lockUpBarred = true;
  const tooHot = lockUp.whenHot === "releases" && now.temperature > lockUp.hot;
  if (state.lockUpBarred || state.slipping || state.gear < lockUp.fromGear || now.temperature < lockUp.fluidAbove || tooHot) {
    state.lockUpOn = false;
  } else if (state.speed > lockUp.onAbove) state.lockUpOn = true;
  else if (state.speed < lockUp.offBelow) state.lockUpOn = false;
}

