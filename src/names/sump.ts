// The sump: where the fluid stands in the pan, what is elsewhere, what the pickup draws and what a level check reads.

export * from "../physics/sump/bubbles.ts";
export * from "../physics/sump/holdup.ts";
export * from "../physics/sump/level.ts";
export * from "../physics/sump/pan.ts";
export * from "../physics/sump/pickup.ts";
export * from "../physics/sump/slosh.ts";
export * from "../physics/sump/submergence.ts";
export * from "../physics/sump/tapered-pan.ts";
export * from "../physics/sump/tilt.ts";
