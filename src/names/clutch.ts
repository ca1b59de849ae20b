// The clutch: what it carries at a pressure, how it fills and closes, and what it costs when it slips.

export * from "../physics/clutch/capacity.ts";
export * from "../physics/clutch/centrifugal.ts";
export * from "../physics/clutch/drag.ts";
export * from "../physics/clutch/engagement.ts";
export * from "../physics/clutch/fade.ts";
export * from "../physics/clutch/fill.ts";
export * from "../physics/clutch/friction.ts";
export * from "../physics/clutch/geometry.ts";
export * from "../physics/clutch/learned-fill.ts";
export * from "../physics/clutch/lockup.ts";
export * from "../physics/clutch/slip.ts";
