// What a history watches of the laws that it uses: each with its range and the value at which it is used now.

import type { Range } from "../errors.ts";
import { kissPressure, liningPressure, liningPressureRange } from "../physics/clutch/capacity.ts";
import { fillOrificeRange } from "../physics/clutch/fill.ts";
import { frictionRange } from "../physics/clutch/friction.ts";
import { radiusRange, slidingSpeed } from "../physics/clutch/geometry.ts";
import { learnedFillRange } from "../physics/clutch/learned-fill.ts";
import { lockupPressure, lockupPressureRange } from "../physics/clutch/lockup.ts";
import { glazeLossRange } from "../physics/damage/damage-index.ts";
import { glazeRange } from "../physics/damage/glaze.ts";
import { pyrolysisRange } from "../physics/damage/pyrolysis.ts";
import { wearRange } from "../physics/damage/wear.ts";
import { aeratedRange } from "../physics/fluid/aerated.ts";
import { fluidAgeingRange } from "../physics/fluid/ageing.ts";
import { densityRange } from "../physics/fluid/density.ts";
import { specificHeat, specificHeatRange } from "../physics/fluid/specific-heat.ts";
import { viscosityRange, viscosityTemperatureRange } from "../physics/fluid/viscosity.ts";
import { effectivenessRange, transferUnits } from "../physics/heat/cooler.ts";
import { interfaceRange } from "../physics/heat/interface.ts";
import { partitionRange } from "../physics/heat/partition.ts";
import { lumpedRange } from "../physics/heat/plate.ts";
import { separatorSteel } from "../physics/heat/solid.ts";
import { converterRange } from "../physics/load/converter.ts";
import { fullTorqueRange } from "../physics/load/engine.ts";
import { roadForceRange } from "../physics/load/road.ts";
import { airOnset, airOnsetRange, mouthRadius, weirDepth } from "../physics/sump/pickup.ts";
import { inletFrictionRange, inletReynolds } from "../physics/supply/inlet.ts";
import { mixtureDensity } from "../physics/supply/cooler-circuit.ts";
import { displaced, pumpSlip, slipRange } from "../physics/supply/pump.ts";
import { circuitOrificeRange, circuitOrificeReynolds } from "../physics/supply/regulator.ts";
import type { Engagement } from "./shift.ts";
import type { Walk } from "./walk.ts";

interface WatchedLaw {
  readonly range: Range;
  /** Undefined while it is not used. */
  readonly value: (walk: Walk, engagement: Engagement) => number | undefined;
}

const law = (range: Range, value: WatchedLaw["value"]): WatchedLaw => ({ range, value });

