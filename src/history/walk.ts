// What a history carries while it walks: the unit, its state, the instant, and the books.

import type { HidingPlace, HidingStep } from "../physics/leak/hiding.ts";
import type { Unit } from "../physics/build.ts";
import { newNow, type Now } from "../physics/now.ts";
import type { Road } from "../physics/road.ts";
import type { State } from "../physics/state.ts";
import { newSloshFactors, type SloshFactors } from "../physics/sump/slosh.ts";
import { openLedger, type Ledger } from "./ledger.ts";

export interface Walk {
  readonly unit: Unit;
  readonly state: State;
  readonly now: Now;
  readonly road: Road;
  readonly ledger: Ledger;
  /** The hiding place in kilograms, since mass is what is kept. */
  readonly hiding: HidingPlace;
  readonly hidingStep: HidingStep;
  readonly slip: SlipNow;
  /** Slip heat of every clutch so far [J], the lock-up clutch last. */
  readonly slipEnergy: Float64Array;
  /** Speed that the schedule asks for now [m/s], and the pedal the driver holds (0 to 1) while a clutch slips. */
  scheduled: number;
  pedal: number;
  /** The swing of the surface along and across, for a step and for a half of it. */
  readonly along: Swing;
  readonly across: Swing;
  /** Seconds by which surface and suction gas stand ahead of the rest, and what they were before. */
  ahead: number;
  readonly before: Float64Array;
  /** Change of engine speed in the last step of a slip [rad/s²]. */
  engineTrend: number;
  /** Time in which thrown-off fluid comes back, at the tick's viscosity [s]. */
  returnTime: number;
  /** What has flowed since fluid, plates and linings were last settled. */
  readonly sums: Sums;
  /** Seconds to divide a tick into when air, weak capacity or a dry floor is possible, and while a clutch slips. */
  readonly fine: number;
  readonly finer: number;
}

/** One axis of the surface: its frequency at the tick's level [rad/s], and factors kept for the steps in use. */
export interface Swing {
  frequency: number;
  readonly factors: SloshFactors;
}

/** Integrals over the time since the last settling: seconds, metres, joules by source, kilograms lost, and means times seconds. */
export interface Sums {
  seconds: number;
  distance: number;
  converter: number;
  pump: number;
  gears: number;
  lockUp: number;
  /** Slip heat of each clutch [J]. */
  readonly slip: Float64Array;
  /** Slip of the turbine against the gear [rad]. */
  slipped: number;
  lost: number;
  film: number;
  cooler: number;
}

/** The slip of the moment: which element, how fast, and the heat it makes [W]; averages over the step just taken. */
export interface SlipNow {
  clutch: number;
  speed: number;
  heat: number;
}

export function newWalk(unit: Unit, state: State, fine = 0.05, finer = 0.02): Walk {
  const perKilogram = unit.fluid.density15;
  const place = unit.leak?.hiding ?? { capacity: 0, carryOff: 0 };
  return {
    unit,
    state,
    now: newNow(unit.build),
    road: { speed: 0, wish: 0, grade: 0, lateral: 0, ambient: unit.surroundings.meanTemperature },
    ledger: openLedger(unit, state),
    hiding: { capacity: place.capacity * perKilogram, carryOff: place.carryOff },
    hidingStep: { held: 0, carriedOff: 0, overflow: 0 },
    slip: { clutch: 0, speed: 0, heat: 0 },
    slipEnergy: new Float64Array(unit.build.clutches.length + 1),
    scheduled: 0,
    pedal: 0,
    along: { frequency: 0, factors: newSloshFactors() },
    across: { frequency: 0, factors: newSloshFactors() },
    ahead: 0,
    before: new Float64Array(5),
    engineTrend: 0,
    returnTime: 0,
    sums: {
      seconds: 0,
      distance: 0,
      converter: 0,
      pump: 0,
      gears: 0,
      lockUp: 0,
      slip: new Float64Array(unit.build.clutches.length),
      slipped: 0,
      lost: 0,
      film: 0,
      cooler: 0,
    },
    fine,
    finer,
  };
}
