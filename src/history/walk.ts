// What a history carries while it walks: the unit, its state, the instant, and the books.

import type { HidingPlace, HidingStep } from "../physics/leak/hiding.ts";
import type { Unit } from "../physics/build.ts";
import { newNow, type Now } from "../physics/now.ts";
import type { Road } from "../physics/road.ts";
import type { State } from "../physics/state.ts";
import { newSloshFactors, type SloshFactors } from "../physics/sump/slosh.ts";
import { newPath, type Path } from "./path.ts";
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
  /** Slip heat of every clutch so far [J], the lock-up clutch last; and what sound shifts have cost each [J]. */
  readonly slipEnergy: Float64Array;
  readonly shiftEnergy: Float64Array;
  /** The controller learns from the shift that is under way; engine speed over which a gain is a flare [rad/s]. */
  teaches: boolean;
  /** Most that was ever learned about filling a clutch [s]. */
  mostFill: number;
  flareOver: number;
  /** Most engine speed gained while a clutch was not yet filled, since the last look [rad/s]. */
  flare: number;
  /** Speed that the schedule asks for now [m/s], and the pedal the driver holds (0 to 1) while a clutch slips. */
  scheduled: number;
  pedal: number;
  /** A clutch has slipped since the vehicle last kept up with the schedule. */
  heldUp: boolean;
  /** The swing of the surface along and across, for a step and for a half of it. */
  readonly along: Swing;
  readonly across: Swing;
  /** Mean depth of the pan for which the surface swings [m]. */
  depth: number;
  /** Most that the pump is reckoned to draw from the pan before the tick ends [m³/s]. */
  mostDrawn: number;
  /** Most by which the pan's mean depth is reckoned to fall meanwhile [m]. */
  mostFall: number;
  /** The next step is a long one because no air can come in it. */
  covered: boolean;
  /** The surface's path over the next step, where it was followed. */
  readonly path: Path;
  /** What was thrown off into flight in the last step [m³/s]. */
  thrownOff: number;
  /** Seconds by which surface, suction gas, fluid in flight and mass stand ahead of the rest, and what they were before. */
  ahead: number;
  readonly before: Float64Array;
  /** Changes of engine and turbine speed in the last step of a slip [rad/s²]. */
  engineTrend: number;
  turbineTrend: number;
  /** Change of the line pressure from the look before the last to the last one of a slip [Pa/s], and for how long that stood [s]. */
  pressureTrend: number;
  looked: number;
  /** Longest next step of a slip [s]. */
  stride: number;
  /** By how much the weakest element held more than its torque [N m] at the last look, and when that was [s]; NaN: no such look. */
  margin: number;
  marginAt: number;
  /** The engine had no more to give at the last look. */
  short: boolean;
  /** Energy that the sump gained from one settling to the next [J], what leaked aside; and by how much the coolant warmed [K]. */
  gained: number;
  coolantGained: number;
  /** Change of the line pressure over its set point from the middle of one step to the next [1/s]; how long the last step of this tick was that held [s], 0 at its beginning. */
  sagRate: number;
  rolled: number;
  /** Time in which thrown-off fluid comes back, at the tick's viscosity [s]. */
  returnTime: number;
  /** What has flowed since fluid, plates and linings were last settled. */
  readonly sums: Sums;
  /** Seconds to divide a tick into when air, weak capacity or a dry floor is possible, and while a clutch slips. */
  readonly fine: number;
  readonly finer: number;
}

/** One axis of the surface: its frequency at the level [rad/s], and factors kept for the steps in use, for a part of its path and for a sample of it. */
export interface Swing {
  frequency: number;
  /** The slope at which it would rest, at the last look. */
  target: number;
  readonly half: SloshFactors;
  readonly whole: SloshFactors;
  readonly part: SloshFactors;
  readonly sample: SloshFactors;
}

/** Integrals over the time since the last settling: seconds, metres, joules by source, and means times seconds. */
export interface Sums {
  seconds: number;
  distance: number;
  converter: number;
  pump: number;
  gears: number;
  lockUp: number;
  /** Slip heat of each clutch [J]. */
  readonly slip: Float64Array;
  film: number;
  cooler: number;
  /** Heat that clutches have passed to the fluid [J], and up to where each of them is settled already: seconds, and film times seconds. */
  fromPlates: number;
  readonly plateSeconds: Float64Array;
  readonly plateFilm: Float64Array;
}

/** The slip of the moment: which element, how fast at the turbine, and the heat it makes [W]; means over the last steps of a slip. */
export interface SlipNow {
  clutch: number;
  speed: number;
  heat: number;
  /** Seconds, slip [rad] and heat [J] of these steps so far. */
  seconds: number;
  turned: number;
  made: number;
  /** How fast the steels of the element warm [K/s] and its lining chars [1/s], by the last step. */
  warming: number;
  charring: number;
}

/** Steps of a walk [s]: near air, and while a clutch slips. */
export const FINE = 0.05;
export const FINER = 0.02;

export function newWalk(unit: Unit, state: State, fine = FINE, finer = FINER): Walk {
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
    slip: { clutch: 0, speed: 0, heat: 0, seconds: 0, turned: 0, made: 0, warming: 0, charring: 0 },
    slipEnergy: new Float64Array(unit.build.clutches.length + 1),
    shiftEnergy: new Float64Array(unit.build.clutches.length + 1),
    teaches: false,
    mostFill: 0,
    flareOver: 0,
    flare: 0,
    scheduled: 0,
    pedal: 0,
    heldUp: false,
    along: {
      frequency: 0,
      target: 0,
      half: newSloshFactors(),
      whole: newSloshFactors(),
      part: newSloshFactors(),
      sample: newSloshFactors(),
    },
    across: {
      frequency: 0,
      target: 0,
      half: newSloshFactors(),
      whole: newSloshFactors(),
      part: newSloshFactors(),
      sample: newSloshFactors(),
    },
    depth: 0,
    mostDrawn: 0,
    mostFall: 0,
    covered: true,
    path: newPath(),
    thrownOff: 0,
    ahead: 0,
    before: new Float64Array(7),
    engineTrend: 0,
    turbineTrend: 0,
    pressureTrend: 0,
    looked: finer,
    stride: finer,
    margin: 0,
    marginAt: Number.NaN,
    short: false,
    gained: 0,
    coolantGained: 0,
    sagRate: 0,
    rolled: 0,
    returnTime: 0,
    sums: {
      seconds: 0,
      distance: 0,
      converter: 0,
      pump: 0,
      gears: 0,
      lockUp: 0,
      slip: new Float64Array(unit.build.clutches.length),
      film: 0,
      cooler: 0,
      fromPlates: 0,
      plateSeconds: new Float64Array(unit.build.clutches.length + 1),
      plateFilm: new Float64Array(unit.build.clutches.length + 1),
    },
    fine,
    finer,
  };
}
