// The supply: inlet, pump, regulator and cooler circuit, and the pressure at which they meet.

export * from "../physics/supply/cooler-circuit.ts";
export * from "../physics/supply/inlet.ts";
export * from "../physics/supply/pump.ts";
export * from "../physics/supply/regulator.ts";
export * from "../physics/supply/root.ts";
export * from "../physics/supply/suction.ts";
export * from "../physics/supply/trim.ts";
