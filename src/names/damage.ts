// The damage: glaze, char and wear of a lining, the index made of them, and what the colour of a steel tells.

export * from "../physics/damage/arrhenius.ts";
export * from "../physics/damage/damage-index.ts";
export * from "../physics/damage/debris.ts";
export * from "../physics/damage/glaze.ts";
export * from "../physics/damage/insulation.ts";
export * from "../physics/damage/miner.ts";
export * from "../physics/damage/pyrolysis.ts";
export * from "../physics/damage/tempering.ts";
export * from "../physics/damage/tint.ts";
export * from "../physics/damage/wear.ts";
