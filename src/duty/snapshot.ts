// The unit between two ticks, kept and put back: at one loss, or between two.

import { forgetPath } from "../history/path.ts";
import type { Walk } from "../history/walk.ts";
import { drivingNow, fluidNow } from "../physics/chain.ts";
import type { Unit } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { sumpTemperature } from "../physics/heat/sump-heat.ts";
import { copyOf, storedEnergy, type State } from "../physics/state.ts";

/** The unit between two ticks. */
export interface Snapshot {
  readonly state: State;
  readonly scheduled: number;
  readonly heldUp: boolean;
  readonly thrownOff: number;
  readonly sagRate: number;
  readonly engineTrend: number;
  readonly turbineTrend: number;
  readonly stride: number;
  readonly teaches: boolean;
  readonly flareOver: number;
  readonly gained: number;
  readonly coolantGained: number;
}

/** Correct mass of the unit [kg]. */
export const fullMass = ({ build, fluid }: Unit): number =>
  build.fill * density(fluid.density15, build.fillTemperature);

/** Lets the unit lack so much [kg], at the temperature that it has. */
export function lack(unit: Unit, state: State, missing: number): void {
  const { density15 } = unit.fluid;
  const { metal } = unit.build.heat;
  const temperature = sumpTemperature(state.mass, density15, metal, state.energy);
  state.mass = Math.max(0, fullMass(unit) - missing);
  state.energy = storedEnergy(unit.build, density15, state.mass, temperature);
}

export function snapshotOf(walk: Walk): Snapshot {
  const { scheduled, heldUp, thrownOff, sagRate, engineTrend, turbineTrend, stride, teaches, flareOver } =
    walk;
  const { gained, coolantGained } = walk;
  const trends = { sagRate, engineTrend, turbineTrend, stride, gained, coolantGained };
  return { state: copyOf(walk.state), scheduled, heldUp, thrownOff, teaches, flareOver, ...trends };
}

/** Puts the unit back to a snapshot, or between two of the same moment: a share of the way from one loss to another. */
export function restore(walk: Walk, from: Snapshot, to: Snapshot = from, share = 0): void {
  const { state } = walk;
  const [a, b] = [from.state, to.state];
  const { slosh, plate, wear, char, glaze, learnedFill } = state;
  slosh.set(a.slosh);
  plate.set(a.plate);
  wear.set(a.wear);
  char.set(a.char);
  glaze.set(a.glaze);
  learnedFill.set(a.learnedFill);
  Object.assign(state, a, { slosh, plate, wear, char, glaze, learnedFill });
  const mix = (x: number, y: number) => x + (y - x) * share;
  state.mass = mix(a.mass, b.mass);
  state.energy = mix(a.energy, b.energy);
  state.converter = mix(a.converter, b.converter);
  state.lines = mix(a.lines, b.lines);
  state.passages = mix(a.passages, b.passages);
  state.inFlight = mix(a.inFlight, b.inFlight);
  state.coolant = mix(a.coolant, b.coolant);
  state.gas = mix(a.gas, b.gas);
  state.trim = mix(a.trim, b.trim);
  for (let i = 0; i < plate.length; i++) {
    plate[i] = mix(a.plate[i]!, b.plate[i]!);
    char[i] = mix(a.char[i]!, b.char[i]!);
    glaze[i] = mix(a.glaze[i]!, b.glaze[i]!);
    wear[i] = mix(a.wear[i]!, b.wear[i]!);
  }
  if (!a.slipping && !b.slipping) {
    state.speed = mix(a.speed, b.speed);
    for (let i = 0; i < 4; i++) slosh[i] = mix(a.slosh[i]!, b.slosh[i]!);
  }
  walk.scheduled = from.scheduled;
  walk.heldUp = from.heldUp;
  walk.thrownOff = mix(from.thrownOff, to.thrownOff);
  walk.sagRate = from.sagRate;
  walk.engineTrend = from.engineTrend;
  walk.turbineTrend = from.turbineTrend;
  walk.stride = from.stride;
  walk.teaches = from.teaches;
  walk.flareOver = from.flareOver;
  walk.gained = mix(from.gained, to.gained);
  walk.coolantGained = mix(from.coolantGained, to.coolantGained);
  walk.flare = 0;
  forgetPath(walk.path);
  walk.short = false;
  // What another trip has taught is not this one's.
  walk.mostFill = 0;
  walk.slip.heat = 0;
  walk.slip.speed = 0;
  walk.slip.warming = 0;
  fluidNow(walk.unit, state, walk.now);
  walk.road.speed = state.speed;
  walk.road.wish = 0;
  walk.road.grade = 0;
  drivingNow(walk.unit, state, walk.road, walk.now);
}
