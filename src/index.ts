// The public names. A case comes in with units and its origins, a history goes out in SI; every link is there alone as well:
//
//   import { clutch, planOf, readCase, simulate, sump } from "sumpfall";
//   const history = simulate(planOf(readCase(data)));
//   clutch.kissPressure(pack);
//   sump.airOnset(2e-4);
//
// tests/names.test.ts holds the whole list. Files are read by "sumpfall/files", which alone needs Node.

/** In: a case or a build as plain data; dates out again. */
export { readBuild, readCase, type Case } from "./inputs/case.ts";
export type { Entry, Opens } from "./inputs/moments.ts";
export { drivenBy, readVisit, visitDay, type ReadVisit } from "./inputs/visit.ts";
export { dateOf, planOf, volumeOf } from "./inputs/plan.ts";

/** Through: a history from before the first drip to its end, and the price of a pressure that fades. */
export {
  simulate,
  type ClutchFate,
  type Ending,
  type History,
  type Plan,
  type Progress,
  type TopUp,
} from "./history/simulate.ts";
export type { Towed } from "./history/towing.ts";
export { fadeSweep, gulpTime, type Cruise, type FadeRow } from "./history/fade.ts";
export { margins } from "./history/margin.ts";
export type { EventName, HistoryEvent } from "./history/watch.ts";
export { tripColumns, type CloseUp, type Look, type TripColumn, type TripRow } from "./history/record.ts";
export type { Closure, Ledger } from "./history/ledger.ts";

/** The same by averages over a prepared week, for thousands of histories. */
export * as duty from "./names/duty.ts";

/** The same backwards: from what was seen to when it began. */
export * as lookback from "./names/lookback.ts";

/** The same again and again, over all that the uncertain numbers of a case may be. */
export * as ensemble from "./names/ensemble.ts";

/** What follows: which parts to replace and when, how often to look, how clean a flush leaves it. */
export * as decisions from "./names/decisions.ts";

/** What a unit is. */
export type * from "./physics/build.ts";

/** The links, one by one, and all of them at one instant. */
export * as fluid from "./names/fluid.ts";
export * as leak from "./names/leak.ts";
export * as sump from "./names/sump.ts";
export * as supply from "./names/supply.ts";
export * as clutch from "./names/clutch.ts";
export * as heat from "./names/heat.ts";
export * as damage from "./names/damage.ts";
export * as load from "./names/load.ts";
export * as chain from "./names/chain.ts";

/** Around it: the driving, the bay, the units. */
export * as driving from "./names/driving.ts";
export * as bay from "./names/bay.ts";
export * as units from "./names/units.ts";

/** What can be wrong with an input, how far a law holds, where a number comes from. */
export { faultText, isCoded, type CodedError, type ErrorCode, type Fault, type Range } from "./errors.ts";
export { originText, type Origin, type OriginKind, type Sourced } from "./sources/origin.ts";
