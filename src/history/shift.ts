// A shift, or the first engagement of a drive. A sound one is over at once, by closed forms; one whose clutch fills late or does
// not lock in time goes on as a slip, step by step, with a clutch that is still being filled or pressed no more than asked.

import { drivingNow, supplyNow } from "../physics/chain.ts";
import { fillingFlow } from "../physics/filling.ts";
import { elementCapacity, ENGAGING } from "../physics/holding.ts";
import { lineInputFor, type Now } from "../physics/now.ts";
import type { Build, Gear } from "../physics/build.ts";
import { lockPressure } from "../physics/clutch/capacity.ts";
import {
  commandedTorque,
  engagementEnergy,
  engagementTime,
  type TwoInertias,
} from "../physics/clutch/engagement.ts";
import { fillVolume } from "../physics/clutch/fill.ts";
import { frictionCoefficient } from "../physics/clutch/friction.ts";
import { faceArea, slidingSpeed, type Clutch } from "../physics/clutch/geometry.ts";
import { charAfter, charRate } from "../physics/damage/pyrolysis.ts";
import { glazeRate } from "../physics/damage/glaze.ts";
import { wearDepth } from "../physics/damage/wear.ts";
import { fullThrottleTorque, turbinePerMetre, turbineTorqueFor } from "../physics/drivetrain.ts";
import { peakPlateRise } from "../physics/heat/interface.ts";
import { turbineTorque } from "../physics/load/converter.ts";
import { gradeAngle, roadForce } from "../physics/load/road.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import { balance, stillBalance } from "../physics/supply/regulator.ts";
import { learn, learnFill } from "./entering.ts";
import { toSteel } from "./settle.ts";
import { letGo } from "./slide.ts";
import { steelCapacity } from "./ledger.ts";
import type { Walk } from "./walk.ts";

/** What the last shift or engagement was like; written in place. */
export interface Engagement {
  clutch: number;
  /** Seconds from the command until the plates touch at the flow of the moment; how much of that the controller had not counted on (negative: it had counted on more). */
  fill: number;
  missed: number;
  late: number;
  /** Seconds from touching to lock at the pressure of the moment; Infinity: not in time. */
  time: number;
  /** It was over at once, at this heat [J]; otherwise it goes on as a slip. */
  over: boolean;
  energy: number;
}

export const noEngagement = (): Engagement => ({
  clutch: 0,
  fill: 0,
  missed: 0,
  late: 0,
  time: 0,
  over: true,
  energy: 0,
});

/** A fill later than this is late [s]. */
const LATE = 0.01;
/** What a fill is said to take when next to nothing flows [s]. */
const LONGEST_FILL = 20;

/** Shifts from one forward gear to the next while driving; the state is in the new gear afterwards, locked or slipping. */
export function shiftTo(walk: Walk, to: number, out: Engagement): void {
  const { state, unit, now, road } = walk;
  const { build } = unit;
  const from = build.gears[state.gear]!;
  const gear = build.gears[to]!;
  const entering = gear.holds.find((hold) => from.holds.every((old) => old.clutch !== hold.clutch));
  const upshift = to > state.gear;
  out.time = 0;
  out.energy = 0;
  out.late = 0;
  out.over = true;
  // The clutch is filled and closed by the pressure that the old gear had.
  if (!state.slipping) drivingNow(unit, state, road, now);
  const { turbine, engine } = state.slipping ? state : now.drive;
  state.gear = to;
  state.entering = -1;
  if (entering === undefined) return;

  // The turbine torque that the new gear would need for the wish, or what full throttle gives at this speed.
  const slope = gradeAngle(road.grade);
  const needed = Math.max(
    0,
    turbineTorqueFor(build, gear, roadForce(build.vehicle, state.speed, road.wish, slope)),
  );
  const torque = Math.min(
    needed,
    fullThrottleTorque(build, turbine, pumpTorque(build.pump, now.line.linePressure)),
  );
  const load = turbineTorqueFor(build, gear, roadForce(build.vehicle, state.speed, 0, slope));
  const perMetre = turbinePerMetre(build, gear);
  const synchronous = perMetre * state.speed;
  // Whichever side is faster drives the other: swapped sides swap the torques' signs.
  const sense = turbine >= synchronous ? 1 : -1;
  const pair: TwoInertias = {
    driveTorque: sense * torque,
    loadTorque: sense * load,
    driveInertia: build.engine.inertia + build.shiftControl.turbineInertia,
    loadInertia: (build.vehicle.mass * build.vehicle.rotating) / (perMetre * perMetre),
    slip: Math.abs(turbine - synchronous),
  };
  // Shifts that coast or spin up say nothing about the clutch.
  walk.teaches = upshift && torque > 0;
  walk.flareOver = Math.max(engine, synchronous);
  const { clutch: index, share } = entering;
  engage(walk, index, share, pair, 0, state.learnedFill[index]!, out);
  learnFill(walk, index, out.missed);
  if (out.over) learn(walk, out.time);
  else if (!state.slipping) letGo(walk, turbine, engine);
}

