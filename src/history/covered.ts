// For how long the mouth stays covered for certain, as the surface swings about the targets of a tick.

import { planeAt, type Pan } from "../physics/sump/pan.ts";
import { isCovered, type Pickup } from "../physics/sump/pickup.ts";
import { sloshBy, sloshFactors } from "../physics/sump/slosh.ts";
import type { Walk } from "./walk.ts";

/** The surface's path is followed in parts of so many fine steps. */
const PART = 2;
/**
 * Of the submergence no more than this counts, and of the flow drawn so much: the bound is true for a flow, level and frequency that
 * stand, and each of them moves a little within a step. In 140 000 ticks of drawn units that were judged covered with nothing held
 * back, steps twenty times finer found the mouth 0.2 % under its onset at the worst.
 */
const LESS = 0.98;
const MORE = 1.02;

const path = new Float64Array(4);

/**
 * For how many of the next seconds of a tick no air can reach the pickup, as the surface swings about its targets, with as much drawn
 * as `walk.mostDrawn` and a level lower by `walk.mostFall`; what is wanted where it stays covered throughout. First by the swing's
 * energy, which is quick; then along its path, unless the engine is short: then the target itself moves.
 */
export function coveredFor(walk: Walk, wanted: number): number {
  const { state, now, along, across, unit } = walk;
  const { pan, pickup, sloshDamping } = unit.build.sump;
  if (state.gas > pickup.baseGas * 1.5) return 0;
  const { slosh } = state;
  const mean = now.panDepth - walk.mostFall;
  const swingX = swing(slosh[0]! - along.target, slosh[1]!, along.frequency, sloshDamping);
  const swingY = swing(slosh[2]! - across.target, slosh[3]!, across.frequency, sloshDamping);
  if (staysCovered(walk, lowestWithin(pan, pickup, mean, along.target, swingX, across.target, swingY)))
    return wanted;
  if (walk.short) return 0;

  const part = PART * walk.fine;
  const dx = bulge(along.frequency, swingX, sloshDamping, part);
  const dy = bulge(across.frequency, swingY, sloshDamping, part);
  path.set(slosh);
  sloshFactors(along.part, along.frequency, sloshDamping, part);
  sloshFactors(across.part, across.frequency, sloshDamping, part);
  for (let seconds = 0; ; seconds += part) {
    if (!staysCovered(walk, lowestWithin(pan, pickup, mean, path[0]!, dx, path[2]!, dy)))
      return Math.max(0, seconds - part);
    if (seconds >= wanted) return wanted;
    sloshBy(path, 0, along.target, along.part);
    sloshBy(path, 2, across.target, across.part);
  }
}

function staysCovered(walk: Walk, lowest: number): boolean {
  const { pan, pickup } = walk.unit.build.sump;
  return isCovered(pickup, LESS * (Math.min(lowest, pan.height) - pickup.height), MORE * walk.mostDrawn);
}

/**
 * Lowest height [m] that the surface's plane can have at the mouth for any slopes x ± dx and y ± dy, at a mean depth [m]; there is no
 * lid, under which it would only stand higher. While no such plane dips under the floor the height is linear in both slopes. Else
 * it is concave in them together, so it is lowest in a corner. (The volume under a plane, the sum of all depths over 0, is convex
 * in its height and slopes. So what holds at most a given volume is a convex set, and that volume's height is its upper edge.)
 */
export function lowestWithin(
  pan: Pan,
  pickup: Pickup,
  mean: number,
  x: number,
  dx: number,
  y: number,
  dy: number,
): number {
  const { length, width } = pan;
  if (mean >= 0.5 * ((Math.abs(x) + dx) * length + (Math.abs(y) + dy) * width)) {
    const reachX = 0.5 * length - pickup.x;
    const reachY = 0.5 * width - pickup.y;
    return mean + x * reachX + y * reachY - dx * Math.abs(reachX) - dy * Math.abs(reachY);
  }
  return Math.min(
    planeAt(pan, mean, x - dx, y - dy, pickup.x, pickup.y),
    planeAt(pan, mean, x - dx, y + dy, pickup.x, pickup.y),
    planeAt(pan, mean, x + dx, y - dy, pickup.x, pickup.y),
    planeAt(pan, mean, x + dx, y + dy, pickup.x, pickup.y),
  );
}

/** No swing about a standing target goes further than this: w² e² + 2 z w e e' + e'² never grows. */
export function swing(offset: number, rate: number, frequency: number, damping: number): number {
  if (!(frequency > 0)) return Math.abs(offset);
  const w = frequency;
  const energy = w * w * offset * offset + 2 * damping * w * offset * rate + rate * rate;
  return damping < 1
    ? Math.sqrt(Math.max(0, energy) / (1 - damping * damping)) / w
    : Math.abs(offset) + Math.abs(rate) / w;
}

/**
 * Furthest that the path of a swing leaves its chord within some seconds: an eighth of their square times the most that s'' can be,
 * w² (s - target) + 2 z w s', over all that the swing's energy allows. Height at the mouth, less what such a bulge takes, is concave
 * in both slopes together: along a chord it is lowest at one of the ends.
 */
export function bulge(frequency: number, most: number, damping: number, seconds: number): number {
  const turns = frequency * seconds;
  return 0.125 * turns * turns * most * (damping < 1 ? 1 : 1 + 2 * damping);
}
