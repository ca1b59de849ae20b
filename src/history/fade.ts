// The belief "no pressure, no clutch, no harm" as an experiment: the same unit at the same speed loses its line pressure
// once, quickly or slowly, or loses it again and again as a pickup that gulps does. What does the slip cost?

import { finite, impossible, notNegative, positive } from "../errors.ts";
import { clutchesNow, instant } from "../physics/chain.ts";
import type { Unit } from "../physics/build.ts";
import { turbinePerMetre } from "../physics/drivetrain.ts";
import { turbineTorque } from "../physics/load/converter.ts";
import { pedalFor } from "../physics/load/engine.ts";
import { fresh } from "../physics/state.ts";
import { spin } from "./slip.ts";
import { newWalk, type Walk } from "./walk.ts";

/** Steady driving before the pressure goes: gear (0 is first), road speed [m/s], grade (rise over run), fluid [K]. */
export interface Cruise {
  readonly gear: number;
  readonly speed: number;
  readonly grade: number;
  readonly temperature: number;
}

export interface FadeRow {
  /** Time over which the pressure falls once, or for which it comes and goes [s]. */
  readonly time: number;
  readonly energy: number;
  readonly kind: "falls once" | "comes and goes";
}

/** A gulp takes the pressure away for this long, and leaves it for as long [s]. */
export const gulpTime = 1.5;
/** Longest step [s]: short beside a gulp and the run-up of an engine. */
const STEP = 0.005;

/** Nobody holds road speed and pedal for longer [s]: what takes longer is a history. */
const LONGEST = 3600;

/** Slip heat of the weakest clutch for fades and gulps of each time [s, above 0, up to an hour], in J; road speed and pedal are held. Errors: a cruise that cannot be, another time. */
export function fadeSweep(unit: Unit, cruise: Cruise, times: readonly number[]): FadeRow[] {
  const last = unit.build.gears.length - 1;
  if (unit.build.gears[cruise.gear] === undefined)
    impossible("cruise.gear", cruise.gear, `0 to ${last}, 0 is first`);
  notNegative("cruise.speed", cruise.speed, "m/s");
  finite("cruise.grade", cruise.grade);
  positive("cruise.temperature", cruise.temperature, "K");
  for (const time of times)
    if (!(time > 0 && time <= LONGEST)) impossible("times", time, `more than 0 s, up to ${LONGEST} s`);
  return times.flatMap((time) => [
    { time, kind: "falls once" as const, energy: lose(unit, cruise, time, (t) => Math.max(0, 1 - t / time)) },
    {
      time,
      kind: "comes and goes" as const,
      energy: lose(unit, cruise, time, (t) => (t % (2 * gulpTime) < gulpTime ? 0 : 1)),
    },
  ]);
}

/** Slip heat while the share of the line pressure that is left follows `left` for a time, and is gone for good after it. */
function lose(unit: Unit, cruise: Cruise, time: number, left: (t: number) => number): number {
  const walk = newWalk({ ...unit, leak: null }, fresh(unit, cruise.temperature));
  const { state, now, road } = walk;
  const gear = unit.build.gears[cruise.gear]!;
  state.gear = cruise.gear;
  state.speed = cruise.speed;
  road.speed = cruise.speed;
  road.grade = cruise.grade;
  instant(unit, state, road, now);
  const full = now.line.linePressure;
  const locked = turbinePerMetre(unit.build, gear) * cruise.speed;
  state.engine = now.drive.engine;
  state.turbine = locked;
  walk.pedal = pedalFor(unit.build.engine, now.drive.engine, now.drive.engineTorque);
  const pumping = now.drive.engineTorque - now.drive.impellerTorque;
  let heat = 0;
  const steps = Math.ceil(Math.max(time / STEP, 400));
  const h = time / steps;
  for (let i = 0; i < steps; i++) heat += slipFor(walk, h, full * left((i + 0.5) * h), locked, pumping);
  return heat;
}

/** One step at a held output speed; returns its slip heat [J]. */
function slipFor(walk: Walk, h: number, pressure: number, locked: number, pumping: number): number {
  const { state, now, unit } = walk;
  const gear = unit.build.gears[state.gear]!;
  const before = Math.max(0, state.turbine - locked);
  now.line.linePressure = pressure;
  clutchesNow(unit, state, gear, before, now);
  const given = turbineTorque(unit.build.converter, state.engine, state.turbine);
  if (before === 0 && now.holds >= given) {
    spin(walk, h, given, pumping); // held: only the engine settles
    state.turbine = locked;
    return 0;
  }
  spin(walk, h, now.holds, pumping);
  const after = state.turbine - locked;
  if (after > 0) return now.holds * 0.5 * (before + after) * h;
  state.turbine = locked;
  // It took hold within the step, after the share of it in which the slip ran out.
  return before > 0 ? (now.holds * 0.5 * before * h * before) / (before - after) : 0;
}
