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
import { toEnd, toMiddle } from "./mouth.ts";
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
  walk.returnTime = returnTime(
    holdUp.hotReturnTime,
    now.viscosity,
    holdUp.hotViscosity,
    holdUp.returnExponent,
  );
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

  if (walk.ahead > 0) lookBack(walk);
  surfaceMoves(walk, seconds, now.drive.acceleration);

  // What drained while parked is filled again before anything comes back, the passages first; what is thrown off returns late.
  const delivered = line.delivered * liquid * seconds;
  const intoPassages = Math.min(delivered, Math.max(0, holdUp.passages - state.passages));
  const fed = Math.min(line.feed * liquid * seconds, delivered - intoPassages);
  const intoConverter = Math.min(fed, holdUp.converter - state.converter);
  const intoLines = Math.min(fed - intoConverter, holdUp.coolerAndLines - state.lines);
  state.passages += intoPassages;
  state.converter += intoConverter;
  state.lines += intoLines;
  takeThrownOff(walk, (intoPassages + intoConverter + intoLines) / seconds);
  state.inFlight = inFlightAfter(state.inFlight, walk.thrownOff, walk.returnTime, seconds);

  const lost = Math.min(leaks(walk) * seconds, state.mass);
  state.mass -= lost;
  finds(walk, lost, seconds, state.speed > 0);
  state.leakPressure = line.leakPressure;

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

/** What is thrown off into flight by the instant [m³/s], less what refills [m³/s]. */
export function takeThrownOff(walk: Walk, refill: number): void {
  const { line } = walk.now;
  const thrownOff = (line.clutchFlow + line.feed - line.relief - line.leak) * (1 - line.lineGas);
  walk.thrownOff = Math.max(0, thrownOff - refill);
}

/** Mass that leaks in a second of the instant [kg/s]. */
const leaks = ({ now }: Walk): number =>
  now.leakFlow * (now.leak.atPan ? 1 : 1 - now.line.lineGas) * now.density;

/**
 * Lets the surface, the suction gas, the fluid in flight and what leaks run ahead to the middle of a fine step, so that the instant is taken
 * where they stand for the whole step: that makes the step second order. `flow` takes them from the step's beginning again.
 */
export function lookAhead(walk: Walk, seconds: number, acceleration: number): void {
  const { state, now, before } = walk;
  for (let i = 0; i < 4; i++) before[i] = state.slosh[i]!;
  before[4] = state.gas;
  before[5] = state.inFlight;
  before[6] = state.mass;
  if (Math.abs(now.panDepth - walk.depth) > SAME_DEPTH * walk.depth) takeDepth(walk);
  walk.ahead = seconds;
  surfaceMoves(walk, seconds, acceleration);
  state.inFlight = inFlightAfter(state.inFlight, walk.thrownOff, walk.returnTime, seconds);
  state.mass -= Math.min(leaks(walk) * seconds, state.mass);
}

/** Takes a look ahead back. */
export function lookBack(walk: Walk): void {
  const { state, before } = walk;
  for (let i = 0; i < 4; i++) state.slosh[i] = before[i]!;
  state.gas = before[4]!;
  state.inFlight = before[5]!;
  state.mass = before[6]!;
  walk.ahead = 0;
}

/** The surface swings on and the suction gas follows what is drawn: along the path that is followed for the step, else with what is drawn in its middle. */
function surfaceMoves(walk: Walk, seconds: number, acceleration: number): void {
  const { road, along, across, state, now, unit } = walk;
  const { sump, holdUp } = unit.build;
  along.target = tiltAlong(acceleration, gradeAngle(road.grade));
  across.target = tiltAcross(road.lateral);
  const ahead = walk.ahead > 0;
  if (ahead ? toMiddle(walk, seconds) : toEnd(walk, seconds)) return;
  state.gas = suctionGasAfter(state.gas, now.gasDrawn, now.line.drawn, holdUp.suction, seconds);
  // Two sets of factors: one for half steps ahead, one for whole steps.
  swing(along, ahead ? along.half : along.whole, state.slosh, 0, sump.sloshDamping, seconds);
  swing(across, ahead ? across.half : across.whole, state.slosh, 2, sump.sloshDamping, seconds);
}

function swing(
  axis: Swing,
  factors: SloshFactors,
  slosh: Float64Array,
  offset: number,
  damping: number,
  seconds: number,
): void {
  sloshFactors(factors, axis.frequency, damping, seconds);
  sloshBy(slosh, offset, axis.target, factors);
}
