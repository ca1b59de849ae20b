// The fluid: viscosity, density, heat capacity, surface tension, air in it and what age does. Every link reads it.

export * from "../physics/fluid/aerated.ts";
export * from "../physics/fluid/ageing.ts";
export * from "../physics/fluid/density.ts";
export * from "../physics/fluid/fluid.ts";
export * from "../physics/fluid/pressure.ts";
export * from "../physics/fluid/solubility.ts";
export * from "../physics/fluid/specific-heat.ts";
export * from "../physics/fluid/surface-tension.ts";
export * from "../physics/fluid/surroundings.ts";
export * from "../physics/fluid/viscosity-index.ts";
export * from "../physics/fluid/viscosity.ts";