/** All but those of the leak's opening. */
export const watchedLaws: readonly WatchedLaw[] = [
  law(viscosityTemperatureRange, ({ now }) => now.temperature),
  law(viscosityRange, ({ now }) => now.viscosity / now.density),
  law(densityRange, ({ now }) => now.temperature),
  law(specificHeatRange, ({ now }) => now.temperature),
  // Below their ranges these rates are too small to matter in a history; above them the laws are stretched.
  law(fluidAgeingRange, ({ now }) => Math.max(fluidAgeingRange.low, now.temperature)),
  law(pyrolysisRange, ({ state, slip }) => Math.max(pyrolysisRange.low, state.plate[slip.clutch]!)),
  law(glazeRange, ({ state, slip }) => Math.max(glazeRange.low, state.plate[slip.clutch]!)),
  law(frictionRange, ({ unit, now, slip }) => {
    const clutch = unit.build.clutches[now.weakest];
    return clutch === undefined ? undefined : slidingSpeed(clutch, slip.speed);
  }),
  law(partitionRange, ({ state }, { time }) =>
    state.slipping ? state.slipTime : time < Infinity ? time : undefined,
  ),
  law(fillOrificeRange, ({ unit, now }, { clutch, fill }) => {
    const filled = unit.build.clutches[clutch]!;
    const drop = now.line.linePressure - kissPressure(filled);
    if (!(fill > 0 && drop > 0)) return undefined;
    return (filled.fillOrifice * Math.sqrt(2 * drop * now.density)) / now.viscosity;
  }),
  law(inletFrictionRange, ({ unit, now }) =>
    inletReynolds(unit.build.inlet, now.line.drawn, now.viscosity, now.density),
  ),
  law(circuitOrificeRange, ({ unit, now }) => {
    const { linePressure, lineGas } = now.line;
    if (!(linePressure > 0)) return undefined;
    const density = mixtureDensity(now.density, lineGas);
    return circuitOrificeReynolds(
      unit.build.clutchCircuit,
      linePressure,
      now.viscosity,
      density,
      now.setPoint,
    );
  }),
  law(slipRange, ({ unit, now }) => {
    const { pump } = unit.build;
    const { turn } = now.lineInput;
    return turn > 0
      ? pumpSlip(pump, now.line.linePressure, now.viscosity) / displaced(pump, turn)
      : undefined;
  }),
  law(roadForceRange, ({ state }) => state.speed),
  law(liningPressureRange, ({ now, unit }) => {
    const clutch = unit.build.clutches[now.weakest];
    if (clutch === undefined) return undefined;
    return liningPressure(clutch, now.line.linePressure);
  }),
  // Deeper the surface is too far for air, and under the rim's own limit that decides: it is used where air is drawn between the two.
  law(airOnsetRange, ({ unit, now }) => {
    const { pickup } = unit.build.sump;
    const { drawn } = now.line;
    if (!(now.gasDrawn > pickup.baseGas && now.submergence >= weirDepth(pickup.rim, drawn))) return undefined;
    return airOnset(drawn) / mouthRadius(pickup);
  }),
  law(aeratedRange, ({ state }) => state.gas),
  law(effectivenessRange, ({ unit, now }) => {
    const { coolerConductance, coolantFlowCapacity } = unit.build.heat;
    const heat = specificHeat(unit.fluid.density15, now.temperature);
    const carried = now.line.cooler * (1 - now.line.lineGas) * now.density * heat;
    return carried > 0 ? transferUnits(coolerConductance, Math.min(carried, coolantFlowCapacity)) : undefined;
  }),
  law(lumpedRange, ({ unit, now, slip }) => {
    const clutch = unit.build.clutches[slip.clutch];
    if (clutch === undefined || !(slip.heat > 0)) return undefined;
    return (now.film * 0.5 * clutch.steelThickness) / separatorSteel.conductivity;
  }),
  law(lockupPressureRange, ({ unit, state, now }) => {
    const { feed, feedFull, linePressure } = now.line;
    if (!state.lockUpOn) return undefined;
    return lockupPressure(unit.build.lockUp.clutch, linePressure, feedFull > 0 ? feed / feedFull : 1);
  }),
  law(fullTorqueRange, ({ unit, state }) => {
    const { idleSpeed, ratedSpeed } = unit.build.engine;
    return (Math.max(idleSpeed, state.engine) - idleSpeed) / (ratedSpeed - idleSpeed); // under idle it is held
  }),
  law(converterRange, ({ state }) => (state.engine > 0 ? state.turbine / state.engine : undefined)),
  // Numbers of the build: they are looked at where they are used, of the clutch that decides.
  law(radiusRange, ({ unit, now }) => {
    const clutch = unit.build.clutches[now.weakest];
    return clutch === undefined ? undefined : clutch.inner / clutch.outer;
  }),
  law(interfaceRange, ({ unit, slip }) => {
    const clutch = unit.build.clutches[slip.clutch];
    if (clutch === undefined || !(slip.heat > 0)) return undefined;
    return clutch.steelThickness / (clutch.outer - clutch.inner);
  }),
  law(glazeLossRange, ({ unit }) => unit.build.damage.glazeLoss),
  law(wearRange, ({ unit, slip }) => (slip.heat > 0 ? unit.build.damage.wearPerEnergy : undefined)),
  law(learnedFillRange, ({ mostFill }) => mostFill),
];
