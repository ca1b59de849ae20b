// How often to look for a fault that can be found for a while before it does its harm: the delay-time model.
import { fraction, impossible, notNegative, positive } from "../errors.ts";
import { integral, integralFromZero } from "./integral.ts";
import { checkLife, survival, type WeibullLife } from "./life.ts";

/**
 * The delay from when a fault could be found to when it has failed (for a leak: from wet enough to be seen to burnt), in the unit
 * in which looks are spaced: as the share of faults that last longer than so much delay, or as a sample, one for each history
 * (Infinity for one that would never fail).
 */
export type Delays =
  | { readonly kind: "survival"; readonly survival: (delay: number) => number }
  | { readonly kind: "sample"; readonly delays: readonly number[] };

/** Delays of which age tells nothing: pessimistic for a leak, which hardly ever burns a clutch in its first hour. */
export function exponentialDelays(mean: number): Delays {
  positive("mean", mean);
  return { kind: "survival", survival: (delay) => Math.exp(-delay / mean) };
}

/** Delays after Weibull; a shape of 2 or more has hardly any short ones. */
export function weibullDelays(life: WeibullLife): Delays {
  checkLife(life);
  return { kind: "survival", survival: (delay) => survival(life, delay) };
}

/** Share of faults that have not failed within a delay [0..1]. Errors: a law that answers no share. */
export function stillWaiting(delays: Delays, delay: number): number {
  if (!(delay >= 0)) impossible("delay", delay, "0 or more");
  if (delays.kind === "survival") {
    const share = delays.survival(delay);
    fraction("survival of the delay", share);
    return share;
  }
  checkSample(delays.delays);
  return delays.delays.filter((one) => one > delay).length / delays.delays.length;
}

function checkSample(delays: readonly number[]): void {
  if (delays.length === 0) impossible("delays", 0, "one delay or more");
  for (const delay of delays) if (!(delay >= 0)) impossible("delays", delay, "0 or more");
}

/** Looks beyond these are not taken one by one: what they find is spread over the time between them. */
const MANY_LOOKS = 2000;
/** A share is known no better than this. */
const ROUNDING = 1e-16;
/** What is left of a chance that no longer counts. */
const NOTHING = 1e-17;

/**
 * Share of faults that fail before a look finds them: looks an interval apart, above 0, each of which finds a fault that is there
 * with a probability `finds` (1: perfect), each time anew. A fault begins at any moment between two looks. With perfect looks
 * b = 1 − (1/T)∫₀^T S; else b = 1 − Σ r(1 − r)^(n−1) (1/T)∫ S over the n-th interval after it began. No fault at all is found with
 * `finds` 0. A sample is counted, fault by fault: one of (m + φ) intervals is missed with (1 − r)^m (1 − φr).
 * Holds for a steady state, faults that know nothing of each other, looks that do no harm.
 * Source: Christer and Waller, J. Opl Res. Soc. 35 (1984) 401, recalled; imperfect looks derived, and confirmed by simulation.
 */
export function shareThatFails(delays: Delays, interval: number, finds = 1): number {
  positive("interval", interval);
  fraction("finds", finds);
  if (delays.kind === "sample") {
    checkSample(delays.delays);
    const missed = delays.delays.map((delay) => missedBefore(delay / interval, finds));
    return missed.reduce((sum, share) => sum + share, 0) / missed.length;
  }
  if (finds === 0) return 1 - stillWaiting(delays, Number.MAX_VALUE);
  const failed = (delay: number) => 1 - stillWaiting(delays, delay);
  // The first look, over all scales; those after it one by one, until either all have failed or all are found.
  let sum = finds * (integralFromZero(failed, interval, 1, 1, ROUNDING * interval) / interval);
  let left = 1 - finds;
  for (let n = 1; left > NOTHING; n++) {
    const [from, to] = [n * interval, (n + 1) * interval];
    if (!(to < Infinity) || stillWaiting(delays, from) < NOTHING)
      return Math.min(1, sum + left * failed(from));
    if (n > MANY_LOOKS) {
      // Found evenly, −ln(1 − r) for each interval: as good as one by one when there are so many.
      const rate = -Math.log1p(-finds) / interval;
      const beyond = (delay: number) => failed(from + delay) * rate * Math.exp(-rate * delay);
      return Math.min(
        1,
        sum + left * integralFromZero(beyond, Math.min(40 / rate, Number.MAX_VALUE - from), 1, 1, ROUNDING),
      );
    }
    sum += left * finds * integral((u) => failed(from + u * interval), 0, 1, 1, ROUNDING);
    left *= 1 - finds;
  }
  return Math.min(1, sum);
}

