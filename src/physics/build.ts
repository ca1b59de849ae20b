// What a unit is: every part that the chain reads, in SI, as plain data.
// The types of the parts live with their links; here they are put together.

import type { Clutch } from "./clutch/geometry.ts";
import type { Lockup } from "./clutch/lockup.ts";
import type { Lubrication } from "./heat/lubrication.ts";
import type { Fluid } from "./fluid/fluid.ts";
import type { HidingPlace } from "./leak/hiding.ts";
import type { Converter } from "./load/converter.ts";
import type { EngineLine } from "./load/engine.ts";
import type { Vehicle } from "./load/road.ts";
import type { ShiftPlan } from "./load/shift.ts";
import type { Pan } from "./sump/pan.ts";
import type { Pickup } from "./sump/pickup.ts";
import type { CoolerCircuit } from "./supply/cooler-circuit.ts";
import type { Inlet } from "./supply/inlet.ts";
import type { Pump } from "./supply/pump.ts";
import type { ClutchCircuit, Regulator } from "./supply/regulator.ts";

/** Where the fluid is besides the pan [m³], and how fast it comes back. */
export interface HoldUp {
  readonly converter: number;
  /** Share of the converter's fluid that drains to the pan in the end while parked; 0 with a drain-back valve. */
  readonly converterDrains: number;
  readonly converterDrainTime: number;
  readonly coolerAndLines: number;
  readonly passages: number;
  readonly passagesDrain: number;
  readonly passagesDrainTime: number;
  /** Time for thrown-off fluid to find its way back to the pan [s] at the viscosity `hotViscosity` [Pa·s]. */
  readonly hotReturnTime: number;
  readonly hotViscosity: number;
  /** Return time grows as (viscosity / hot viscosity) to this power; unpublished, 0.3 to 0.5. */
  readonly returnExponent: number;
  /** Volume of the suction passage between pickup and pump. */
  readonly suction: number;
}

/** One gear: its ratio (from tooth counts; negative backs up) and the torque at each holding element as a share of turbine torque. */
export interface Gear {
  readonly name: string;
  readonly ratio: number;
  readonly holds: readonly { readonly clutch: number; readonly share: number }[];
}

/** The converter's lock-up clutch and what the controller does with it. */
export interface LockUp {
  readonly clutch: Lockup;
  /** Lowest gear that may lock (index into gears), road speeds to lock and to let go, least fluid temperature. */
  readonly fromGear: number;
  readonly onAbove: number;
  readonly offBelow: number;
  readonly fluidAbove: number;
  /** Slip that the controller holds while it can [rad/s]. */
  readonly heldSlip: number;
  /** What the controller does when the fluid is hotter than `hot` [K]. */
  readonly whenHot: "holds" | "releases";
  readonly hot: number;
}

/** How the controller makes a shift, and what it learns. */
export interface ShiftControl {
  readonly targetTime: number;
  readonly trimGain: number;
  readonly trimLimit: number;
  /** Share of a late fill that the next shift into the same clutch makes up for by beginning earlier, and the most that it may [s]. */
  readonly fillGain: number;
  readonly fillLimit: number;
  /** Inertia of the turbine and what turns with it [kg m²]; the engine's and impeller's is the engine's own. */
  readonly turbineInertia: number;
}

export interface Sump {
  readonly pan: Pan;
  readonly pickup: Pickup;
  readonly sloshDamping: number;
  /** Where the dipstick stands and the depths of its two marks for hot idling; where the overflow tube stands and its height [m]. */
  readonly stick: { readonly x: number; readonly y: number; readonly low: number; readonly full: number };
  readonly overflow: { readonly x: number; readonly y: number; readonly height: number };
}

export interface Heat {
  /** Metal that warms with the fluid [J/K]. */
  readonly metal: number;
  /** Case to air [W/K]: standing, and per m/s of road speed. */
  readonly caseStill: number;
  readonly casePerSpeed: number;
  readonly coolerConductance: number;
  /** Heat capacity flow of the coolant through the cooler [W/K], its warm temperature and the times it takes to warm and to cool. */
  readonly coolantFlowCapacity: number;
  readonly coolantWarm: number;
  readonly coolantWarmTime: number;
  readonly coolantCoolTime: number;
  /** Film on the open clutch plates by lubrication flow. */
  readonly lubrication: Lubrication;
}

/** What heat does to the linings: nobody has published these numbers for linings in fluid, so they are inputs with ranges. */
export interface LiningDamage {
  /** Wear depth per energy and area [m³/J]. */
  readonly wearPerEnergy: number;
  /** Share of the friction that full glazing takes. */
  readonly glazeLoss: number;
  /** Rate of charring against the published pyrolysis rate. */
  readonly charFactor: number;
}

export interface Build {
  readonly name: string;
  /** Correct fill, as a volume [m³] at `fillTemperature` [K]. */
  readonly fill: number;
  readonly fillTemperature: number;
  readonly holdUp: HoldUp;
  readonly sump: Sump;
  readonly pump: Pump;
  readonly inlet: Inlet;
  readonly regulator: Regulator;
  readonly clutchCircuit: ClutchCircuit;
  readonly cooler: CoolerCircuit;
  readonly clutches: readonly Clutch[];
  readonly lockUp: LockUp;
  readonly gears: readonly Gear[];
  readonly reverse: Gear;
  readonly finalRatio: number;
  readonly gearEfficiency: number;
  readonly shiftPlan: ShiftPlan;
  readonly shiftControl: ShiftControl;
  readonly converter: Converter;
  readonly engine: EngineLine;
  readonly vehicle: Vehicle;
  readonly heat: Heat;
  readonly damage: LiningDamage;
  /** Turbine torque against which the rated margin of every clutch is counted [N m]. */
  readonly ratedTurbineTorque: number;
}

