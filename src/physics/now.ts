// What one instant shows, as a record that is written anew: a history makes one and walks with it.

import type { Build } from "./build.ts";
import { newDrive, type Drive } from "./drivetrain.ts";
import { atmosphere } from "./fluid/surroundings.ts";
import { closedLeak, type LeakNow } from "./leaking.ts";
import { stillBalance, type Balance, type BalanceConditions } from "./supply/regulator.ts";

/** Everything that one instant shows; written in place, so that a history allocates nothing while it walks. */
export interface Now {
  readonly drive: Drive;
  readonly line: Balance;
  readonly lineInput: LineInput;
  readonly leak: LeakNow;
  temperature: number;
  density: number;
  viscosity: number;
  setPoint: number;
  /** Fluid in the pan [m³], its mean depth, and how far the surface stands over the pickup's mouth [m]. */
  panVolume: number;
  panDepth: number;
  submergence: number;
  /** Gas share of what the pickup draws now (the suction passage follows later). */
  gasDrawn: number;
  /** Turbine torque that the weakest element of the gear can hold, and which one it is. */
  holds: number;
  weakest: number;
  lockUpHolds: number;
  leakFlow: number;
  film: number;
  /** Heat into the fluid [W]. */
  converterHeat: number;
  pumpHeat: number;
  gearHeat: number;
  lockUpHeat: number;
}

export function newNow(build: Build): Now {
  return {
    drive: newDrive(),
    line: stillBalance(),
    lineInput: lineInputFor(build),
    leak: closedLeak(),
    temperature: 0,
    density: 0,
    viscosity: 0,
    setPoint: 0,
    panVolume: 0,
    panDepth: 0,
    submergence: 0,
    gasDrawn: 0,
    holds: 0,
    weakest: 0,
    lockUpHolds: 0,
    leakFlow: 0,
    film: 0,
    converterHeat: 0,
    pumpHeat: 0,
    gearHeat: 0,
    lockUpHeat: 0,
  };
}

/** The balance's conditions as a record that is written anew each instant. */
export type LineInput = { -readonly [K in keyof BalanceConditions]: BalanceConditions[K] };

export function lineInputFor(build: Build): LineInput {
  return {
    pump: build.pump,
    clutch: build.clutchCircuit,
    circuit: build.cooler,
    spillTo: build.regulator.spill,
    turn: 0,
    gas: 0,
    inlet: atmosphere,
    inletLimit: Infinity,
    setPoint: 0,
    temperature: 0,
    viscosity: 0,
    pathViscosity: 0,
    density: 0,
    leakPlace: "none",
    leakViscous: 0,
    leakInertial: 0,
    leakViscosity: 0,
  };
}
