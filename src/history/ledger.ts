// Where the fluid and the heat went, counted flow by flow as they pass. What is inside is never computed from these,
// nor these from what is inside: at the end the two must meet.

import type { Build, Unit } from "../physics/build.ts";
import type { State } from "../physics/state.ts";

/** Running totals since the start of the history: kilograms and joules. */
export interface Ledger {
  massFilled: number;
  massAdded: number;
  massLeaked: number;
  heatStart: number;
  heatAdded: number;
  heatConverter: number;
  heatPump: number;
  heatGears: number;
  heatSlip: number;
  heatToAir: number;
  heatToCoolant: number;
  heatLeaked: number;
}

export function openLedger(unit: Unit, state: State): Ledger {
  return {
    massFilled: state.mass,
    massAdded: 0,
    massLeaked: 0,
    heatStart: heatStored(unit.build, state),
    heatAdded: 0,
    heatConverter: 0,
    heatPump: 0,
    heatGears: 0,
    heatSlip: 0,
    heatToAir: 0,
    heatToCoolant: 0,
    heatLeaked: 0,
  };
}

/** Energy of fluid, metal and clutch plates above 0 °C [J]. */
export function heatStored(build: Build, state: State): number {
  let stored = state.energy;
  for (let i = 0; i < state.plate.length; i++) {
    stored += steelCapacity(build, i) * (state.plate[i]! - 273.15);
  }
  return stored;
}

/** Heat capacity of one clutch's steels [J/K]; the lock-up clutch is the last. */
export function steelCapacity(build: Build, index: number): number {
  const clutch = build.clutches[index] ?? build.lockUp.clutch;
  return 480 * clutch.steelMass; // specific heat of plain carbon steel, 480 J/(kg K), handbooks
}

/** How far the balances are from closing, as shares of what was filled and of the heat that passed. */
export interface Closure {
  readonly mass: number;
  readonly leaked: number;
  readonly energy: number;
}

/** filled + added = inside + hiding place + road + ground; leaked = the last three; start + heat in = stored + removed. */
export function closure(unit: Unit, state: State, ledger: Ledger): Closure {
  const outside = state.hidden + state.onRoad + state.onGround;
  const filled = ledger.massFilled + ledger.massAdded;
  const whole = Math.max(filled, Number.MIN_VALUE); // a unit without a drop closes too
  const heatIn =
    ledger.heatConverter + ledger.heatPump + ledger.heatGears + ledger.heatSlip + ledger.heatAdded;
  const removed = ledger.heatToAir + ledger.heatToCoolant + ledger.heatLeaked;
  const passed = Math.abs(ledger.heatStart) + heatIn;
  return {
    mass: Math.abs(filled - state.mass - outside) / whole,
    leaked: Math.abs(ledger.massLeaked - outside) / whole,
    energy:
      Math.abs(ledger.heatStart + heatIn - heatStored(unit.build, state) - removed) / Math.max(passed, 1),
  };
}