/** Probability that a fault which fails after so many intervals was not found before, begun anywhere in the first. */
function missedBefore(intervals: number, finds: number): number {
  if (intervals === Infinity) return 0;
  const whole = Math.floor(intervals);
  return (whole === 0 ? 1 : (1 - finds) ** whole) * (1 - (intervals - whole) * finds);
}

/** How many faults begin in each unit of distance or time, and what a failure, a fault found in time and a look cost, in the user's own currency. */
export interface InspectionPrices {
  readonly faults: number;
  readonly failure: number;
  readonly found: number;
  readonly look: number;
}

function check({ faults, failure, found, look }: InspectionPrices): void {
  notNegative("faults", faults);
  notNegative("failure", failure);
  notNegative("found", found);
  notNegative("look", look);
}

/** Cost for each unit of distance or time with looks an interval apart: [λT(c_b b + c_i(1 − b)) + c_I]/T. Source as `shareThatFails`. */
export function inspectionCost(
  delays: Delays,
  interval: number,
  prices: InspectionPrices,
  finds = 1,
): number {
  check(prices);
  const fails = shareThatFails(delays, interval, finds);
  return prices.faults * (prices.failure * fails + prices.found * (1 - fails)) + prices.look / interval;
}

/** Cost for each unit of distance or time where nobody looks: every fault that can fail does. */
export function neverLooking(delays: Delays, prices: InspectionPrices): number {
  check(prices);
  return prices.faults * prices.failure * (1 - stillWaiting(delays, Number.MAX_VALUE));
}

export interface BestInterval {
  /** Distance or time between looks; null: better never. */
  readonly interval: number | null;
  readonly costRate: number;
  readonly failing: number;
  readonly neverLooking: number;
}

const GRID = 160;
/** Share of faults that may last longer than the longest interval looked at. */
const LAST = 1e-12;

/**
 * The interval between looks that costs least, between the one whose looks alone cost all that they could save and the one by
 * which all faults have failed. None (`interval` null, a result) where looking saves nothing. Found on a grid in the logarithm and
 * narrowed down by golden section: good to 1e-7 of the interval, and to rounding in the cost. A look has a price above 0.
 */
export function bestInterval(delays: Delays, prices: InspectionPrices, finds = 1): BestInterval {
  check(prices);
  positive("look", prices.look);
  fraction("finds", finds);
  const never = neverLooking(delays, prices);
  const none: BestInterval = {
    interval: null,
    costRate: never,
    failing: 1 - stillWaiting(delays, Number.MAX_VALUE),
    neverLooking: never,
  };
  const shortest = prices.look / (prices.faults * (prices.failure - prices.found));
  if (!(shortest > 0 && shortest < Infinity && finds > 0)) return none;
  let longest = shortest;
  while (longest < 1e300 && stillWaiting(delays, longest) > LAST) longest *= 2;
  if (!(longest > shortest)) return none;
  const cost = (logInterval: number) => inspectionCost(delays, Math.exp(logInterval), prices, finds);
  const [low, high] = [Math.log(shortest), Math.log(longest)];
  const step = (high - low) / GRID;
  let best = 0;
  let least = Infinity;
  for (let i = 0; i <= GRID; i++) {
    const here = cost(low + i * step);
    if (here < least) [least, best] = [here, i];
  }
  const at = goldenSection(cost, low + Math.max(0, best - 1) * step, low + Math.min(GRID, best + 1) * step);
  const interval = Math.exp(at);
  const rate = cost(at);
  if (!(rate < never)) return none;
  return { interval, costRate: rate, failing: shareThatFails(delays, interval, finds), neverLooking: never };
}

/** Where a function with one valley between two places is lowest. */
function goldenSection(f: (x: number) => number, from: number, to: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [left, right] = [high - ratio * (high - low), low + ratio * (high - low)];
  let [atLeft, atRight] = [f(left), f(right)];
  for (let turn = 0; turn < 60; turn++) {
    if (atLeft < atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - ratio * (high - low);
      atLeft = f(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + ratio * (high - low);
      atRight = f(right);
    }
  }
  return 0.5 * (low + high);
}

/**
 * Share of the time that a vehicle stands, for looks an interval of time apart: [λT d_b b + d_m]/(T + d_m), with the faults that
 * begin in each unit of time, how long it stands for a failure and for a look. Source as `shareThatFails`.
 */
export function downtime(
  delays: Delays,
  interval: number,
  stands: { readonly faults: number; readonly failure: number; readonly look: number },
  finds = 1,
): number {
  notNegative("faults", stands.faults);
  notNegative("failure", stands.failure);
  notNegative("look", stands.look);
  const fails = shareThatFails(delays, interval, finds);
  const whole = interval + stands.look;
  return stands.faults * stands.failure * fails * (interval / whole) + stands.look / whole;
}
