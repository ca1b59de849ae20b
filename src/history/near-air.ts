// How closely a tick must be looked at: whether air can reach the pickup meanwhile, and how far surface and gas move in a step.

import { gradeAngle } from "../physics/load/road.ts";
import { isCovered } from "../physics/sump/pickup.ts";
import { tiltAcross, tiltAlong } from "../physics/sump/tilt.ts";
import { lookBack, takeThrownOff } from "./advance.ts";
import { coveredFor, lowestWithin, swing } from "./covered.ts";
import { follow, gasAtEnd, isOther, mostFollowed } from "./mouth.ts";
import { forgetPath } from "./path.ts";
import type { Swing, Walk } from "./walk.ts";

/** By how much the mean depth is reckoned to fall within a tick before anything is known of it [m]. */
const SPARE_DEPTH = 1e-4;
/** A surface that swings by less is at rest [m]. */
const STILL = 2e-4;
/** A step near air is so many fine ones at most while something is scarce: air is at the pump, it delivers little more than is taken, or an element holds little more than its torque; */
export const COARSEST = 4;
/** so many while the line is short of its pressure: how long that lasts is an event; */
const SHORT = 2;
const AIRY = 0.05;
const SPARE_FLOW = 0.25;
const SPARE_GRIP = 1.3;
/** so many while nothing is, */
const CALMEST = 20;
/** and so many, up to the end of its tick, while no air can come; */
export const CALM_STEP = 100;
/** as long as the gas at the pump and the pressure (over its set point) move by no more than this, for each second of a fine step, but no less than so many. */
const GAS_RATE = 0.6;
const CALM_RATE = 1;
const FINEST = 1 / 4;
/** The gas is foreseen without the instant in the middle: where it moves by so many times as much after all, the step is taken back. */
const FORESEEN = 2;
/** An element that holds less than this many times its torque is looked at closely. */
export const WEAK = 1.1;

/** What the next steps are judged by: the slopes that the surface is drawn to, the flow drawn, and by how much the level may fall. */
export function aim(walk: Walk): void {
  const { road } = walk;
  walk.along.target = tiltAlong(road.wish, gradeAngle(road.grade));
  walk.across.target = tiltAcross(road.lateral);
  walk.mostDrawn = walk.now.line.drawn;
  walk.mostFall = SPARE_DEPTH;
}

/**
 * After a long look of so many seconds: whether its step must be taken back, because more is drawn than was reckoned with, the level
 * falls by more or the surface is drawn elsewhere, and air may come after all.
 * What is drawn at the step's end goes on from what was drawn before it and in its middle, as a straight line.
 */
export function drawsTooMuch(walk: Walk, drawnBefore: number, seconds: number): boolean {
  const { now, road, along } = walk;
  const { drawn } = now.line;
  const atEnd = 2 * drawn - drawnBefore;
  const most = atEnd > drawn ? atEnd : drawn;
  const fall = fallIn(walk, seconds);
  const short = now.drive.acceleration !== road.wish;
  if (most <= walk.mostDrawn && fall <= walk.mostFall && !short) return false;
  if (most > walk.mostDrawn) walk.mostDrawn = most;
  if (fall > walk.mostFall) walk.mostFall = fall;
  if (short) along.target = tiltAlong(now.drive.acceleration, gradeAngle(road.grade));
  return coveredFor(walk, seconds) < seconds;
}

/** Most by which the mean depth falls in a step [m]: what leaks, refills and is thrown off, less what comes back at its beginning. */
function fallIn(walk: Walk, seconds: number): number {
  const { now, state, unit } = walk;
  const { line } = now;
  const { holdUp, sump } = unit.build;
  const { pan } = sump;
  const liquid = 1 - line.lineGas;
  const lacking =
    holdUp.passages +
    holdUp.converter +
    holdUp.coolerAndLines -
    state.passages -
    state.converter -
    state.lines;
  const refills = Math.min(line.delivered * liquid * seconds, lacking);
  const thrown = (line.clutchFlow + line.feed - line.relief) * liquid * seconds;
  const back = walk.returnTime > 0 ? (state.inFlight * seconds) / walk.returnTime : 0;
  return (Math.max(refills, thrown) + now.leakFlow * seconds - back) / (pan.free * pan.length * pan.width);
}

/** Whether the surface swings over the leaking place of the pan's rail: what it wets there follows the swing. */
export function swingsOverRail(walk: Walk): boolean {
  const { state, now, road, unit } = walk;
  const { leak } = now;
  if (!leak.onRail) return false;
  const { pan, sloshDamping } = unit.build.sump;
  const along = tiltAlong(road.wish, gradeAngle(road.grade));
  const across = tiltAcross(road.lateral);
  const swingX = swing(state.slosh[0]! - along, state.slosh[1]!, walk.along.frequency, sloshDamping);
  const swingY = swing(state.slosh[2]! - across, state.slosh[3]!, walk.across.frequency, sloshDamping);
  const reachX = pan.length / 2 - leak.x;
  const reachY = pan.width / 2 - leak.y;
  const swings = swingX * Math.abs(reachX) + swingY * Math.abs(reachY);
  // A plane that meets the floor stands higher than this elsewhere, by less than half its slope.
  const dry = Math.max(
    0,
    (Math.abs(along) + swingX) * pan.length * 0.5 +
      (Math.abs(across) + swingY) * pan.width * 0.5 -
      now.panDepth,
  );
  return swings > STILL && now.panDepth + along * reachX + across * reachY + swings + dry > leak.height;
}

