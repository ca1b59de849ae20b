// What the pickup draws while the surface swings over its mouth: followed along the surface's path in samples, each far cheaper than a step.
// Within a step the surface is known in closed form, and what the mouth draws only hangs on how deep it stands and on the flow. So a step is
// as long as the pump's gas and the line's pressure allow, however fast the surface swings.

import { coverDepth, gasBetween } from "../physics/sump/gas-drawn.ts";
import { panVolume } from "../physics/sump/holdup.ts";
import { depthAt } from "../physics/sump/pan.ts";
import { airOnset, weirDepth, type Pickup } from "../physics/sump/pickup.ts";
import { sloshBy, sloshFactors } from "../physics/sump/slosh.ts";
import { swing } from "./covered.ts";
import { MOST, type Draw } from "./path.ts";
import type { Walk } from "./walk.ts";

/** The surface at the mouth moves by no more than this in a sample [m, for each second of a fine step], and a sample lasts no less than this share of a fine step. */
const BY_SAMPLE = 0.02;
const SHORTEST = 1 / 4;
/** A flow that differs from another by more than this share did not grow from it: the engine turns otherwise from the new tick on. */
const OTHER = 0.1;

export const isOther = (flow: number, before: number): boolean => Math.abs(flow - before) > OTHER * flow;

/** A change of a flow as it goes on, as far as it may be one. */
const within = (change: number, flow: number): number =>
  Math.max(-OTHER * flow, Math.min(OTHER * flow, change));

/** Longest step [s] for whose path there are samples enough. */
export const mostFollowed = (walk: Walk): number => MOST * sampleOf(walk);

/** For how long the mouth's depth may be taken as going evenly [s]: by how fast the surface can swing there, about its targets. */
function sampleOf({ along, across, unit, state, fine }: Walk): number {
  const { pan, pickup, sloshDamping } = unit.build.sump;
  const { slosh } = state;
  const speedX = along.frequency * swing(slosh[0]! - along.target, slosh[1]!, along.frequency, sloshDamping);
  const speedY =
    across.frequency * swing(slosh[2]! - across.target, slosh[3]!, across.frequency, sloshDamping);
  // Over a floor that is dry in part the surface turns about another line than the pan's middle.
  const armX = Math.max(0.25 * pan.length, Math.abs(0.5 * pan.length - pickup.x));
  const armY = Math.max(0.25 * pan.width, Math.abs(0.5 * pan.width - pickup.y));
  return Math.max(SHORTEST * fine, (BY_SAMPLE * fine) / (speedX * armX + speedY * armY));
}

/**
 * Follows the surface about its targets, and the suction gas, for the seconds wanted or until the gas has changed by `most`, in no less than
 * `least` seconds; returns how long that is, an even number of samples. The state is that of the step's beginning, and the path is kept for it.
 */
export function follow(walk: Walk, wanted: number, most: number, least: number): number {
  const { state, now, along, across, unit, path } = walk;
  const { slopes, over, gas, draw } = path;
  const { pan, pickup, sloshDamping } = unit.build.sump;
  const { x, y, height } = pickup;
  const samples = Math.min(MOST, 2 * Math.max(1, Math.ceil((0.5 * wanted) / sampleOf(walk) - 1e-9)));
  const lasts = wanted / samples;
  path.lasts = lasts;
  path.began = state.clock;
  path.end = Number.NaN;
  path.along = along.target;
  path.across = across.target;
  sloshFactors(along.sample, along.frequency, sloshDamping, lasts);
  sloshFactors(across.sample, across.frequency, sloshDamping, lasts);
  const volume = panVolume(
    state.mass / now.density,
    state.converter,
    state.lines,
    state.passages,
    state.inFlight,
  );
  const from = now.line.drawn + within(0.5 * path.took * path.draws, now.line.drawn);
  const more = within(wanted * path.draws, from);
  takeDraw(walk, from + 0.5 * more, more, samples);
  slopes.set(state.slosh);
  gas[0] = state.gas;
  over[0] = depthAt(pan, volume, slopes[0]!, slopes[2]!, x, y) - height;
  let before = drawnAt(pickup, draw, over[0], 0);
  let k = 0;
  do {
    k++;
    const at = 4 * k;
    slopes.copyWithin(at, at - 4, at);
    sloshBy(slopes, at, along.target, along.sample);
    sloshBy(slopes, at + 2, across.target, across.sample);
    over[k] = depthAt(pan, volume, slopes[at]!, slopes[at + 2]!, x, y) - height;
    const here = drawnAt(pickup, draw, over[k]! + path.rises * k * lasts, k);
    gas[k] = gasAfter(draw, gas[k - 1]!, before, here);
    before = here;
  } while (k < samples && (k % 2 > 0 || k * lasts < least || Math.abs(gas[k]! - state.gas) <= most));
  path.samples = k;
  return k * lasts;
}

