// The heat: where slip heat goes, how hot plate, surface and sump become, what cooler and film take away.

export * from "../physics/heat/conduction.ts";
export * from "../physics/heat/convection.ts";
export * from "../physics/heat/cooler.ts";
export * from "../physics/heat/error-function.ts";
export * from "../physics/heat/flash.ts";
export * from "../physics/heat/interface.ts";
export * from "../physics/heat/lubrication.ts";
export * from "../physics/heat/partition.ts";
export * from "../physics/heat/plate.ts";
export * from "../physics/heat/slab.ts";
export { effusivity, separatorSteel, solid, wetPaper, type Solid } from "../physics/heat/solid.ts";
export * from "../physics/heat/sump-heat.ts";
