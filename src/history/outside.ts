// Laws used outside their range during a history: noted as they happen, told at the end. Silence would be the only wrong answer.

import type { Range } from "../errors.ts";
import { kissPressure, liningPressure, liningPressureRange } from "../physics/clutch/capacity.ts";
import { fillOrificeRange } from "../physics/clutch/fill.ts";
import { frictionRange } from "../physics/clutch/friction.ts";
import { slidingSpeed } from "../physics/clutch/geometry.ts";
import { glazeRange } from "../physics/damage/glaze.ts";
import { pyrolysisRange } from "../physics/damage/pyrolysis.ts";
import { fluidAgeingRange } from "../physics/fluid/ageing.ts";
import { densityRange } from "../physics/fluid/density.ts";
import { specificHeatRange } from "../physics/fluid/specific-heat.ts";
import { viscosityRange, viscosityTemperatureRange } from "../physics/fluid/viscosity.ts";
import type { LeakOpening } from "../physics/build.ts";
import { annulusRange } from "../physics/leak/annulus.ts";
import { crackGapRange, shellParameter } from "../physics/leak/crack.ts";
import { holeRange } from "../physics/leak/hole.ts";
import { pitRange } from "../physics/leak/pits.ts";
import { sealClearance } from "../physics/leak/seal-creep.ts";
import { crackHalfLength, mouthOf, rustedFor, wallAtMouth } from "../physics/leaking.ts";
import { partitionRange } from "../physics/heat/partition.ts";
import { roadForceRange } from "../physics/load/road.ts";
import { inletFrictionRange, inletReynolds } from "../physics/supply/inlet.ts";
import { mixtureDensity } from "../physics/supply/cooler-circuit.ts";
import { displaced, pumpSlip, slipRange } from "../physics/supply/pump.ts";
import { circuitOrificeRange, circuitOrificeReynolds } from "../physics/supply/regulator.ts";
import type { Engagement } from "./shift.ts";
import type { Walk } from "./walk.ts";

/** A law that a history watches, what it watches of it, and the extremes it has seen. */
interface Seen {
  readonly range: Range;
  readonly value: (walk: Walk, engagement: Engagement) => number | undefined;
  low: number;
  high: number;
}

export type Outside = readonly Seen[];

export function newOutside(): Outside {
  const seen = (range: Range, value: Seen["value"]): Seen => ({
    range,
    value,
    low: Infinity,
    high: -Infinity,
  });
  return [
    seen(viscosityTemperatureRange, ({ now }) => now.temperature),
    seen(viscosityRange, ({ now }) => now.viscosity / now.density),
    seen(densityRange, ({ now }) => now.temperature),
    seen(specificHeatRange, ({ now }) => now.temperature),
    // Below their ranges these rates are too small to matter in a history; above them the laws are stretched.
    seen(fluidAgeingRange, ({ now }) => Math.max(fluidAgeingRange.low, now.temperature)),
    seen(pyrolysisRange, ({ state, slip }) => Math.max(pyrolysisRange.low, state.plate[slip.clutch]!)),
    seen(glazeRange, ({ state, slip }) => Math.max(glazeRange.low, state.plate[slip.clutch]!)),
    seen(frictionRange, ({ unit, now, slip }) => {
      const clutch = unit.build.clutches[now.weakest];
      return clutch === undefined ? undefined : slidingSpeed(clutch, slip.speed);
    }),
    seen(partitionRange, ({ state }, { time }) =>
      state.slipping ? state.slipTime : time < Infinity ? time : undefined,
    ),
    seen(fillOrificeRange, ({ unit, now }, { clutch, fill }) => {
      const filled = unit.build.clutches[clutch]!;
      const drop = now.line.linePressure - kissPressure(filled);
      if (!(fill > 0 && drop > 0)) return undefined;
      return (filled.fillOrifice * Math.sqrt(2 * drop * now.density)) / now.viscosity;
    }),
    seen(inletFrictionRange, ({ unit, now }) =>
      inletReynolds(unit.build.inlet, now.line.drawn, now.viscosity, now.density),
    ),
    seen(circuitOrificeRange, ({ unit, now }) => {
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
    seen(slipRange, ({ unit, now }) => {
      const { pump } = unit.build;
      const { turn } = now.lineInput;
      return turn > 0
        ? pumpSlip(pump, now.line.linePressure, now.viscosity) / displaced(pump, turn)
        : undefined;
    }),
    seen(roadForceRange, ({ state }) => state.speed),
    seen(liningPressureRange, ({ now, unit }) => {
      const clutch = unit.build.clutches[now.weakest];
      if (clutch === undefined) return undefined;
      return liningPressure(clutch, now.line.linePressure);
    }),
    // The opening of the leak: what of it its law was made for.
    seen(holeRange, (walk) => {
      const opening = openLeak(walk);
      if (opening?.kind === "hole") return opening.wall / opening.diameter;
      if (opening?.kind !== "pit") return undefined;
      const mouth = mouthOf(opening, walk.state.leakAge, walk.state.clock - walk.state.leakOpenedAt);
      return mouth > 0 ? wallAtMouth(opening) / mouth : undefined;
    }),
    seen(annulusRange, (walk) => {
      const opening = openLeak(walk);
      if (opening?.kind !== "seal") return undefined;
      const { clearance, finalClearance, creepTime, diameter } = opening;
      return sealClearance(clearance, finalClearance, creepTime, walk.state.leakAge) / diameter;
    }),
    seen(crackGapRange, (walk) => {
      const opening = openLeak(walk);
      if (opening?.kind !== "crack") return undefined;
      // A line that has parted went through the longest crack that it bore.
      const half = crackHalfLength(opening, Math.min(walk.state.leakAge, opening.partsAfter));
      return shellParameter(half, opening.tubeRadius, opening.wall, opening.poisson);
    }),
    seen(pitRange, (walk) => {
      const opening = openLeak(walk);
      return opening?.kind === "pit"
        ? rustedFor(opening, walk.state.clock - walk.state.leakOpenedAt)
        : undefined;
    }),
  ];
}

const openLeak = ({ unit, state }: Walk): LeakOpening | undefined =>
  state.leakAge >= 0 ? unit.leak?.opening : undefined;

/** Looks at every watched law at this instant. */
export function noteRanges(outside: Outside, walk: Walk, engagement: Engagement): void {
  for (const seen of outside) {
    const value = seen.value(walk, engagement);
    if (value === undefined) continue;
    if (value < seen.low) seen.low = value;
    if (value > seen.high) seen.high = value;
  }
}

/** In words: which law, at which value, and where it holds. */
export function outsideOf(outside: Outside): string[] {
  return outside.flatMap(({ range, low, high }) => {
    const past = low < range.low ? low : high > range.high ? high : undefined;
    if (past === undefined) return [];
    const { law, quantity, unit } = range;
    const of = unit === "1" ? "" : ` ${unit}`;
    return [
      `${law} used at ${quantity} = ${past.toPrecision(4)}${of} (holds from ${range.low} to ${range.high}${of})`,
    ];
  });
}
