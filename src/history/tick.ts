// One tick of a drive: what the controller decides once, then the chain in one step, or in fine ones where it matters.

import { fluidNow, instant } from "../physics/chain.ts";
import { turbinePerMetre, turbineTorqueFor } from "../physics/drivetrain.ts";
import { impellerSpeed, impellerTorque } from "../physics/load/converter.ts";
import { pedalFor } from "../physics/load/engine.ts";
import { roadForce } from "../physics/load/road.ts";
import { gearFor } from "../physics/load/shift.ts";
import { depthAt, meanDepth } from "../physics/sump/pan.ts";
import { isCovered } from "../physics/sump/pickup.ts";
import { tiltAcross, tiltAlong } from "../physics/sump/tilt.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { advance } from "./advance.ts";
import { shiftTo, type Engagement } from "./shift.ts";
import { slipFor } from "./slip.ts";
import type { Walk } from "./walk.ts";

/** Acceleration beyond the schedule's that a driver uses to catch up [m/s²]. */
const CATCH_UP = 1;
/** A lock-up that slips uncontrolled for so long is released until the key is turned [s], slipping this much [rad/s]. */
const LOCK_UP_PATIENCE = 10;
const LOCK_UP_SLIP = (150 * Math.PI) / 30;

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

  const gear = gearFor(build.shiftPlan, state.gear + 1, state.speed, wish) - 1;
  engagement.time = 0;
  if (gear !== state.gear) {
    road.speed = state.speed;
    fluidNow(unit, state, walk.now);
    shiftTo(walk, gear, engagement);
  }
  decideLockUp(walk);

  const from = walk.scheduled;
  let left = seconds;
  while (left > 1e-9) {
    let span = left;
    if (state.slipping) {
      span = Math.min(left, walk.finer);
      pressPedal(walk);
      const clock = state.clock;
      if (!slipFor(walk, span)) {
        state.slipping = false;
        state.slipTime = 0;
      }
      span = state.clock - clock;
    } else {
      if (mayDrawAir(walk)) span = Math.min(left, walk.fine);
      span = roll(walk, span);
    }
    left -= span;
    walk.scheduled = from + (target - from) * (1 - left / seconds);
    if (!after(walk)) return false;
  }
  walk.scheduled = target;
  return true;
}

/** One step with every element holding. Returns the time taken: 0 when an element gave way and slips from here on. */
function roll(walk: Walk, wanted: number): number {
  const { state, road, unit, now, slip } = walk;
  const { build } = unit;
  if (state.speed === 0 && road.wish < 0) road.wish = 0;
  let seconds = untilStanding(state.speed, road.wish, wanted);
  road.speed = Math.max(0, state.speed + 0.5 * road.wish * seconds);
  instant(unit, state, road, now);
  const { drive } = now;

  if (seconds > walk.fine && now.holds < 1.1 * drive.turbineTorque) {
    // Weak: look closer before deciding whether it holds.
    seconds = untilStanding(state.speed, road.wish, walk.fine);
    road.speed = Math.max(0, state.speed + 0.5 * road.wish * seconds);
    instant(unit, state, road, now);
  }
  if (drive.turbineTorque > now.holds) {
    state.slipping = true;
    state.slipTime = 0;
    state.lockUpOn = false;
    state.turbine = turbinePerMetre(build, build.gears[state.gear]!) * state.speed;
    state.engine = Math.max(drive.engine, state.turbine);
    return 0;
  }
  slip.heat = 0;
  slip.speed = 0;
  slip.clutch = now.weakest;
  state.engine = drive.engine;
  state.turbine = drive.turbine;
  state.lockUpSlipTime = drive.lockSaturated && drive.lockSlip > LOCK_UP_SLIP ? state.lockUpSlipTime + seconds : 0;
  advance(walk, seconds);
  const speed = Math.max(0, state.speed + drive.acceleration * seconds);
  state.distance += 0.5 * (state.speed + speed) * seconds;
  state.speed = speed;
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
  fluidNow(unit, state, now);
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
  const swingX = swing(state.slosh[0]! - along, state.slosh[1]!, walk.rockingAlong, sloshDamping);
  const swingY = swing(state.slosh[2]! - across, state.slosh[3]!, walk.rockingAcross, sloshDamping);
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

