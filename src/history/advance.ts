// Time passes: what the instant says flows, flows for so many seconds. Fluid, surface and air move in every step, however
// fine; temperatures, plates and linings are settled from what has gathered, once a tick or every tenth of a second of slip.

import { fluidNow } from "../physics/chain.ts";
import { returnTime } from "../physics/sump/holdup.ts";
import { inFlightAfter } from "../physics/sump/holdup.ts";
import { sloshBy, sloshFactors, sloshFrequency } from "../physics/sump/slosh.ts";
import { tiltAcross, tiltAlong } from "../physics/sump/tilt.ts";
import { suctionGasAfter } from "../physics/supply/suction.ts";
import type { Swing, Walk } from "./walk.ts";

/** Takes fluid, leak and the pan's frequencies as they are now; they hold until the next settling. */
export function takeStock(walk: Walk): void {
  const { state, now, unit } = walk;
  const { pan } = unit.build.sump;
  const { holdUp } = unit.build;
  fluidNow(unit, state, now);
  walk.returnTime = returnTime(holdUp.hotReturnTime, now.viscosity, holdUp.hotViscosity, holdUp.returnExponent);
  walk.along.frequency = sloshFrequency(pan.length, now.panDepth);
  walk.across.frequency = sloshFrequency(pan.width, now.panDepth);
}

/** Lets everything that is quick flow for a step by the instant in `walk.now`, and gathers the rest. */
export function flow(walk: Walk, seconds: number): void {
  const { state, now, sums, unit } = walk;
  const { line } = now;
  const { holdUp } = unit.build;
  const liquid = 1 - line.lineGas;

  // What drained while parked is filled again before anything comes back; what is thrown off returns late.
  const intoPassages = Math.min(line.delivered * liquid * seconds, Math.max(0, holdUp.passages - state.passages));
  const fed = line.feed * liquid * seconds;
  const intoConverter = Math.min(fed, holdUp.converter - state.converter);
  const intoLines = Math.min(fed - intoConverter, holdUp.coolerAndLines - state.lines);
  state.passages += intoPassages;
  state.converter += intoConverter;
  state.lines += intoLines;
  const thrownOff = (line.clutchFlow + line.feed - line.relief - line.leak) * liquid;
  const refill = (intoPassages + intoConverter + intoLines) / seconds;
  state.inFlight = inFlightAfter(state.inFlight, Math.max(0, thrownOff - refill), walk.returnTime, seconds);

  const lost = Math.min(now.leakFlow * (now.leak.atPan ? 1 : liquid) * now.density * seconds, state.mass);
  state.mass -= lost;
  sums.lost += lost;
  state.leakPressure = line.leakPressure;

  // The gas that the instant found stands for the whole step, so it is taken from the step's beginning.
  const gas = walk.ahead > 0 ? walk.before[4]! : state.gas;
  state.gas = suctionGasAfter(gas, now.gasDrawn, line.drawn, holdUp.suction, seconds);
  surfaceMoves(walk, seconds - walk.ahead, now.drive.acceleration);
  walk.ahead = 0;

  sums.seconds += seconds;
  sums.converter += now.converterHeat * seconds;
  sums.pump += now.pumpHeat * seconds;
  sums.gears += now.gearHeat * seconds;
  sums.lockUp += now.lockUpHeat * seconds;
  sums.film += now.film * seconds;
  sums.cooler += line.cooler * seconds;
  state.running += seconds;
  state.clock += seconds;
  if (state.leakAge >= 0) state.leakAge += seconds;
}

/**
 * Lets the surface and the suction gas run ahead to the middle of a fine step, so that the instant is taken where it stands for
 * the whole step: that makes the step second order. The rest of their way follows in `flow`.
 */
export function lookAhead(walk: Walk, seconds: number, acceleration: number): void {
  const { state, now, before } = walk;
  before.set(state.slosh);
  before[4] = state.gas;
  surfaceMoves(walk, seconds, acceleration);
  state.gas = suctionGasAfter(state.gas, now.gasDrawn, now.line.drawn, walk.unit.build.holdUp.suction, seconds);
  walk.ahead = seconds;
}

/** Takes a look ahead back, when the step turns out too long. */
export function lookBack(walk: Walk): void {
  const { state, before } = walk;
  for (let i = 0; i < 4; i++) state.slosh[i] = before[i]!;
  state.gas = before[4]!;
  walk.ahead = 0;
}

function surfaceMoves(walk: Walk, seconds: number, acceleration: number): void {
  const { road, state } = walk;
  const { slosh } = state;
  swing(walk.along, slosh, 0, tiltAlong(acceleration, Math.atan(road.grade)), walk, seconds);
  swing(walk.across, slosh, 2, tiltAcross(road.lateral), walk, seconds);
}

function swing(axis: Swing, slosh: Float64Array, offset: number, target: number, walk: Walk, seconds: number): void {
  sloshFactors(axis.factors, axis.frequency, walk.unit.build.sump.sloshDamping, seconds);
  sloshBy(slosh, offset, target, axis.factors);
}