/** First engagement from neutral at standstill: passages that drained while parked are filled first, then the clutch. */
export function engageFromRest(walk: Walk, out: Engagement): void {
  const { state, unit, now } = walk;
  const { build } = unit;
  state.gear = 0;
  const gear = build.gears[0]!;
  const { idleSpeed } = build.engine;
  const creep = turbineTorque(build.converter, idleSpeed, 0);
  supplyNow(unit, state, idleSpeed, creep, false, now);
  const { clutch, share } = slowestToFill(build, gear);
  const drained = Math.max(0, build.holdUp.passages - state.passages);
  state.passages = build.holdUp.passages;
  const pair: TwoInertias = {
    driveTorque: creep,
    loadTorque: 0,
    driveInertia: build.shiftControl.turbineInertia,
    loadInertia: 1e6, // the brakes hold the vehicle
    slip: idleSpeed,
  };
  walk.teaches = false;
  walk.flareOver = idleSpeed;
  engage(walk, clutch, share, pair, drained, 0, out);
}

/** The element of a gear that takes most fluid: the others stand ready in neutral. */
export function slowestToFill(build: Build, gear: Gear): { readonly clutch: number; readonly share: number } {
  let slowest = gear.holds[0]!;
  for (const hold of gear.holds) {
    if (fillVolume(build.clutches[hold.clutch]!) > fillVolume(build.clutches[slowest.clutch]!))
      slowest = hold;
  }
  return slowest;
}

/** Fills a clutch and locks it if it is in time; otherwise it is left entering, with what it still lacks. */
function engage(
  walk: Walk,
  index: number,
  share: number,
  pair: TwoInertias,
  drained: number,
  learned: number,
  out: Engagement,
): void {
  const { state, unit, now } = walk;
  const clutch = unit.build.clutches[index]!;
  out.clutch = index;
  const lacking = fillClutch(now, unit.build, clutch, drained, learned, out);
  const asked = askedPressure(walk, clutch, index, share, pair);
  const pressure = Math.min(asked, now.line.linePressure);
  const carried = elementCapacity(unit.build, state, index, pair.slip / (2 * share), pressure) / share;
  const time = engagementTime(carried, pair) ?? Infinity;
  out.time = time > ENGAGING ? Infinity : time;
  out.over = !state.slipping && out.late < LATE && out.time < Infinity;
  out.energy = out.over ? engagementEnergy(carried, pair)! : 0;
  if (out.over) {
    heats(walk, clutch, out);
    return;
  }
  state.entering = index;
  state.unfilled = out.late < LATE ? 0 : lacking;
  state.asked = asked;
  state.shiftTime = 0;
}

/**
 * Time to fill a clutch [s] at the flow of this moment, how much later that is than when it is due, and what the clutch lacks then
 * [m³]. Due is when a sound unit in its place would be full (no air, no leak), and what the controller has learned later.
 */
function fillClutch(
  now: Now,
  build: Build,
  clutch: Clutch,
  drained: number,
  learned: number,
  out: Engagement,
): number {
  const volume = fillVolume(clutch) + drained;
  const flow = fillingFlow(now.lineInput, now.line, clutch);
  // Laid over a record of the same make: V8 keeps numbers unboxed only in records of one make.
  const sound = Object.assign(lineInputFor(build), now.lineInput);
  sound.gas = build.sump.pickup.baseGas;
  sound.leakPlace = "none";
  balance(sound, soundLine);
  const due = Math.min(LONGEST_FILL, volume / fillingFlow(sound, soundLine, clutch)) + learned;
  out.fill = Math.min(LONGEST_FILL, volume / flow);
  out.missed = out.fill - due;
  out.late = Math.max(0, out.missed);
  return Math.max(0, volume - flow * due);
}

const soundLine = stillBalance();

/** What the controller asks for [Pa]: the pressure that closes the gap in its target time on a sound lining, with what it has learned. */
function askedPressure(
  { state, unit }: Walk,
  clutch: Clutch,
  index: number,
  share: number,
  pair: TwoInertias,
): number {
  const slide = slidingSpeed(clutch, pair.slip / (2 * share));
  const sound = frictionCoefficient(clutch.friction, slide, state.plate[index]!);
  const wanted = commandedTorque(unit.build.shiftControl.targetTime, pair);
  return lockPressure(clutch, Math.max(0, wanted) * share, sound) + state.trim;
}

/** The heat of an engagement that is over: into plate and fluid at once, before the fluid can take any from the plate. */
function heats(walk: Walk, clutch: Clutch, { clutch: index, time, energy }: Engagement): void {
  if (!(energy > 0)) return;
  const { state, unit, ledger } = walk;
  const { build } = unit;
  const area = clutch.faces * faceArea(clutch);
  const flux = (2 * energy * toSteel) / (area * time);
  const surface = state.plate[index]! + peakPlateRise(flux, time, clutch.steelThickness);
  state.glaze[index] = Math.min(1, state.glaze[index]! + glazeRate(surface) * time);
  state.char[index] = charAfter(state.char[index]!, build.damage.charFactor * charRate(surface), time);
  const worn = state.wear[index]! + wearDepth(energy, area, build.damage.wearPerEnergy);
  state.wear[index] = Math.min(clutch.liningThickness, worn);
  state.plate[index]! += (energy * toSteel) / steelCapacity(build, index);
  state.energy += energy * (1 - toSteel);
  walk.shiftEnergy[index]! += energy;
  ledger.heatSlip += energy;
}
