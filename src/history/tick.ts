// One tick of a drive: what the controller decides once, then the chain in one step, or in fine ones where it matters.

import { drivingNow } from "../physics/chain.ts";
import { turbinePerMetre } from "../physics/drivetrain.ts";
import { gearFor } from "../physics/load/shift.ts";
import { flow, lookAhead, lookBack, takeLeak, takeStock } from "./advance.ts";
import { coveredFor } from "./covered.ts";
import {
  aim,
  CALM_STEP,
  COARSEST,
  drawsTooMuch,
  fineStep,
  lookAgain,
  swingsOverRail,
  WEAK,
} from "./near-air.ts";
import { settle } from "./settle.ts";
import { shiftTo, type Engagement } from "./shift.ts";
import { bend, letGo, slideOn } from "./slide.ts";
import type { Walk } from "./walk.ts";

/** Acceleration beyond the schedule's that a driver uses to catch up [m/s²]. */
const CATCH_UP = 1;
/** A lock-up that slips uncontrolled for so long is released until the key is turned [s], slipping this much [rad/s]. */
const LOCK_UP_PATIENCE = 10;
const LOCK_UP_SLIP = (150 * Math.PI) / 30;

/** Less than this under the schedule is keeping up with it [m/s]. */
const KEEPS_UP = 0.5;

/** The speed in the middle of a step at full throttle settles by a factor of some hundred each turn, to within this [m/s]. */
const FULL_THROTTLE_TURNS = 3;
const SAME_SPEED = 1e-4;
/** The moment at which an element gives way is found to this share of a `finer` step. */
const GIVES_WAY = 1 / 16;

/** Time after which heat, plates and linings are settled, in `fine` steps; and in a tick that is looked at closely [s]. */
const SETTLES = 90;
const SETTLES_CLOSELY = 1;

/** What is left of a tick below this is over [s]: after months the clock itself has no finer digits. */
const SHORTEST_STEP = 1e-6;

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
  if (gear !== state.gear) settle(walk);
  if (walk.sums.seconds === 0) takeStock(walk, 0.5 * seconds);
  else takeLeak(walk, 0.5 * seconds);
  if (gear !== state.gear) {
    road.speed = state.speed;
    const slid = state.slipping;
    shiftTo(walk, gear, engagement);
    if (slid) bend(walk);
  }
  decideLockUp(walk);

  const from = walk.scheduled;
  let left = seconds;
  aim(walk);
  let closely = coveredFor(walk, seconds) < seconds;
  walk.covered = !closely;
  walk.path.samples = 0;
  const longest = (swingsOverRail(walk) ? COARSEST : CALM_STEP) * walk.fine;
  walk.marginAt = Number.NaN;
  walk.rolled = 0;
  while (left > SHORTEST_STEP) {
    if (state.slipping) {
      closely = true;
      walk.heldUp = true;
      left -= slideOn(walk, Math.min(left, longest), asked);
    } else {
      const most = Math.min(left, longest);
      const taken = roll(walk, closely ? fineStep(walk, untilStanding(state.speed, wish, most)) : most);
      if (taken === 0) closely = true;
      left -= taken;
      // Near air the fluid's warmth is kept up with: what is short hangs on it.
      if (closely && left > SHORTEST_STEP && walk.sums.seconds >= SETTLES_CLOSELY) {
        settle(walk);
        takeStock(walk, 0.5 * Math.min(left, SETTLES_CLOSELY));
      }
    }
    walk.scheduled = from + (target - from) * (1 - left / seconds);
    if (!state.slipping && walk.scheduled - state.speed < KEEPS_UP) walk.heldUp = false;
    if (!after(walk)) {
      settle(walk);
      return false;
    }
  }
  // Nothing moves fast while everything holds: heat is settled every few seconds then.
  if (closely || walk.sums.seconds > SETTLES * walk.fine) settle(walk);
  walk.scheduled = target;
  return true;
}

/**
 * One step with every element holding: as long as wanted, or shorter where an element is weak. Returns the time taken; 0 when an
 * element gave way and slips from here on, or when the step must be shorter because air may come.
 */
