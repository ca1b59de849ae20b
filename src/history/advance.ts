// One step of time: what the instant says flows, flows for so many seconds, and is booked.

import { steelShare } from "../physics/heat/partition.ts";
import { separatorSteel, wetPaper } from "../physics/heat/solid.ts";
import { coolerTakes } from "../physics/heat/cooler.ts";
import { plateAfter, plateGivesUp } from "../physics/heat/plate.ts";
import { charRate } from "../physics/damage/pyrolysis.ts";
import { glazeRate } from "../physics/damage/glaze.ts";
import { wearDepth } from "../physics/damage/wear.ts";
import { fluidAgeingRate } from "../physics/fluid/ageing.ts";
import { specificEnergy, specificHeat } from "../physics/fluid/specific-heat.ts";
import { interfaceRise } from "../physics/heat/interface.ts";
import { hidingStep } from "../physics/leak/hiding.ts";
import { faceArea } from "../physics/clutch/geometry.ts";
import { inFlightAfter, returnTime } from "../physics/sump/holdup.ts";
import { sloshFrequency, sloshStep } from "../physics/sump/slosh.ts";
import { tiltAcross, tiltAlong } from "../physics/sump/tilt.ts";
import { suctionGasAfter } from "../physics/supply/suction.ts";
import { steelCapacity } from "./ledger.ts";
import type { Walk } from "./walk.ts";

/** Share of slip heat that the steels take; the lining's share goes with the fluid in its pores. */
export const toSteel = steelShare(separatorSteel, wetPaper);
/** A plate this near to the fluid's temperature waits for a later step to pass on its heat [K]. */
const EVEN = 0.05;
/** By then the friction surface is as far ahead of its plate as it gets [s]. */
const SETTLED = 1;

/** Carries the running unit over `seconds` by the instant in `walk.now`; the slip heat of the step stands in `walk.slip`. */
export function advance(walk: Walk, seconds: number): void {
  fluidMoves(walk, seconds);
  const { leak, leakFlow, line } = walk.now;
  const liquid = leak.atPan ? 1 : 1 - line.lineGas;
  leaks(walk, seconds, leakFlow * liquid * seconds, walk.state.speed > 0);
  surfaceMoves(walk, seconds);
  heatMoves(walk, seconds);
  liningsSuffer(walk, seconds);
  walk.state.running += seconds;
  walk.state.clock += seconds;
  if (walk.state.leakAge >= 0) walk.state.leakAge += seconds;
  walk.state.leakPressure = walk.now.line.leakPressure;
}

/** Fluid thrown off returns late; what drained while parked is filled again before anything comes back. */
function fluidMoves(walk: Walk, seconds: number): void {
  const { state, now, unit } = walk;
  const { line } = now;
  const { holdUp } = unit.build;
  const liquid = 1 - line.lineGas;
  const intoPassages = Math.min(line.delivered * liquid * seconds, Math.max(0, holdUp.passages - state.passages));
  state.passages += intoPassages;
  const fed = line.feed * liquid * seconds;
  const intoConverter = Math.min(fed, holdUp.converter - state.converter);
  const intoLines = Math.min(fed - intoConverter, holdUp.coolerAndLines - state.lines);
  state.converter += intoConverter;
  state.lines += intoLines;
  const thrownOff = (line.clutchFlow + line.feed - line.relief) * liquid - (intoPassages + intoConverter + intoLines) / seconds;
  const back = returnTime(holdUp.hotReturnTime, now.viscosity, holdUp.hotViscosity, holdUp.returnExponent);
  state.inFlight = inFlightAfter(state.inFlight, Math.max(0, thrownOff - now.line.leak * liquid), back, seconds);
  state.gas = suctionGasAfter(state.gas, now.gasDrawn, line.drawn, holdUp.suction, seconds);
}

