// The engine is off: fluid falls back, converter and passages drain, everything cools, and only what stands over the
// hole and can reach it is lost.

import { fluidNow } from "../physics/chain.ts";
import { storedEnergy } from "../physics/state.ts";
import { specificHeat } from "../physics/fluid/specific-heat.ts";
import { openingAt, closedLeak } from "../physics/leaking.ts";
import { drainedAfter, inFlightAfter, panVolume, returnTime } from "../physics/sump/holdup.ts";
import { meanDepth, overLid } from "../physics/sump/pan.ts";
import { columnArea, columnOver, panArea, sinks } from "../physics/standing.ts";
import { finds } from "./settle.ts";
import { steelCapacity } from "./ledger.ts";
import type { AfterStep } from "./tick.ts";
import type { Walk } from "./walk.ts";

const opening = closedLeak();
/** Longest step of a stand [s]; the first ones are short, while fluid still falls back. */
const LONGEST_STEP = 300;

/** Lets the unit stand for a time by the clock, each second of which is so many of rest; steps grow as things slow down. Returns false when `after` ended it. */
export function stand(walk: Walk, seconds: number, after: AfterStep, rests = 1): boolean {
  const { state } = walk;
  state.speed = 0;
  state.engine = 0;
  state.turbine = 0;
  state.slipping = false;
  state.entering = -1;
  state.unfilled = 0;
  state.lockUpOn = false;
  state.lockUpBarred = false;
  state.lockUpSlipTime = 0;
  state.slosh.fill(0);
  state.gas = walk.unit.build.sump.pickup.baseGas; // what the fluid carries; the rest rises out of it
  walk.scheduled = 0;
  walk.heldUp = false;
  walk.gained = 0;
  walk.coolantGained = 0;
  const until = state.clock + seconds;
  let step = 2;
  while (state.clock < until) {
    const left = (until - state.clock) * rests;
    parkedStep(walk, Math.min(left, step), rests);
    if (left <= step) state.clock = until; // to the bit, so that what is due then is due
    step = Math.min(LONGEST_STEP, step * 1.2);
    if (!after(walk)) return false;
  }
  return true;
}

function parkedStep(walk: Walk, seconds: number, rests: number): void {
  const { state, unit, now } = walk;
  const { build } = unit;
  cools(walk, 0.5 * seconds); // cooling before and after: viscosity and level are those of the middle of the step
  fluidNow(unit, state, now);
  drains(walk, 0.5 * seconds); // as is what has come down by then
  now.panVolume = panVolume(
    state.mass / now.density,
    state.converter,
    state.lines,
    state.passages,
    state.inFlight,
  );
  now.panDepth = meanDepth(build.sump.pan, now.panVolume);

  const lost = Math.min(parkedLoss(walk, seconds, rests) * now.density, state.mass);
  now.leakFlow = lost / now.density / seconds;
  state.mass -= lost;
  finds(walk, lost, seconds, false);
  drains(walk, 0.5 * seconds);
  cools(walk, 0.5 * seconds);
  state.clock += seconds / rests;
}

/** What is in flight, in the converter and in the passages comes down to the pan. */
function drains(walk: Walk, seconds: number): void {
  const { state, unit, now } = walk;
  const { holdUp } = unit.build;
  const back = returnTime(holdUp.hotReturnTime, now.viscosity, holdUp.hotViscosity, holdUp.returnExponent);
  state.inFlight = inFlightAfter(state.inFlight, 0, back, seconds);
  const converterFloor = holdUp.converter * (1 - holdUp.converterDrains);
  state.converter = drainedAfter(state.converter, converterFloor, holdUp.converterDrainTime, seconds);
  const passagesFloor = holdUp.passages * (1 - holdUp.passagesDrain);
  state.passages = drainedAfter(state.passages, passagesFloor, holdUp.passagesDrainTime, seconds);
}

/** Volume lost while standing [m³]: the line's column as long as it stands higher, else what stands in the pan, and over its lid, above the hole. */
function parkedLoss(walk: Walk, seconds: number, rests: number): number {
  const { state, unit, now } = walk;
  const { leak, build } = unit;
  if (leak === null || state.leakAge < 0) return 0;
  const exposed = state.clock + (0.5 * seconds) / rests - state.leakOpenedAt;
  openingAt(opening, leak.opening, state.leakAge, 0, false, exposed);
  const { pan } = build.sump;
  const onLine = leak.place === "supply-line" || leak.place === "return-line";
  const over = now.panDepth + overLid(pan, now.panVolume) - leak.height;
  const inLine = onLine ? Math.max(0, state.lines - (build.holdUp.coolerAndLines - leak.lineAbove)) : 0;
  const column = columnOver(leak, inLine);
  const area = column > over ? columnArea(leak) : panArea(pan);
  const lost = sinks(opening, area, Math.max(over, column), seconds, now.viscosity, now.density);
  if (column > over) state.lines -= Math.min(inLine, lost);
  return lost;
}

function cools(walk: Walk, seconds: number): void {
  const { state, unit, now, ledger, road } = walk;
  const { heat } = unit.build;
  let capacity = state.mass * specificHeat(unit.fluid.density15, now.temperature) + heat.metal;
  for (let i = 0; i < state.plate.length; i++) capacity += steelCapacity(unit.build, i);
  // Plates stand in the fluid: by the end of the step they share its temperature.
  const rate = heat.caseStill / capacity;
  const given = capacity * (now.temperature - road.ambient) * -Math.expm1(-rate * seconds);
  ledger.heatToAir += given;
  state.energy -= given;
  fluidNow(unit, state, now);
  for (let i = 0; i < state.plate.length; i++) {
    const passed = steelCapacity(unit.build, i) * (state.plate[i]! - now.temperature);
    state.plate[i] = now.temperature;
    state.energy += passed;
  }
  state.coolant += (road.ambient - state.coolant) * -Math.expm1(-seconds / heat.coolantCoolTime);
}

/** What was poured in [m³ at its temperature, K], in words. */
export const pouredIn = (volume: number, temperature: number): string =>
  `${(volume * 1000).toFixed(2)} L of ${Math.round(temperature - 273.15)} degC added`;

/** Adds fluid [kg] of a temperature [K]: what it holds of heat mixes with what is there, its age by mass. `now` keeps what was there before, as the event tells it. */
export function topUp(walk: Walk, mass: number, temperature: number): void {
  const { state, unit, ledger, now } = walk;
  fluidNow(unit, state, now);
  const energy =
    storedEnergy(unit.build, unit.fluid.density15, mass, temperature) -
    storedEnergy(unit.build, unit.fluid.density15, 0, temperature);
  state.fluidAge = (state.fluidAge * state.mass) / (state.mass + mass);
  state.mass += mass;
  state.energy += energy;
  ledger.massAdded += mass;
  ledger.heatAdded += energy;
}