/**
 * Length of the next step near air, of what is left of the tick [s]: as long as the mouth stays covered for certain; else from a quarter of
 * a fine step, while the gas that reaches the pump or the pressure move fast, to twenty while neither does. The surface may swing as it
 * likes meanwhile: what is drawn is followed along its path. Everything is judged by rates, so that with finer steps all are finer.
 */
export function fineStep(walk: Walk, left: number): number {
  const { fine } = walk;
  walk.path.samples = 0;
  const covered = coveredFor(walk, Math.min(left, CALM_STEP * fine));
  walk.covered = covered > COARSEST * fine;
  if (walk.covered) {
    forgetPath(walk.path);
    return covered;
  }
  const calm = walk.sagRate > 0 ? CALM_RATE / walk.sagRate : Infinity;
  const may = Math.max(FINEST, Math.min(longestNow(walk), calm)) * fine;
  const longest = Math.min(may, mostFollowed(walk));
  return follow(walk, left / Math.max(1, Math.ceil(left / longest - 1e-9)), GAS_RATE * fine, FINEST * fine);
}

/**
 * Whether the look in the middle of a step near air must be taken again, and for how long a step [s]; 0 when it stands: where there is less to
 * spare after all, or where so much more or less is drawn than before it [m³/s], or the level moves so, that the gas goes another way.
 */
export function lookAgain(walk: Walk, seconds: number, drawnBefore: number): number {
  const { now, fine, state } = walk;
  const longest = longestNow(walk) * fine;
  const most = GAS_RATE * fine;
  lookBack(walk);
  const moved = Math.abs(gasAtEnd(walk, seconds) - state.gas);
  const other = isOther(now.line.drawn, drawnBefore);
  if (!other && seconds <= Math.max(longest, fine) && (moved <= FORESEEN * most || seconds <= FINEST * fine))
    return 0;
  // What is thrown off jumped with what is drawn.
  if (other) takeThrownOff(walk, 0);
  return follow(walk, Math.min(seconds, longest), most, FINEST * fine);
}

/** Most fine steps of a step near air: the less there is to spare, the fewer. */
function longestNow({ now, state }: Walk): number {
  const { spill, delivered } = now.line;
  const { turbineTorque } = now.drive;
  if (now.holds < WEAK * turbineTorque) return 1;
  if (now.line.linePressure < now.setPoint) return SHORT;
  const scarce = state.gas > AIRY || spill < SPARE_FLOW * delivered || now.holds < SPARE_GRIP * turbineTorque;
  return scarce ? COARSEST : CALMEST;
}

/** Whether the surface at the mouth moves by less than `least` [m] in a time [s], or stays over the mouth or under it however it swings. */
export function isCalm(walk: Walk, seconds: number, least = STILL): boolean {
  const { now, unit, along, across } = walk;
  const { slosh } = walk.state;
  const { pan, pickup, sloshDamping } = unit.build.sump;
  const mean = now.panDepth;
  const [x, y] = [slosh[0]!, slosh[2]!];
  const height = lowestWithin(pan, pickup, mean, x, 0, y, 0);
  const dx = travel(along, slosh, 0, sloshDamping, seconds);
  const dy = travel(across, slosh, 2, sloshDamping, seconds);
  const lowest = lowestWithin(pan, pickup, mean, x, dx, y, dy);
  // What is concave rises on one side by no more than it falls on the other.
  let reach = height - lowest;
  const meetsLid =
    mean + 0.5 * ((Math.abs(x) + dx) * pan.length + (Math.abs(y) + dy) * pan.width) > pan.height;
  if (meetsLid) {
    // Under a lid the plane turns about the middle of what is free, which may lie anywhere, and stands higher than one without a lid.
    const atMost =
      Math.max(pickup.x, pan.length - pickup.x) * dx + Math.max(pickup.y, pan.width - pickup.y) * dy;
    reach = Math.max(reach, atMost);
  }
  return (
    reach < least ||
    (!meetsLid && height + reach < pickup.height) ||
    isCovered(pickup, Math.min(lowest, pan.height) - pickup.height, now.line.drawn)
  );
}

/**
 * Most by which a slope can change in a time [s], by its rate and by what pulls it: s - s₀ = v₀S - w²(s₀ - target)∫S, S the answer to a
 * kick, which is never more than the time.
 */
function travel(axis: Swing, slosh: Float64Array, at: number, damping: number, seconds: number): number {
  const { frequency, target } = axis;
  const off = Math.abs(slosh[at]! - target);
  const speed = Math.abs(slosh[at + 1]!);
  const soon = (speed + 0.5 * frequency * frequency * off * seconds) * seconds;
  return Math.min(soon, off + swing(slosh[at]! - target, slosh[at + 1]!, frequency, damping));
}
