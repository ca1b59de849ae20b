// A shift, or the first engagement of a drive: fill, flare if the fill is late, lock, and what the controller learns of it.

import { drivingNow, supplyNow } from "../physics/chain.ts";
import { elementCapacity } from "../physics/holding.ts";
import type { Now } from "../physics/now.ts";
import type { Build, Gear } from "../physics/build.ts";
import { kissPressure, lockPressure } from "../physics/clutch/capacity.ts";
import { commandedTorque, engagementEnergy, engagementTime, type TwoInertias } from "../physics/clutch/engagement.ts";
import { fillTime, fillVolume, orificeFlow } from "../physics/clutch/fill.ts";
import { frictionCoefficient } from "../physics/clutch/friction.ts";
import { faceArea, slidingSpeed, type Clutch } from "../physics/clutch/geometry.ts";
import { charRate } from "../physics/damage/pyrolysis.ts";
import { glazeRate } from "../physics/damage/glaze.ts";
import { wearDepth } from "../physics/damage/wear.ts";
import { fullThrottleTorque, turbinePerMetre, turbineTorqueFor } from "../physics/drivetrain.ts";
import { peakInterfaceRise } from "../physics/heat/conduction.ts";
import { separatorSteel } from "../physics/heat/solid.ts";
import { turbineTorque } from "../physics/load/converter.ts";
import { roadForce } from "../physics/load/road.ts";
import { pumpTorque } from "../physics/supply/pump.ts";
import {
  balance,
  clutchCircuitFlow,
  deliveredAt,
  stillBalance,
  type Balance,
  type BalanceConditions,
} from "../physics/supply/regulator.ts";
import { rootBetween } from "../physics/supply/root.ts";
import { nextTrim } from "../physics/supply/trim.ts";
import { toSteel } from "./settle.ts";
import { letGo } from "./slide.ts";
import { steelCapacity } from "./ledger.ts";
import type { Walk } from "./walk.ts";

/** What the last shift or engagement was like; written in place. */
export interface Engagement {
  clutch: number;
  /** Seconds from the command until the plates touched, and how much of that the controller had not counted on. */
  fill: number;
  late: number;
  /** Engine speed gained while nothing held [rad/s]. */
  flare: number;
  /** Seconds from command to lock; Infinity: it did not lock and slips on. */
  time: number;
  energy: number;
}

export const noEngagement = (): Engagement => ({ clutch: 0, fill: 0, late: 0, flare: 0, time: 0, energy: 0 });

/** Longest time to lock that is still an engagement; beyond it the clutch is simply slipping [s]. */
const LONGEST_LOCK = 1;
/** A fill that takes longer than this has failed; the gear is not there [s]. */
const LONGEST_FILL = 20;

/** Shifts from one forward gear to the next while driving; the state is in the new gear afterwards, locked or slipping. */
export function shiftTo(walk: Walk, to: number, out: Engagement): void {
  const { state, unit, now, road } = walk;
  const { build } = unit;
  const from = build.gears[state.gear]!;
  const gear = build.gears[to]!;
  const entering = gear.holds.find((hold) => from.holds.every((old) => old.clutch !== hold.clutch));
  const upshift = to > state.gear;
  if (entering === undefined || state.slipping) {
    state.gear = to;
    out.time = 0;
    return;
  }
  // The clutch is filled and closed by the pressure that the old gear had.
  drivingNow(unit, state, road, now);
  const { turbine, engine } = now.drive;
  state.gear = to;

  // The turbine torque that the new gear would need for the wish, or what full throttle gives at this speed.
  const slope = Math.atan(road.grade);
  const needed = Math.max(0, turbineTorqueFor(build, gear, roadForce(build.vehicle, state.speed, road.wish, slope)));
  const torque = Math.min(needed, fullThrottleTorque(build, turbine, pumpTorque(build.pump, now.line.linePressure)));
  const load = turbineTorqueFor(build, gear, roadForce(build.vehicle, state.speed, 0, slope));
  const clutch = build.clutches[entering.clutch]!;
  fillClutch(now, build, clutch, 0, out);

  // Until the plates touch, the turbine torque speeds up engine and turbine instead of the vehicle. A downshift wants that, up
  // to the new gear's speed; what goes beyond the higher of both is a flare.
  const driveInertia = build.engine.inertia + build.shiftControl.turbineInertia;
  const perMetre = turbinePerMetre(build, gear);
  const synchronous = perMetre * state.speed;
  const ceiling = Math.max(turbine, build.engine.idleSpeed + 1.2 * (build.engine.ratedSpeed - build.engine.idleSpeed));
  const touching = Math.min(turbine + (torque / driveInertia) * out.late, ceiling);
  out.clutch = entering.clutch;
  out.flare = Math.max(0, touching - Math.max(turbine, synchronous));
  const loadInertia = (build.vehicle.mass * build.vehicle.rotating) / (perMetre * perMetre);
  const pair = (speed: number): TwoInertias => {
    // Whichever side is faster drives the other: swapped sides swap the torques' signs.
    const sense = speed >= synchronous ? 1 : -1;
    const slip = Math.abs(speed - synchronous);
    return { driveTorque: sense * torque, loadTorque: sense * load, driveInertia, loadInertia, slip };
  };
  lock(walk, clutch, entering.share, pair(turbine), pair(touching), out);
  if (out.time === Infinity) letGo(walk, touching, engine);
  // Shifts that coast or spin up say nothing about the clutch.
  if (!upshift || !(torque > 0)) return;
  const { targetTime, trimGain, trimLimit } = build.shiftControl;
  state.trim = nextTrim(state.trim, Math.min(out.time + out.late, LONGEST_LOCK), targetTime, trimGain, trimLimit);
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
  const last = slowestToFill(build, gear);
  const clutch = build.clutches[last.clutch]!;
  const drained = Math.max(0, build.holdUp.passages - state.passages);
  fillClutch(now, build, clutch, drained, out);
  state.passages = build.holdUp.passages;
  out.clutch = last.clutch;
  out.flare = 0;
  const pair: TwoInertias = {
    driveTorque: creep,
    loadTorque: 0,
    driveInertia: build.shiftControl.turbineInertia,
    loadInertia: 1e6, // the brakes hold the vehicle
    slip: idleSpeed,
  };
  lock(walk, clutch, last.share, pair, pair, out);
  out.time += out.fill;
}

