// Settling what has gathered: the sump's heat, the plates', the linings' losses, and where lost fluid went.

import { faceArea } from "../physics/clutch/geometry.ts";
import { charAfter, charRate } from "../physics/damage/pyrolysis.ts";
import { glazeRate } from "../physics/damage/glaze.ts";
import { wearDepth } from "../physics/damage/wear.ts";
import { fluidAgeingRate } from "../physics/fluid/ageing.ts";
import { specificEnergy, specificHeat } from "../physics/fluid/specific-heat.ts";
import { coolerTakes } from "../physics/heat/cooler.ts";
import { interfaceRise } from "../physics/heat/interface.ts";
import { steelShare } from "../physics/heat/partition.ts";
import { plateAfter, plateGivesUp } from "../physics/heat/plate.ts";
import { separatorSteel, wetPaper } from "../physics/heat/solid.ts";
import { hidingStep } from "../physics/leak/hiding.ts";
import { steelCapacity } from "./ledger.ts";
import type { Walk } from "./walk.ts";

/** Share of slip heat that the steels take; the lining's share goes with the fluid in its pores. */
export const toSteel = steelShare(separatorSteel, wetPaper);
/** A plate this near to the fluid's temperature waits to pass on its heat [K]: at most some hundredths of a kelvin of the fluid. */
const EVEN = 0.5;
/** By then the friction surface is as far ahead of its plate as it gets [s]. */
const SETTLED = 1;

/** Books and applies everything gathered since the last settling. */
export function settle(walk: Walk): void {
  const { sums, state, now } = walk;
  if (sums.seconds === 0) return;
  heatMoves(walk);
  state.fluidAge += fluidAgeingRate(now.temperature) * sums.seconds;
  sums.seconds = 0;
  sums.distance = 0;
  sums.converter = 0;
  sums.pump = 0;
  sums.gears = 0;
  sums.lockUp = 0;
  sums.film = 0;
  sums.cooler = 0;
  sums.fromPlates = 0;
  for (let i = 0; i < sums.plateSeconds.length; i++) {
    sums.plateSeconds[i] = 0;
    sums.plateFilm[i] = 0;
  }
}

/** Lets one clutch take the slip heat gathered so far, ahead of the rest: it warms within tenths of a second. */
export function settleClutch(walk: Walk, index: number): void {
  const { sums } = walk;
  const seconds = sums.seconds - sums.plateSeconds[index]!;
  if (!(seconds > 0)) return;
  takesHeat(walk, index, seconds);
}

/** Fluid that has left [kg] carries its energy away and is found in the hiding place, on the road or on the ground. */
export function finds(walk: Walk, lost: number, seconds: number, moving: boolean): void {
  const { state, now, ledger } = walk;
  if (lost > 0) {
    const energy = lost * specificEnergy(walk.unit.fluid.density15, now.temperature);
    state.energy -= energy;
    ledger.massLeaked += lost;
    ledger.heatLeaked += energy;
  } else if (state.hidden <= 0) return;
  const step = walk.hidingStep;
  hidingStep(step, walk.hiding, state.hidden, lost / seconds, moving, seconds);
  state.hidden = step.held;
  state.onRoad += step.carriedOff;
  if (moving) state.onRoad += step.overflow;
  else state.onGround += step.overflow;
}

/** Sources and sinks of the sump; plates take slip heat and pass it on; linings glaze, char and wear. */
function heatMoves(walk: Walk): void {
  const { state, now, unit, ledger, road, sums } = walk;
  const { heat, clutches } = unit.build;
  const { seconds } = sums;

  const speed = sums.distance / seconds;
  const toAir = (heat.caseStill + heat.casePerSpeed * speed) * (now.temperature - road.ambient) * seconds;
  const carried = (sums.cooler / seconds) * now.density * specificHeat(unit.fluid.density15, now.temperature);
  const taken = coolerTakes(carried, heat.coolantFlowCapacity, heat.coolerConductance);
  walk.coolantGained = (heat.coolantWarm - state.coolant) * -Math.expm1(-seconds / heat.coolantWarmTime);
  const toCoolant = taken * (now.temperature - state.coolant - 0.5 * walk.coolantGained) * seconds;

  const bath = glazeRate(now.temperature);
  for (let i = 0; i < state.plate.length; i++) {
    const left = seconds - sums.plateSeconds[i]!;
    if (!(left > 0)) continue;
    const made = i === clutches.length ? sums.lockUp : sums.slip[i]!;
    if (made === 0 && Math.abs(state.plate[i]! - now.temperature) < EVEN)
      state.glaze[i] = Math.min(1, state.glaze[i]! + bath * left);
    else takesHeat(walk, i, left);
  }
  const { fromPlates } = sums;

  const before = state.energy;
  state.energy += sums.converter + sums.pump + sums.gears + fromPlates - toAir - toCoolant;
  walk.gained = state.energy - before;
  ledger.heatConverter += sums.converter;
  ledger.heatPump += sums.pump;
  ledger.heatGears += sums.gears;
  ledger.heatToAir += toAir;
  ledger.heatToCoolant += toCoolant;
  state.coolant += walk.coolantGained;
}

/** One clutch: its steels after the heat made in the last `seconds`, what its lining suffers meanwhile, and what it gives the fluid. */
function takesHeat(walk: Walk, index: number, seconds: number): void {
  const { state, now, unit, sums, ledger } = walk;
  const { clutches, lockUp, damage } = unit.build;
  const isLockUp = index === clutches.length;
  const made = isLockUp ? sums.lockUp : sums.slip[index]!;
  const clutch = isLockUp ? lockUp.clutch : clutches[index]!;
  const capacity = steelCapacity(unit.build, index);
  const power = (made * toSteel) / seconds;
  const film = (sums.film - sums.plateFilm[index]!) / seconds;
  const conductance = film * clutch.coolingArea;
  const before = state.plate[index]!;
  const after = plateAfter(before, now.temperature, power, capacity, conductance, seconds);
  state.plate[index] = after;

  const area = clutch.faces * faceArea(clutch);
  const ahead =
    made > 0 ? interfaceRise((made * toSteel) / seconds / area, SETTLED, clutch.steelThickness) : 0;
  const surface = 0.5 * (before + after) + ahead;
  state.glaze[index] = Math.min(1, state.glaze[index]! + glazeRate(surface) * seconds);
  state.char[index] = charAfter(state.char[index]!, damage.charFactor * charRate(surface), seconds);
  if (made > 0) {
    const worn = state.wear[index]! + wearDepth(made, area, damage.wearPerEnergy);
    state.wear[index] = Math.min(clutch.liningThickness, worn);
  }
  sums.fromPlates +=
    made * (1 - toSteel) + plateGivesUp(before, now.temperature, power, capacity, conductance, seconds);
  walk.slipEnergy[index]! += made;
  ledger.heatSlip += made;
  if (!isLockUp) sums.slip[index] = 0;
  sums.plateSeconds[index] = sums.seconds;
  sums.plateFilm[index] = sums.film;
}
