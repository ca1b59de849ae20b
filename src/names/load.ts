// The load: road, gears, converter and engine.

export * from "../physics/load/converter.ts";
export * from "../physics/load/engine-cubic.ts";
export * from "../physics/load/engine.ts";
export * from "../physics/load/gears.ts";
export * from "../physics/load/planetary.ts";
export * from "../physics/load/road-regression.ts";
export * from "../physics/load/road.ts";
export * from "../physics/load/shift.ts";
export * from "../physics/load/stall.ts";
export * from "../physics/load/towed.ts";
export * from "../physics/load/two-sun-train.ts";
export * from "../physics/load/van-train.ts";
