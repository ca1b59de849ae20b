// The bay: what a technician measures on a unit at any shortage of fluid, beside the bands in which a sound one lies.

export * from "../bay/at-the-leak.ts";
export { bands, type Band } from "../bay/bands.ts";
export * from "../bay/bay-card.ts";
export type { BayRow, Reading, ValueKind, Verdict } from "../bay/bay-row.ts";
export * from "../bay/card-text.ts";
export * from "../bay/cooler-flow-test.ts";
export * from "../bay/engagement-test.ts";
export * from "../bay/launch-test.ts";
export * from "../bay/level-checks.ts";
export * from "../bay/line-pressure-test.ts";
