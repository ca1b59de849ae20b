// The leak: what a hole, crack or gap lets out, how it grows, what it looks like and where the fluid hides first.

export * from "../physics/leak/annulus.ts";
export * from "../physics/leak/crack.ts";
export * from "../physics/leak/drain-down.ts";
export * from "../physics/leak/drop.ts";
export * from "../physics/leak/fatigue-life.ts";
export * from "../physics/leak/film.ts";
export * from "../physics/leak/flow.ts";
export * from "../physics/leak/hiding.ts";
export * from "../physics/leak/hole.ts";
export * from "../physics/leak/paris.ts";
export * from "../physics/leak/pits.ts";
export * from "../physics/leak/power-growth.ts";
export * from "../physics/leak/regime.ts";
export * from "../physics/leak/rub-through.ts";
export * from "../physics/leak/seal-creep.ts";
export * from "../physics/leak/soak.ts";
export * from "../physics/leak/tube.ts";
