// How closely a tick must be looked at: whether air can reach the pickup meanwhile, and how far surface and gas move in a step.

import { depthAt, meanDepth } from "../physics/sump/pan.ts";
import { isCovered } from "../physics/sump/pickup.ts";
import { tiltAcross, tiltAlong } from "../physics/sump/tilt.ts";
import type { Swing, Walk } from "./walk.ts";

/** Depth to spare over the pickup, for what a tick may yet change, before the steps stay coarse [m]. */
const SPARE_DEPTH = 0.001;
/** A step near air is so many fine ones, by halves, */
export const COARSEST = 4;
const FINEST = 1 / 4;
/** as long as gas and pressure (over its set point) move by no more than this in a fine step's share of a second [1/s], */
const CALM_RATE = 1;
/** and the surface no faster than this [m/s], unless it stays well over the mouth or under it. */
const CALM_SPEED = 0.04;
/** An element that holds less than this many times its torque is looked at closely. */
export const WEAK = 1.1;

/** Whether air could reach the pickup within the next second, as the surface swings: then the steps are fine. */
export function mayDrawAir(walk: Walk): boolean {
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

/** A seam that leaks by less than this change of the level above it is looked at coarsely [m]. */
const STILL = 1e-4;

/** Whether the surface moves at a seam of the pan that leaks: then the step is short enough to follow it. */
export function movesAtSeam(walk: Walk): boolean {
  if (!walk.now.leak.onRail) return false;
  const { slosh } = walk.state;
  const { pan, sloshDamping } = walk.unit.build.sump;
  const along = tiltAlong(walk.road.wish, Math.atan(walk.road.grade));
  const across = tiltAcross(walk.road.lateral);
  const x = swing(slosh[0]! - along, slosh[1]!, walk.along.frequency, sloshDamping);
  const y = swing(slosh[2]! - across, slosh[3]!, walk.across.frequency, sloshDamping);
  return x * pan.length + y * pan.width > STILL;
}

/** No swing about a standing target goes further than this: w² e² + 2 z w e e' + e'² never grows. */
function swing(offset: number, rate: number, frequency: number, damping: number): number {
  if (!(frequency > 0)) return Math.abs(offset);
  const w = frequency;
  const energy = w * w * offset * offset + 2 * damping * w * offset * rate + rate * rate;
  return damping < 1 ? Math.sqrt(Math.max(0, energy) / (1 - damping * damping)) / w : Math.abs(offset) + Math.abs(rate) / w;
}

/**
 * Length of the next step near air [s]: from a quarter of a fine step, while gas, pressure or the surface at the mouth move fast,
 * to four times as much while they move slowly. Everything is judged by rates, so that with finer steps all are finer.
 */
export function fineStep(walk: Walk): number {
  const { state, now, unit, fine } = walk;
  const { pan, pickup } = unit.build.sump;
  const drawing = (Math.abs(now.gasDrawn - state.gas) * now.line.drawn) / unit.build.holdUp.suction;
  const rate = Math.max(drawing, walk.sagRate);
  const { slosh } = state;
  const depth = depthAt(pan, now.panVolume, slosh[0]!, slosh[2]!, pickup.x, pickup.y) - pickup.height;
  const leverX = Math.max(pickup.x, pan.length - pickup.x);
  const leverY = Math.max(pickup.y, pan.width - pickup.y);
  const weak = now.holds < WEAK * now.drive.turbineTorque;
  for (let times = weak ? 1 : COARSEST; times > FINEST; times /= 2) {
    if (rate * times > CALM_RATE) continue;
    const reach = leverX * travel(walk.along, slosh, 0, times * fine) + leverY * travel(walk.across, slosh, 2, times * fine);
    if (reach < CALM_SPEED * fine || depth + reach < 0 || isCovered(pickup, depth - reach, now.line.drawn)) return times * fine;
  }
  return FINEST * fine;
}

/** How far a slope can go in a time [s], by its rate and by what pulls it. */
function travel(axis: Swing, slosh: Float64Array, offset: number, seconds: number): number {
  const pull = axis.frequency * axis.frequency * Math.abs(axis.target - slosh[offset]!);
  return (Math.abs(slosh[offset + 1]!) + 0.5 * pull * seconds) * seconds;
}
