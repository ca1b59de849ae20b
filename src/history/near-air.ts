// How closely a tick must be looked at: whether air can reach the pickup meanwhile, and how far surface and gas move in a step.

import { gradeAngle } from "../physics/load/road.ts";
import { depthAt, meanDepth } from "../physics/sump/pan.ts";
import { isCovered } from "../physics/sump/pickup.ts";
import { tiltAcross, tiltAlong } from "../physics/sump/tilt.ts";
import type { Swing, Walk } from "./walk.ts";

/** Depth to spare over the pickup, for what a tick may yet change, before the steps stay coarse [m]. */
const SPARE_DEPTH = 0.001;
/** A surface that swings by less is at rest [m]. */
const STILL = 2e-4;
/** A step near air is so many fine ones, by halves, */
export const COARSEST = 4;
const FINEST = 1 / 4;
/** and so many, up to the end of its tick, while no air can come, */
export const CALM_STEP = 100;
/** as long as gas and pressure (over its set point) move by no more than this in a fine step's share of a second [1/s], */
const CALM_RATE = 1;
/** and the surface no faster than this [m/s], unless it stays well over the mouth or under it. */
const CALM_SPEED = 0.04;
/** A tilt whose shallow end keeps a tenth of the depth turns about the pan's middle in the next step too; a small tilt more. */
const MOSTLY_FREE = 0.9;
const NUDGE = 1e-3;
/** An element that holds less than this many times its torque is looked at closely. */
export const WEAK = 1.1;

/**
 * Whether air could reach the pickup before the tick ends, as the surface swings and with as much drawn as `walk.mostDrawn`: then the
 * steps are fine.
 */
export function mayDrawAir(walk: Walk): boolean {
  const { state, now, road, unit } = walk;
  const { pan, pickup, sloshDamping } = unit.build.sump;
  if (state.gas > pickup.baseGas * 1.5) return true;
  const depth = meanDepth(pan, now.panVolume);
  const along = tiltAlong(road.wish, gradeAngle(road.grade));
  const across = tiltAcross(road.lateral);
  const swingX = swing(state.slosh[0]! - along, state.slosh[1]!, walk.along.frequency, sloshDamping);
  const swingY = swing(state.slosh[2]! - across, state.slosh[3]!, walk.across.frequency, sloshDamping);
  const reachX = pan.length / 2 - pickup.x;
  const reachY = pan.width / 2 - pickup.y;
  const steep = (Math.abs(along) + swingX) * pan.length * 0.5 + (Math.abs(across) + swingY) * pan.width * 0.5;
  let lowest =
    depth + along * reachX + across * reachY - swingX * Math.abs(reachX) - swingY * Math.abs(reachY);
  // Under a lid that it meets the plane only stands higher than without one, up to the lid.
  if (lowest > pan.height) lowest = pan.height;
  if (depth < steep) {
    // The plane may meet the floor: look at the four ends of the swing.
    for (let end = 0; end < 4; end++) {
      const x = along + (end & 1 ? swingX : -swingX);
      const y = across + (end & 2 ? swingY : -swingY);
      lowest = Math.min(lowest, depthAt(pan, now.panVolume, x, y, pickup.x, pickup.y));
    }
  }
  return !isCovered(pickup, 0.9 * (lowest - pickup.height) - SPARE_DEPTH, 1.1 * walk.mostDrawn);
}

/**
 * After a long look: whether its step must be taken back, because more is drawn than was reckoned with and air may come after all.
 * What is drawn at the step's end goes on from what was drawn before it and in its middle, as a straight line.
 */