/**
 * Where it leaks: at the end of the supply or of the return line; through the pan, or past the rail that the pan hangs on; past
 * the seal of a shaft. Pan and rail leak by the head over them, always; lines and seals by the circuit's pressure while running,
 * parked by what stands over them.
 */
export type LeakPlace = "supply-line" | "return-line" | "pan" | "pan-seam" | "shaft-seal";

/** A leak that keeps its size. */
export interface Hole {
  readonly kind: "hole";
  readonly diameter: number;
  readonly wall: number;
}

/** A fitting whose seal creeps: an eccentric annulus whose clearance tends to a final one. */
export interface CreepingSeal {
  readonly kind: "seal";
  readonly diameter: number;
  readonly length: number;
  readonly eccentricity: number;
  readonly clearance: number;
  readonly finalClearance: number;
  /** Running time to 63 % of the way [s]. */
  readonly creepTime: number;
}

/** A fatigue crack through the wall of a line: it grows with running time until the line parts. */
export interface FatigueCrack {
  readonly kind: "crack";
  readonly halfLength: number;
  readonly partsAt: number;
  /** Running time from the first length to parted [s]. */
  readonly partsAfter: number;
  readonly parisExponent: number;
  readonly wall: number;
  readonly tubeRadius: number;
  readonly modulus: number;
  readonly poisson: number;
  /** Bending stress that opens it while running [Pa]; the pressure adds its own. */
  readonly bendingStress: number;
  /** Opening that stays without stress (rough faces, corrosion) [m]. */
  readonly restGap: number;
}

/**
 * A corrosion pit that has come through the wall: its mouth widens with the time by the calendar, for rust goes on in the
 * parked vehicle as long as it is damp, whether the engine runs or not.
 */
export interface CorrosionPit {
  readonly kind: "pit";
  /** Width of the mouth [m] at one time [s] after the wall was through, and the exponent of its growth. */
  readonly diameter: number;
  readonly after: number;
  readonly exponent: number;
  readonly wall: number;
  /** Bore of the line, at which it ends; on the pan the width of the rusted patch [m]. */
  readonly bore: number;
  /**
   * Half the pit's width over its depth (1: half a ball). Given, the mouth is the circle that the wall's far face cuts from the
   * pit as it deepens, a hole with an edge and no wall; left out, the mouth itself widens by the power of time, through the wall.
   */
  readonly aspect?: number;
}

/** A line that something has rubbed through: a flat across the tube that goes deeper with running time, from through on. */
export interface RubbedFlat {
  readonly kind: "rub";
  readonly tubeRadius: number;
  readonly wall: number;
  /** Length of the contact along the line [m]. */
  readonly contact: number;
  /** Depth that a hundred running hours rub off the new tube [m]. */
  readonly depthInHundredHours: number;
}

/** A gap that keeps its size: a warped rail, a gasket that has shrunk. Length and height of the gap, and its depth along the flow [m]. */
export interface Slot {
  readonly kind: "slot";
  readonly length: number;
  readonly gap: number;
  readonly depth: number;
}

export type LeakOpening = Hole | Slot | CreepingSeal | FatigueCrack | CorrosionPit | RubbedFlat;

export interface Leak {
  readonly place: LeakPlace;
  readonly opening: LeakOpening;
  /** Height of the hole above the pan floor [m]. */
  readonly height: number;
  /** Where in the pan's rail a seam leaks, as places in the pan are counted [m]. */
  readonly x: number;
  readonly y: number;
  /** What stands behind a shaft's seal while running: the front one converter charge, the one at the output lubrication. */
  readonly fedBy: "converter-outlet" | "lubrication";
  /** Fluid in the line above the hole that can reach it when parked [m³], and the height of that column [m]; none with a drain-back valve. */
  readonly lineAbove: number;
  readonly columnHeight: number;
  readonly dripRadius: number;
  readonly hiding: HidingPlace;
}

/** What the driver does about what he feels; a top-up comes at the end of the trip, cold from the bottle. */
export type Reaction =
  | { readonly does: "carries on" }
  | { readonly does: "stops" }
  /** Drives on along his schedule for a distance [m], then stops. */
  | { readonly does: "drives home"; readonly distance: number }
  /** Adds a volume [m³ as it is poured], or what the stick lacks to its full mark, at a temperature [K]; the air's when left out. */
  | { readonly does: "tops up"; readonly volume: number | "to the full mark"; readonly temperature?: number };

/** What the driver does. */
export interface Driver {
  /** Pedal added per m/s that the vehicle lags behind the schedule. */
  readonly pressOn: number;
  /** Share of the pedal kept while a clutch is felt slipping (1: keeps it all). */
  readonly easeOff: number;
  readonly whenBehind: "carries on" | "stops";
  readonly atFirstFlare: Reaction;
  readonly atFirstSlip: Reaction;
}

/** Air temperature over the year: mean and half the swing, coldest in mid January [K]. */
export interface Surroundings {
  readonly meanTemperature: number;
  readonly yearlySwing: number;
}

export interface Unit {
  readonly build: Build;
  readonly fluid: Fluid;
  readonly leak: Leak | null;
  readonly driver: Driver;
  readonly surroundings: Surroundings;
}