/** Fluid leaves [m³ of it] and is found again in the hiding place, on the road or on the ground. */
export function leaks(walk: Walk, seconds: number, volume: number, moving: boolean): void {
  const { state, now, ledger } = walk;
  const lost = Math.min(volume * now.density, state.mass);
  if (lost > 0) {
    const energy = lost * specificEnergy(walk.unit.fluid.density15, now.temperature);
    state.mass -= lost;
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

function surfaceMoves(walk: Walk, seconds: number): void {
  const { state, now, road } = walk;
  const { pan, sloshDamping: damping } = walk.unit.build.sump;
  const along = tiltAlong(now.drive.acceleration, Math.atan(road.grade));
  walk.rockingAlong = sloshFrequency(pan.length, now.panDepth);
  walk.rockingAcross = sloshFrequency(pan.width, now.panDepth);
  sloshStep(state.slosh, 0, along, walk.rockingAlong, damping, seconds);
  sloshStep(state.slosh, 2, tiltAcross(road.lateral), walk.rockingAcross, damping, seconds);
}

/** Sources and sinks of the sump; plates pass their heat on to the fluid. */
function heatMoves(walk: Walk, seconds: number): void {
  const { state, now, unit, ledger, road, slip } = walk;
  const { heat, clutches } = unit.build;
  const { fluid } = unit;

  const converter = now.converterHeat * seconds;
  const pump = now.pumpHeat * seconds;
  const gears = now.gearHeat * seconds;
  const toAir = (heat.caseStill + heat.casePerSpeed * state.speed) * (now.temperature - road.ambient) * seconds;
  const carried = now.line.cooler * now.density * specificHeat(fluid.density15, now.temperature);
  const toCoolant = coolerTakes(carried, heat.coolantFlowCapacity, heat.coolerConductance) * (now.temperature - state.coolant) * seconds;

  let fromPlates = 0;
  for (let i = 0; i < state.plate.length; i++) {
    const made = (i === clutches.length ? now.lockUpHeat : i === slip.clutch ? slip.heat : 0) * seconds;
    if (made === 0 && Math.abs(state.plate[i]! - now.temperature) < EVEN) continue;
    const clutch = clutches[i] ?? unit.build.lockUp.clutch;
    const capacity = steelCapacity(unit.build, i);
    const power = (made * toSteel) / seconds;
    const conductance = now.film * clutch.coolingArea;
    const before = state.plate[i]!;
    state.plate[i] = plateAfter(before, now.temperature, power, capacity, conductance, seconds);
    fromPlates += made * (1 - toSteel) + plateGivesUp(before, now.temperature, power, capacity, conductance, seconds);
    ledger.heatSlip += made;
  }

  state.energy += converter + pump + gears + fromPlates - toAir - toCoolant;
  ledger.heatConverter += converter;
  ledger.heatPump += pump;
  ledger.heatGears += gears;
  ledger.heatToAir += toAir;
  ledger.heatToCoolant += toCoolant;
  state.coolant += (heat.coolantWarm - state.coolant) * -Math.expm1(-seconds / heat.coolantWarmTime);
  state.fluidAge += fluidAgeingRate(now.temperature) * seconds;
}

/** Friction material glazes at any heat, chars at great heat, and wears by the energy it has taken. */
function liningsSuffer(walk: Walk, seconds: number): void {
  const { state, now, unit, slip } = walk;
  const { clutches, damage } = unit.build;
  const bath = glazeRate(now.temperature) * seconds;
  for (let i = 0; i < state.plate.length; i++) {
    const power = i === clutches.length ? now.lockUpHeat : i === slip.clutch ? slip.heat : 0;
    const plate = state.plate[i]!;
    if (power === 0 && plate < now.temperature + 1) {
      state.glaze[i] = Math.min(1, state.glaze[i]! + bath);
      continue;
    }
    const clutch = clutches[i] ?? unit.build.lockUp.clutch;
    const flux = power / (clutch.faces * faceArea(clutch));
    const hot = plate + interfaceRise(flux, SETTLED, clutch.steelThickness);
    state.glaze[i] = Math.min(1, state.glaze[i]! + glazeRate(hot) * seconds);
    state.char[i] = 1 - (1 - state.char[i]!) * Math.exp(-damage.charFactor * charRate(hot) * seconds);
    const area = clutch.faces * faceArea(clutch);
    state.wear[i] = Math.min(clutch.liningThickness, state.wear[i]! + wearDepth(power * seconds, area, damage.wearPerEnergy));
  }
}