/** Whether there is a path for a step of a time [s]: the one that was followed, or, where the step turned out otherwise, one that is followed now. */
function isFollowed(walk: Walk, seconds: number): boolean {
  const { path, along, across } = walk;
  if (path.samples === 0 || path.began !== walk.state.clock) return false;
  const same =
    Math.abs(path.samples * path.lasts - seconds) <= 1e-9 * seconds &&
    path.along === along.target &&
    path.across === across.target;
  if (!same) follow(walk, seconds, Infinity, seconds);
  return true;
}

/** Takes surface and suction gas to the middle of a step whose path is followed, half of it being so many seconds; false where it is not. */
export function toMiddle(walk: Walk, half: number): boolean {
  if (!isFollowed(walk, 2 * half)) return false;
  const { path, state } = walk;
  const k = path.samples / 2;
  for (let i = 0; i < 4; i++) state.slosh[i] = path.slopes[4 * k + i]!;
  state.gas = path.gas[k]!;
  path.end = Number.NaN;
  return true;
}

/** Takes surface and suction gas to the end of such a step, with the instant in its middle known; false where it is not followed. */
export function toEnd(walk: Walk, seconds: number): boolean {
  if (!isFollowed(walk, seconds)) return false;
  const { path, state, now } = walk;
  state.gas = gasAtEnd(walk, seconds);
  for (let i = 0; i < 4; i++) state.slosh[i] = path.slopes[4 * path.samples + i]!;
  path.drew = now.line.drawn;
  path.took = seconds;
  return true;
}

/** Gas in the suction passage at the end of a step whose path is followed, with the flow and the level of the instant in its middle; the state is that of its beginning. */
export function gasAtEnd(walk: Walk, seconds: number): number {
  const { path, state, now, unit } = walk;
  if (isFollowed(walk, seconds) && !Number.isNaN(path.end)) return path.end;
  const { samples, over, lasts, draw } = path;
  const { pickup } = unit.build.sump;
  const { drawn } = now.line;
  // Flow and level go on as they went from the middle of the last step, and from the beginning of this one, to its middle.
  const grew = path.took > 0 && !isOther(drawn, path.drew);
  path.draws = grew ? (drawn - path.drew) / (0.5 * (path.took + seconds)) : 0;
  path.rises = (now.submergence - over[samples / 2]!) / (0.5 * seconds);
  takeDraw(walk, drawn, 2 * within(0.5 * seconds * path.draws, drawn), samples);
  let { gas } = state;
  let before = drawnAt(pickup, draw, over[0]!, 0);
  for (let k = 1; k <= samples; k++) {
    const here = drawnAt(pickup, draw, over[k]! + path.rises * k * lasts, k);
    gas = gasAfter(draw, gas, before, here);
    before = here;
  }
  path.end = gas;
  return gas;
}

/**
 * Takes what a flow makes of a step of so many samples, that goes evenly by `more` about what it is in the middle [m³/s]. The depths that it
 * sets go with its powers 2/3 (weir) and 2/5 (onset), by their tangents in the middle: a tenth more of the flow, which is the most, leaves
 * these by 3e-4 at the ends.
 */
function takeDraw({ unit, path }: Walk, middle: number, more: number, samples: number): void {
  const { draw } = path;
  const { sump, holdUp } = unit.build;
  const onset = airOnset(middle);
  const weir = weirDepth(sump.pickup.rim, middle);
  const cover = coverDepth(onset, weir);
  const grows = middle > 0 ? more / middle / samples : 0;
  draw.weirGrows = (2 / 3) * weir * grows;
  draw.coverGrows = (cover === onset ? 2 / 5 : 2 / 3) * cover * grows;
  draw.weir = weir - 0.5 * samples * draw.weirGrows;
  draw.cover = cover - 0.5 * samples * draw.coverGrows;
  const passes = middle > 0 ? (middle * path.lasts) / holdUp.suction : 0;
  draw.stays = Math.exp(-passes);
  draw.lags = passes > 0 ? -Math.expm1(-passes) / passes : 1;
}

/** Gas drawn at a submergence [m] at the end of a sample. */
const drawnAt = (pickup: Pickup, draw: Draw, over: number, k: number): number =>
  gasBetween(pickup, over, draw.weir + k * draw.weirGrows, draw.cover + k * draw.coverGrows);

/** Gas in the passage after a sample in which what is drawn goes evenly from one share to another: x' = (drawn − x) Q/V, exactly. */
const gasAfter = (draw: Draw, gas: number, from: number, to: number): number =>
  to - (to - from) * draw.lags + (gas - from) * draw.stays;
