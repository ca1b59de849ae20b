// What to do about it: how long parts live, which of them to replace and when, how often to look, how clean a flush leaves it.

export * from "../decisions/cleanliness.ts";
export * from "../decisions/fitted-life.ts";
export * from "../decisions/flushing.ts";
export * from "../decisions/inspection.ts";
export * from "../decisions/joints.ts";
export {
  ageByWhich,
  failedBy,
  failureDensity,
  hazard,
  lifeOfMean,
  meanLife,
  meanRemaining,
  spent,
  spentBetween,
  survival,
  survivalFrom,
  usedUpTo,
  type WeibullLife,
} from "../decisions/life.ts";
export * from "../decisions/plugging.ts";
export * from "../decisions/replacement-age.ts";
export * from "../decisions/two-clocks.ts";
export * from "../decisions/refill.ts";
export * from "../decisions/renewal.ts";