/** The element of a gear that takes most fluid: the others stand ready in neutral. */
export function slowestToFill(build: Build, gear: Gear): { readonly clutch: number; readonly share: number } {
  let slowest = gear.holds[0]!;
  for (const hold of gear.holds) {
    if (fillVolume(build.clutches[hold.clutch]!) > fillVolume(build.clutches[slowest.clutch]!)) slowest = hold;
  }
  return slowest;
}

/** Time to fill a clutch [s] and how much later that is than a sound unit in its place would be: no air, no leak. */
function fillClutch(now: Now, build: Build, clutch: Clutch, drained: number, out: Engagement): void {
  const volume = fillVolume(clutch) + drained;
  out.fill = fillingTime(volume, now.lineInput, now.line, clutch);
  const sound: BalanceConditions = { ...now.lineInput, gas: build.sump.pickup.baseGas, leakPlace: "none" };
  balance(sound, soundLine);
  out.late = Math.max(0, out.fill - fillingTime(volume, sound, soundLine, clutch));
}

const soundLine = stillBalance();

function fillingTime(volume: number, input: BalanceConditions, line: Balance, clutch: Clutch): number {
  return Math.min(LONGEST_FILL, fillTime(volume, fillingFlow(input, line, clutch), line.lineGas) ?? LONGEST_FILL);
}

/** Flow into a filling clutch [m³/s]: its orifice against what pump and clutch circuit leave, at the pressure where they meet. */
function fillingFlow(input: BalanceConditions, { linePressure, lineGas }: Balance, clutch: Clutch): number {
  const kiss = kissPressure(clutch);
  if (linePressure <= kiss) return 0;
  const filling = { input, clutch, density: input.density * (1 - lineGas) };
  const pressure = spare(linePressure, filling) >= 0 ? linePressure : rootBetween(spare, filling, kiss, linePressure);
  return orificeFlow(clutch, pressure - kiss, filling.density);
}

/** What the pump delivers at a pressure over what clutch circuit and filling clutch take [m³/s]; falls with the pressure. */
function spare(
  pressure: number,
  { input, clutch, density }: { input: BalanceConditions; clutch: Clutch; density: number },
): number {
  const taken = clutchCircuitFlow(input.clutch, pressure, input.viscosity, density);
  return deliveredAt(input, pressure) - taken - orificeFlow(clutch, pressure - kissPressure(clutch), density);
}

/**
 * Locks a filled clutch: the controller asks for the pressure that closes the gap it `expected` in its target time on a sound
 * lining, with what it has learned, and gets at most what the line has; that closes the gap there is, `pair`.
 */
function lock(
  walk: Walk,
  clutch: Clutch,
  share: number,
  expected: TwoInertias,
  pair: TwoInertias,
  out: Engagement,
): void {
  const { state, unit, now, ledger } = walk;
  const { build } = unit;
  const slide = slidingSpeed(clutch, expected.slip / (2 * share));
  const sound = frictionCoefficient(clutch.friction, slide, state.plate[out.clutch]!);
  const wanted = commandedTorque(build.shiftControl.targetTime, expected);
  const asked = lockPressure(clutch, Math.max(0, wanted) * share, sound) + state.trim;
  const pressure = Math.min(asked, now.line.linePressure);
  const carried = elementCapacity(build, state, out.clutch, pair.slip / (2 * share), pressure) / share;
  const time = engagementTime(carried, pair);
  if (time === undefined || time > LONGEST_LOCK) {
    out.time = Infinity;
    out.energy = 0;
    return;
  }
  out.time = time;
  out.energy = engagementEnergy(carried, pair) ?? 0;
  if (!(time > 0)) return;

  // The heat is in the plate before the fluid can take any; the surface runs ahead of it.
  const area = clutch.faces * faceArea(clutch);
  const flux = (2 * out.energy * toSteel) / (area * time);
  const surface = state.plate[out.clutch]! + peakInterfaceRise(separatorSteel, flux, time);
  state.glaze[out.clutch] = Math.min(1, state.glaze[out.clutch]! + glazeRate(surface) * time);
  state.char[out.clutch] = 1 - (1 - state.char[out.clutch]!) * Math.exp(-build.damage.charFactor * charRate(surface) * time);
  state.wear[out.clutch] = Math.min(
    clutch.liningThickness,
    state.wear[out.clutch]! + wearDepth(out.energy, area, build.damage.wearPerEnergy),
  );
  state.plate[out.clutch]! += (out.energy * toSteel) / steelCapacity(build, out.clutch);
  state.energy += out.energy * (1 - toSteel);
  ledger.heatSlip += out.energy;
}

