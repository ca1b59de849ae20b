// Time passes: what the instant says flows, flows for so many seconds. Fluid, surface and air move in every step, however
// fine; temperatures, plates and linings are settled from what has gathered, once a tick or every tenth of a second of slip.

import { fluidNow, leakNow } from "../physics/chain.ts";
import { gradeAngle } from "../physics/load/road.ts";
import { returnTime } from "../physics/sump/holdup.ts";
import { inFlightAfter } from "../physics/sump/holdup.ts";
import { sloshBy, sloshFactors, sloshFrequency, type SloshFactors } from "../physics/sump/slosh.ts";
import { tiltAcross, tiltAlong } from "../physics/sump/tilt.ts";
import { suctionGasAfter } from "../physics/supply/suction.ts";
import { fillsOn } from "./entering.ts";
import { finds } from "./settle.ts";
import type { Swing, Walk } from "./walk.ts";

/** Share of the depth by which it may change before the surface swings otherwise. */
const SAME_DEPTH = 0.002;

/**
 * Takes fluid, leak and the pan's frequencies, which hold until the next settling: as warm as halfway there, if fluid
 * and coolant gain as much as up to the last; the leak as wide as some seconds on.
 */
export function takeStock(walk: Walk, ahead = 0): void {
  const { state, now, unit } = walk;
  const { holdUp } = unit.build;
  const { energy, coolant } = state;
  state.energy += 0.5 * walk.gained;
  state.coolant += 0.5 * walk.coolantGained;
  fluidNow(unit, state, now);
  state.energy = energy;
  state.coolant = coolant;
  if (ahead > 0) takeLeak(walk, ahead);
  walk.returnTime = returnTime(holdUp.hotReturnTime, now.viscosity, holdUp.hotViscosity, holdUp.returnExponent);
  takeDepth(walk);
}

/** Takes the leak as wide as it will be some seconds on. */
export function takeLeak(walk: Walk, ahead: number): void {
  const { state } = walk;
  const { leakAge, clock } = state;
  if (leakAge < 0) return;
  state.leakAge += ahead;
  state.clock += ahead;
  leakNow(walk.unit, state, walk.now);
  state.leakAge = leakAge;
  state.clock = clock;
}

/** The frequencies at which the surface swings at this depth. */
function takeDepth(walk: Walk): void {
  const { pan } = walk.unit.build.sump;
  walk.depth = walk.now.panDepth;
  walk.along.frequency = sloshFrequency(pan.length, walk.depth);
  walk.across.frequency = sloshFrequency(pan.width, walk.depth);
}

/** Lets everything that is quick flow for a step by the instant in `walk.now`, and gathers the rest. */
export function flow(walk: Walk, seconds: number): void {
  const { state, now, sums, unit } = walk;
  const { line } = now;
  const { holdUp } = unit.build;
  const liquid = 1 - line.lineGas;

  // What drained while parked is filled again before anything comes back, the passages first; what is thrown off returns late.
  const delivered = line.delivered * liquid * seconds;
  const intoPassages = Math.min(delivered, Math.max(0, holdUp.passages - state.passages));
  const fed = Math.min(line.feed * liquid * seconds, delivered - intoPassages);
  const intoConverter = Math.min(fed, holdUp.converter - state.converter);
  const intoLines = Math.min(fed - intoConverter, holdUp.coolerAndLines - state.lines);
  state.passages += intoPassages;
  state.converter += intoConverter;
  state.lines += intoLines;
  const thrownOff = (line.clutchFlow + line.feed - line.relief - line.leak) * liquid;
  const refill = (intoPassages + intoConverter + intoLines) / seconds;
  if (walk.ahead > 0) lookBack(walk);
  walk.thrownOff = Math.max(0, thrownOff - refill);
  state.inFlight = inFlightAfter(state.inFlight, walk.thrownOff, walk.returnTime, seconds);

  const lost = Math.min(now.leakFlow * (now.leak.atPan ? 1 : liquid) * now.density * seconds, state.mass);
  state.mass -= lost;
  finds(walk, lost, seconds, state.speed > 0);
  state.leakPressure = line.leakPressure;

  state.gas = suctionGasAfter(state.gas, now.gasDrawn, line.drawn, holdUp.suction, seconds);
  surfaceMoves(walk, seconds, now.drive.acceleration);

  if (state.entering >= 0) fillsOn(walk, seconds);

  sums.seconds += seconds;
  sums.converter += now.converterHeat * seconds;
  sums.pump += now.pumpHeat * seconds;
  sums.gears += now.gearHeat * seconds;
  sums.lockUp += now.lockUpHeat * seconds;
  sums.film += now.film * seconds;
  sums.cooler += line.cooler * liquid * seconds;
  state.running += seconds;
  state.clock += seconds;
  if (state.leakAge >= 0) state.leakAge += seconds;
}

/**
 * Lets the surface, the suction gas and the fluid in flight run ahead to the middle of a fine step, so that the instant is taken
 * where they stand for the whole step: that makes the step second order. `flow` takes them from the step's beginning again.
 */
export function lookAhead(walk: Walk, seconds: number, acceleration: number): void {
  const { state, now, before } = walk;
  for (let i = 0; i < 4; i++) before[i] = state.slosh[i]!;
  before[4] = state.gas;
  before[5] = state.inFlight;
  if (Math.abs(now.panDepth - walk.depth) > SAME_DEPTH * walk.depth) takeDepth(walk);
  walk.ahead = seconds;
  surfaceMoves(walk, seconds, acceleration);
  state.gas = suctionGasAfter(state.gas, now.gasDrawn, now.line.drawn, walk.unit.build.holdUp.suction, seconds);
  state.inFlight = inFlightAfter(state.inFlight, walk.thrownOff, walk.returnTime, seconds);
}

/** Takes a look ahead back. */
export function lookBack(walk: Walk): void {
  const { state, before } = walk;
  for (let i = 0; i < 4; i++) state.slosh[i] = before[i]!;
  state.gas = before[4]!;
  state.inFlight = before[5]!;
  walk.ahead = 0;
}

function surfaceMoves(walk: Walk, seconds: number, acceleration: number): void {
  const { road, along, across } = walk;
  const { slosh } = walk.state;
  const { sloshDamping } = walk.unit.build.sump;
  along.target = tiltAlong(acceleration, gradeAngle(road.grade));
  across.target = tiltAcross(road.lateral);
  // Two sets of factors: one for half steps ahead, one for whole steps.
  const ahead = walk.ahead > 0;
  swing(along, ahead ? along.half : along.whole, slosh, 0, sloshDamping, seconds);
  swing(across, ahead ? across.half : across.whole, slosh, 2, sloshDamping, seconds);
}

function swing(axis: Swing, factors: SloshFactors, slosh: Float64Array, offset: number, damping: number, seconds: number): void {
  sloshFactors(factors, axis.frequency, damping, seconds);
  sloshBy(slosh, offset, axis.target, factors);
}