export function drawsTooMuch(walk: Walk, drawnBefore: number): boolean {
  const { drawn } = walk.now.line;
  const atEnd = 2 * drawn - drawnBefore;
  const most = atEnd > drawn ? atEnd : drawn;
  if (most <= walk.mostDrawn) return false;
  walk.mostDrawn = most;
  return mayDrawAir(walk);
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

/** No swing about a standing target goes further than this: w² e² + 2 z w e e' + e'² never grows. */
function swing(offset: number, rate: number, frequency: number, damping: number): number {
  if (!(frequency > 0)) return Math.abs(offset);
  const w = frequency;
  const energy = w * w * offset * offset + 2 * damping * w * offset * rate + rate * rate;
  return damping < 1
    ? Math.sqrt(Math.max(0, energy) / (1 - damping * damping)) / w
    : Math.abs(offset) + Math.abs(rate) / w;
}

/**
 * Length of the next step near air [s]: from a quarter of a fine step, while gas, pressure or the surface at the mouth move fast,
 * to four times as much while they move slowly. Everything is judged by rates, so that with finer steps all are finer.
 */
export function fineStep(walk: Walk): number {
  const { state, now, unit, fine } = walk;
  const { pan, pickup } = unit.build.sump;
  // Once a swing has died down far enough, the mouth stays covered for what is left of the tick.
  if (!mayDrawAir(walk)) return CALM_STEP * fine;
  const drawing = (Math.abs(now.gasDrawn - state.gas) * now.line.drawn) / unit.build.holdUp.suction;
  const rate = Math.max(drawing, walk.sagRate);
  const { slosh } = state;
  const depth = depthAt(pan, now.panVolume, slosh[0]!, slosh[2]!, pickup.x, pickup.y) - pickup.height;
  takeLevers(walk, depth + pickup.height);
  const weak = now.holds < WEAK * now.drive.turbineTorque;
  for (let times = weak ? 1 : COARSEST; times > FINEST; times /= 2) {
    if (rate * times > CALM_RATE) continue;
    const reach =
      leverX * travel(walk.along, slosh, 0, times * fine) +
      leverY * travel(walk.across, slosh, 2, times * fine);
    if (reach < CALM_SPEED * fine || depth + reach < 0 || isCovered(pickup, depth - reach, now.line.drawn))
      return times * fine;
  }
  return FINEST * fine;
}

/** How far the surface moves at the mouth for each unit of slope along and across [m]. */
let leverX = 0;
let leverY = 0;

/**
 * While the surface meets neither floor nor lid it turns about the pan's middle. Else it turns about the middle of what is free of
 * both, which wanders with the tilt: what a small tilt does now, and half as much again. Dry or full, by the whole pan.
 */
function takeLevers({ state, now, unit }: Walk, depth: number): void {
  const { pan, pickup } = unit.build.sump;
  const [x, y] = [state.slosh[0]!, state.slosh[2]!];
  const middle = meanDepth(pan, now.panVolume);
  const edge = 0.5 * (Math.abs(x) * pan.length + Math.abs(y) * pan.width);
  leverX = Math.abs(0.5 * pan.length - pickup.x);
  leverY = Math.abs(0.5 * pan.width - pickup.y);
  if (edge <= MOSTLY_FREE * middle && middle + edge <= pan.height) return;
  const mostX = Math.max(pickup.x, pan.length - pickup.x);
  const mostY = Math.max(pickup.y, pan.width - pickup.y);
  if (depth > 0 && depth < pan.height) {
    const alongBy = Math.abs(depthAt(pan, now.panVolume, x + NUDGE, y, pickup.x, pickup.y) - depth) / NUDGE;
    const acrossBy = Math.abs(depthAt(pan, now.panVolume, x, y + NUDGE, pickup.x, pickup.y) - depth) / NUDGE;
    leverX = Math.min(mostX, Math.max(leverX, 1.5 * alongBy));
    leverY = Math.min(mostY, Math.max(leverY, 1.5 * acrossBy));
  } else {
    leverX = mostX;
    leverY = mostY;
  }
}

/** How far a slope can go in a time [s], by its rate and by what pulls it. */
function travel(axis: Swing, slosh: Float64Array, offset: number, seconds: number): number {
  const pull = axis.frequency * axis.frequency * Math.abs(axis.target - slosh[offset]!);
  return (Math.abs(slosh[offset + 1]!) + 0.5 * pull * seconds) * seconds;
}
