// An engagement that is under way: the clutch fills on, time passes, and the controller learns when it is over.

import { fillingFlow } from "../physics/filling.ts";
import { nextFill } from "../physics/clutch/learned-fill.ts";
import { ENGAGING } from "../physics/holding.ts";
import { nextTrim } from "../physics/supply/trim.ts";
import type { Walk } from "./walk.ts";

/** A clutch that lacks no more than this is full [m³]. */
const FULL = 1e-12;

/** Shortest time in which one fills [s]: a step takes some. */
const AT_ONCE = 1e-6;

/** Seconds until the clutch that fills is full and begins to press, by what there is for it at this look; Infinity when none fills. */
export function fullAfter({ state, unit, now }: Walk): number {
  if (state.entering < 0 || !(state.unfilled > 0)) return Infinity;
  const flow = fillingFlow(now.lineInput, now.line, unit.build.clutches[state.entering]!);
  return Math.max(AT_ONCE, state.unfilled / flow);
}

/** The clutch fills for a step [s] with what there is for it. */
export function fillsOn(walk: Walk, seconds: number): void {
  const { state, unit, now } = walk;
  const time = state.shiftTime + seconds;
  // A step ends there: to the last digit, or the next one would press by what was asked for until then.
  state.shiftTime = Math.abs(time - ENGAGING) < AT_ONCE ? ENGAGING : time;
  if (state.unfilled > 0) {
    const flow = fillingFlow(now.lineInput, now.line, unit.build.clutches[state.entering]!);
    const left = state.unfilled - flow * seconds;
    state.unfilled = left > FULL ? left : 0;
    walk.flare = Math.max(walk.flare, state.engine - walk.flareOver);
  }
  if (state.shiftTime >= ENGAGING) learn(walk, ENGAGING);
  if (!state.slipping && state.unfilled === 0) engaged(walk);
}

/** Nothing slips any more: a filled clutch is in. */
export function engaged(walk: Walk): void {
  const { state } = walk;
  if (state.entering < 0 || state.unfilled > 0) return;
  learn(walk, Math.min(ENGAGING, state.shiftTime));
  state.entering = -1;
}

/** What the controller learns of a shift that took so long [s], once. */
export function learn(walk: Walk, time: number): void {
  if (!walk.teaches) return;
  walk.teaches = false;
  const { targetTime, trimGain, trimLimit } = walk.unit.build.shiftControl;
  walk.state.trim = nextTrim(walk.state.trim, time, targetTime, trimGain, trimLimit);
}

/** What the controller learns about filling a clutch from a shift that teaches: by how much it was full after it was due [s]. */
export function learnFill(walk: Walk, index: number, late: number): void {
  if (!walk.teaches) return;
  const { learnedFill } = walk.state;
  const { fillGain, fillLimit } = walk.unit.build.shiftControl;
  const learned = nextFill(learnedFill[index]!, late, fillGain, fillLimit);
  learnedFill[index] = learned;
  if (learned > walk.mostFill) walk.mostFill = learned;
}
