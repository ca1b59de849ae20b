// What a history carries while it walks: the unit, its state, the instant, and the books.

import type { HidingPlace, HidingStep } from "../physics/leak/hiding.ts";
import type { Unit } from "../physics/build.ts";
import { newNow, type Now } from "../physics/now.ts";
import type { Road } from "../physics/road.ts";
import type { State } from "../physics/state.ts";
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
  /** Speed that the schedule asks for now [m/s], and the pedal the driver holds (0 to 1) while a clutch slips. */
  scheduled: number;
  pedal: number;
  /** Slosh frequencies along and across at the last step [rad/s]. */
  rockingAlong: number;
  rockingAcross: number;
  /** Seconds to divide a tick into when air, weak capacity or a dry floor is possible, and while a clutch slips. */
  readonly fine: number;
  readonly finer: number;
}

/** The slip of the moment: which element, how fast, and the heat it makes [W]; averages over the step just taken. */
export interface SlipNow {
  clutch: number;
  speed: number;
  heat: number;
}

export function newWalk(unit: Unit, state: State, fine = 0.1, finer = 0.02): Walk {
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
    scheduled: 0,
    pedal: 0,
    rockingAlong: 0,
    rockingAcross: 0,
    fine,
    finer,
  };
}
