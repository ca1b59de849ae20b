// The load: road, gears, converter and engine.

export * from "../physics/load/converter.ts";
export * from "../physics/load/engine-cubic.ts";
export * from "../physics/load/engine.ts";
export * from "../physics/load/gears.ts";
export {
  assemblyFaults,
  checkDualSun,
  directRatio,
  dualFirstRatio,
  dualOverdriveRatio,
  dualReverseRatio,
  dualSecondRatio,
  overdriveRatio,
  planetTeeth,
  reverseRatio,
  ringHeldRatio,
  sunHeldRatio,
  type DualSunSet,
  type PlanetarySet,
} from "../physics/load/planetary.ts";
export * from "../physics/load/road-regression.ts";
export { gradeAngle, gravity, roadForce, roadForceRange, type Vehicle } from "../physics/load/road.ts";
export * from "../physics/load/shift.ts";
export * from "../physics/load/stall.ts";
export * from "../physics/load/towed.ts";
export * from "../physics/load/two-sun-train.ts";
export * from "../physics/load/van-train.ts";