function roll(walk: Walk, wanted: number): number {
  const { state, road, unit, now, slip } = walk;
  const { drive } = now;
  if (state.speed === 0 && road.wish < 0) {
    // It stands, and the surface swings back from the braking.
    road.wish = 0;
    aim(walk);
    // A long step was judged by the braking.
    if (wanted > COARSEST * walk.fine && !(walk.covered && coveredFor(walk, wanted) >= wanted)) return 0;
  }
  const sag = now.line.linePressure / now.setPoint;
  const { drawn } = now.line;
  let seconds = lookAt(walk, wanted);
  if (walk.covered && seconds > COARSEST * walk.fine && drawsTooMuch(walk, drawn, seconds)) return 0;
  if (walk.path.samples > 0) {
    const again = lookAgain(walk, seconds, drawn);
    if (again > 0) seconds = lookAt(walk, again);
  }
  // Weak: look closer before deciding whether it holds, and closer still for the moment at which it gives way.
  if (seconds > walk.fine && now.holds < WEAK * drive.turbineTorque) seconds = lookAt(walk, walk.fine);
  if (seconds > walk.finer && drive.turbineTorque > now.holds) seconds = lookAt(walk, walk.finer);
  if (drive.turbineTorque > now.holds) {
    const still = holdsFor(walk, seconds);
    if (still < GIVES_WAY * walk.finer) {
      lookBack(walk);
      letGo(walk, turbinePerMetre(unit.build, unit.build.gears[state.gear]!) * state.speed, drive.engine);
      walk.marginAt = Number.NaN;
      return 0;
    }
    seconds = lookAt(walk, still);
  }
  walk.margin = now.holds - drive.turbineTorque;
  walk.marginAt = state.clock + 0.5 * seconds;
  slip.heat = 0;
  slip.speed = 0;
  slip.clutch = now.weakest;
  state.engine = drive.engine;
  state.turbine = drive.turbine;
  state.lockUpSlipTime =
    drive.lockSaturated && drive.lockSlip > LOCK_UP_SLIP ? state.lockUpSlipTime + seconds : 0;
  const speed = Math.max(0, state.speed + drive.acceleration * seconds);
  const covered = 0.5 * (state.speed + speed) * seconds;
  state.distance += covered;
  walk.sums.distance += covered;
  state.speed = speed;
  flow(walk, seconds);
  // Pressures are those of the middles of two steps; at a tick's beginning the driving has a kink.
  const apart = walk.rolled > 0 ? 0.5 * (walk.rolled + seconds) : seconds;
  walk.sagRate = Math.abs(now.line.linePressure / now.setPoint - sag) / apart;
  walk.rolled = seconds;
  return seconds;
}

/** How long an element still holds [s] that is found too weak in the middle of a step: a straight line from the last look. */
function holdsFor(walk: Walk, seconds: number): number {
  const { now, state } = walk;
  const lack = now.drive.turbineTorque - now.holds;
  if (!(walk.margin > 0 && state.clock >= walk.marginAt)) return 0;
  const looked = state.clock + 0.5 * seconds;
  const gone = (walk.margin / (walk.margin + lack)) * (looked - walk.marginAt);
  return walk.marginAt + gone - state.clock;
}

/** Takes the instant in the middle of a step, which ends when the vehicle stands; returns the step's length. */
function lookAt(walk: Walk, wanted: number): number {
  const { state, road } = walk;
  const seconds = untilStanding(state.speed, road.wish, wanted);
  const { drive } = walk.now;
  // Where the engine has no more to give, the middle of the step is slower than wished: it gives what it gave, or is asked again.
  let reached = walk.short ? Math.min(road.wish, drive.acceleration) : road.wish;
  const closely = !walk.covered || seconds <= COARSEST * walk.fine;
  for (let i = 0; i < FULL_THROTTLE_TURNS; i++) {
    if (walk.ahead > 0 && (i === 0 || walk.path.samples > 0)) lookBack(walk);
    if (closely && walk.ahead === 0) lookAhead(walk, 0.5 * seconds, reached);
    road.speed = Math.max(0, state.speed + 0.5 * reached * seconds);
    drivingNow(walk.unit, state, road, walk.now);
    const off = Math.abs(drive.acceleration - reached) * 0.5 * seconds;
    reached = drive.acceleration;
    if (off < SAME_SPEED) break;
  }
  walk.short = drive.acceleration < road.wish;
  return seconds;
}

/** Time of a step that ends when the vehicle comes to stand. */
function untilStanding(speed: number, acceleration: number, seconds: number): number {
  return speed > 0 && speed + acceleration * seconds < 0 ? -speed / acceleration : seconds;
}

function decideLockUp(walk: Walk): void {
  const { state, unit, now } = walk;
  const { lockUp } = unit.build;
  if (state.lockUpSlipTime > LOCK_UP_PATIENCE) state.lockUpBarred = true;
  const tooHot = lockUp.whenHot === "releases" && now.temperature > lockUp.hot;
  if (
    state.lockUpBarred ||
    state.slipping ||
    state.gear < lockUp.fromGear ||
    now.temperature < lockUp.fluidAbove ||
    tooHot
  ) {
    state.lockUpOn = false;
  } else if (state.speed > lockUp.onAbove) state.lockUpOn = true;
  else if (state.speed < lockUp.offBelow) state.lockUpOn = false;
}
