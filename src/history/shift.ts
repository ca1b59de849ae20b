// A shift, or the first engagement of a drive: fill, flare if the fill is late, lock, and what the controller learns of it.

import { drivingNow, supplyNow } from "../physics/chain.ts";
import { elementCapacity } from "../physics/holding.ts";
import type { Now } from "../physics/now.ts";
import type { Build, Gear } from "../physics/build.ts";
import { kissPressure, lockPressure } from "../physics/clutch/capacity.ts";
import { commandedTorque, engagementEnergy, engagementTime } from "../physics/clutch/engagement.ts";
import { fillTime, fillVolume, orificeFlow } from "../physics/clutch/fill.ts";
import { frictionCoefficient } from "../physics/clutch/friction.ts";
import { faceArea, slidingSpeed, type Clutch } from "../physics/clutch/geometry.ts";
import { charRate } from "../physics/damage/pyrolysis.ts";
import { glazeRate } from "../physics/damage/glaze.ts";
import { wearDepth } from "../physics/damage/wear.ts";
import { turbinePerMetre, turbineTorqueFor } from "../physics/drivetrain.ts";
import { peakInterfaceRise } from "../physics/heat/conduction.ts";
import { separatorSteel } from "../physics/heat/solid.ts";
import { turbineTorque } from "../physics/load/converter.ts";
import { roadForce } from "../physics/load/road.ts";
import { clutchCircuitFlow, deliveredAt, type BalanceConditions } from "../physics/supply/regulator.ts";
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
const LONGEST_LOCK = 2;
/** A fill that takes longer than this has failed; the gear is not there [s]. */
const LONGEST_FILL = 20;

/** Shifts from one forward gear to the next while driving; the state is in the new gear afterwards, locked or slipping. */
export function shiftTo(walk: Walk, to: number, out: Engagement): void {
  const { state, unit, now, road } = walk;
  const { build } = unit;
  const from = build.gears[state.gear]!;
  const gear = build.gears[to]!;
  const entering = gear.holds.find((hold) => from.holds.every((old) => old.clutch !== hold.clutch));
  if (entering === undefined || state.slipping) {
    state.gear = to;
    out.time = 0;
    return;
  }
  // The clutch is filled and closed by the pressure that the old gear had.
  drivingNow(unit, state, road, now);
  const oldSpeed = now.drive.turbine;
  const oldEngine = now.drive.engine;
  state.gear = to;

  const clutch = build.clutches[entering.clutch]!;
  const slope = Math.atan(road.grade);
  const torque = Math.max(0, turbineTorqueFor(build, gear, roadForce(build.vehicle, state.speed, road.wish, slope)));
  const load = turbineTorqueFor(build, gear, roadForce(build.vehicle, state.speed, 0, slope));
  fillClutch(now, build, clutch, 0, out);

  // Until the plates touch, the turbine torque speeds up engine and turbine instead of the vehicle.
  const driveInertia = build.engine.inertia + build.shiftControl.turbineInertia;
  const ceiling = build.engine.idleSpeed + 1.2 * (build.engine.ratedSpeed - build.engine.idleSpeed);
  out.clutch = entering.clutch;
  out.flare = Math.max(0, Math.min((torque / driveInertia) * out.late, ceiling - oldSpeed));
  const perMetre = turbinePerMetre(build, gear);
  const pair = {
    driveTorque: torque,
    loadTorque: load,
    driveInertia,
    loadInertia: (build.vehicle.mass * build.vehicle.rotating) / (perMetre * perMetre),
    slip: Math.abs(oldSpeed - perMetre * state.speed),
  };
  lock(walk, clutch, entering.share, pair, out);
  if (out.time === Infinity) {
    letGo(walk, oldSpeed + out.flare, oldEngine);
  }
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
  const pair = {
    driveTorque: creep,
    loadTorque: 0,
    driveInertia: build.shiftControl.turbineInertia,
    loadInertia: 1e6, // the brakes hold the vehicle
    slip: idleSpeed,
  };
  lock(walk, clutch, last.share, pair, out);
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

/** Time to fill a clutch [s] and how much later that is than a sound unit at this temperature would be. */
function fillClutch(now: Now, build: Build, clutch: Clutch, drained: number, out: Engagement): void {
  const volume = fillVolume(clutch);
  const flow = fillingFlow(now, clutch);
  out.fill = Math.min(LONGEST_FILL, fillTime(volume + drained, flow, now.line.lineGas) ?? LONGEST_FILL);
  const sound = orificeFlow(clutch, Math.max(1, now.setPoint - kissPressure(clutch)), now.density);
  const baseGas = build.sump.pickup.baseGas;
  out.late = Math.max(0, out.fill - (volume + drained) / (sound * (1 - baseGas)));
}

/** Flow into a filling clutch [m³/s]: its orifice against what pump and clutch circuit leave, at the pressure where they meet. */
export function fillingFlow(now: Now, clutch: Clutch): number {
  const kiss = kissPressure(clutch);
  const { linePressure } = now.line;
  if (linePressure <= kiss) return 0;
  const filling = { input: now.lineInput, clutch, density: now.density * (1 - now.line.lineGas) };
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
 * Locks a filled clutch: the controller asks for the pressure that closes the gap in its target time on a sound lining,
 * with what it has learned, and gets at most what the line has.
 */
function lock(
  walk: Walk,
  clutch: Clutch,
  share: number,
  pair: { driveTorque: number; loadTorque: number; driveInertia: number; loadInertia: number; slip: number },
  out: Engagement,
): void {
  const { state, unit, now, ledger } = walk;
  const { build } = unit;
  const slide = slidingSpeed(clutch, pair.slip / (2 * share));
  const sound = frictionCoefficient(clutch.friction, slide, state.plate[out.clutch]!);
  const wanted = commandedTorque(build.shiftControl.targetTime, pair);
  const asked = lockPressure(clutch, Math.max(0, wanted) * share, sound) + state.trim;
  const pressure = Math.min(asked, now.line.linePressure);
  const flared = { ...pair, slip: pair.slip + out.flare };
  const carried = elementCapacity(build, state, out.clutch, flared.slip / (2 * share), pressure) / share;
  const time = engagementTime(carried, flared);
  if (time === undefined || time > LONGEST_LOCK) {
    out.time = Infinity;
    out.energy = 0;
    return;
  }
  out.time = time;
  out.energy = engagementEnergy(carried, flared) ?? 0;
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

