// Looking back: what a visit's evidence says of when a leak opened, whether it was the leak, and what it has ruined.

export { lookBack, lookBackHands, type LookBackOptions } from "../lookback/lookback.ts";
export type { Hand } from "../hands/hands.ts";
export { earlyAnswer, type EarlyAnswer } from "../lookback/early.ts";
export { answerOf, type Answer, type CauseAnswer, type LookAnswer } from "../lookback/answer/answer.ts";
export type { EventAnswer } from "../lookback/answer/events.ts";
export type { MissingAnswer } from "../lookback/answer/missing.ts";
export type { ClutchAnswer } from "../lookback/answer/clutches.ts";
export type { UnknownAnswer } from "../lookback/answer/unknowns.ts";
export type { Ahead, Parting } from "../lookback/answer/ahead.ts";
export type { RuinedAnswer } from "../lookback/answer/ruined.ts";
export type { Trust } from "../lookback/answer/trust.ts";
export type { Conflict, Posterior, Run, Weighed } from "../lookback/posterior.ts";
export { airOf } from "../lookback/air.ts";
export type { Site, Visit } from "../lookback/visit.ts";
export type * from "../lookback/evidence.ts";
export {
  believedCauses,
  explanationsOf,
  type Beliefs,
  type CauseName,
  type Explanation,
} from "../lookback/causes.ts";
export { findings, findsLeak, type Finding } from "../lookback/finding.ts";
export { comingLeaks, delaysUntilHarm, type ComingLeak, type ComingOptions } from "../lookback/coming.ts";
export { looksAhead, type LookAhead } from "../lookback/looks-ahead.ts";

/** The statistics alone: any question of unknown numbers with beliefs and a likelihood. */
export { column, type Draws, type Problem, type Unknown } from "../lookback/sampler/problem.ts";
export {
  temperedAnswer,
  type SamplerOptions,
  type Step,
  type TemperedAnswer,
} from "../lookback/sampler/tempered.ts";
export { exactAnswer, exactQuantile, type ExactAnswer } from "../lookback/sampler/exact.ts";
export { paretoSmoothed, trustedShape, type Smoothed } from "../lookback/sampler/pareto.ts";
export { effectiveSize } from "../lookback/sampler/weights.ts";
export { varianceAfter, varianceAfterYesNo, type Measuring } from "../lookback/answer/next-look.ts";
export * from "../lookback/answer/spread.ts";
export * from "../lookback/answer/words.ts";
export * from "../chance/belief.ts";
export * from "../chance/normal.ts";
export * from "../chance/terms.ts";
