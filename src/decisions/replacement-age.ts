// At which age or distance to replace a part before it fails, and what that costs for each unit of it.
import { impossible, notNegative, positive } from "../errors.ts";
import { failedBy, hazard, meanLife, spent, usedUpTo, type WeibullLife } from "./life.ts";

/** What a replacement in time costs, and one after a failure with all its harm, in the user's own currency. */
export interface ReplacementPrices {
  readonly planned: number;
  readonly failure: number;
}

function check({ planned, failure }: ReplacementPrices): void {
  positive("planned", planned);
  positive("failure", failure);
}

/**
 * Cost for each unit of age where a part is replaced at an age above 0, or when it fails before: [c_p R + c_f F]/∫₀^age R, over
 * many parts. Source: Barlow and Proschan, Mathematical Theory of Reliability (1965), recalled.
 */
export function costRate(life: WeibullLife, age: number, prices: ReplacementPrices): number {
  check(prices);
  positive("age", age);
  const { planned, failure } = prices;
  const failed = failedBy(life, age);
  const used = usedUpTo(life, age);
  return used > 0 ? (planned * (1 - failed) + failure * failed) / used : Infinity;
}

/** Cost for each unit of age where nothing is replaced before it fails: c_f over the mean life. */
export function runToFailure(life: WeibullLife, prices: ReplacementPrices): number {
  check(prices);
  const mean = meanLife(life);
  return mean > 0 ? prices.failure / mean : Infinity;
}

export interface BestReplacement {
  /** Age at which to replace; null: never before it fails, which is then the cheapest. */
  readonly age: number | null;
  /** Cost for each unit of age there. */
  readonly costRate: number;
  readonly runToFailure: number;
}

/** With so much spent one in e^700 is left: an age that nobody reaches. */
const NOBODY = 700;

/**
 * The age at which to replace before failure: h(T)∫₀^T R − F(T) = c_p/(c_f − c_p), where C(T) = (c_f − c_p)h(T). There is none
 * (`age` null, a result) where the hazard does not rise (shape 1 or less), where a failure costs no more than a replacement in
 * time, or where it lies beyond all that live. Source: Barlow and Proschan, Mathematical Theory of Reliability (1965), recalled.
 */
export function bestReplacement(life: WeibullLife, prices: ReplacementPrices): BestReplacement {
  const never = runToFailure(life, prices);
  const { planned, failure } = prices;
  const toReach = planned / (failure - planned);
  const gain = (age: number) => hazard(life, age) * usedUpTo(life, age) - failedBy(life, age);
  // Sought by what has been spent by the age, over its logarithm; the gain rises with age for shapes above 1.
  const ageOf = (x: number) => life.scale * x ** (1 / life.shape);
  const oldest = ageOf(NOBODY);
  const none: BestReplacement = { age: null, costRate: never, runToFailure: never };
  if (!(
    life.shape > 1 &&
    failure > planned &&
    toReach > 0 &&
    oldest > 0 &&
    oldest < Infinity &&
    gain(oldest) > toReach
  ))
    return none;
  let [low, high] = [-700, Math.log(NOBODY)];
  for (let halving = 0; halving < 100; halving++) {
    const middle = 0.5 * (low + high);
    if (gain(ageOf(Math.exp(middle))) < toReach) low = middle;
    else high = middle;
  }
  const age = ageOf(Math.exp(high));
  if (!(age > 0)) return none;
  return { age, costRate: costRate(life, age, prices), runToFailure: never };
}

/** What one repair costs that leaves the part as old as it was, and the renewal at the end of the period. */
export interface RepairPrices {
  readonly renewal: number;
  readonly repair: number;
}

/**
 * Cost for each unit of age where a part is patched at each failure and renewed at an age above 0: [c_m (T/scale)^shape + c_p]/T.
 * Source: Barlow and Hunter, Operations Research 8 (1960) 90, recalled.
 */
export function costRateRepaired(life: WeibullLife, age: number, prices: RepairPrices): number {
  positive("age", age);
  positive("renewal", prices.renewal);
  notNegative("repair", prices.repair);
  const repairs = spent(life, age);
  return ((prices.repair === 0 ? 0 : prices.repair * repairs) + prices.renewal) / age;
}

/**
 * The age at which to renew what is patched at each failure: scale (c_p/(c_m(shape − 1)))^(1/shape). None (null) for a shape of 1
 * or less, or repairs for nothing. Source: Barlow and Hunter, Operations Research 8 (1960) 90, recalled.
 */
export function bestRenewal(
  life: WeibullLife,
  prices: RepairPrices,
): { readonly age: number; readonly costRate: number } | null {
  positive("renewal", prices.renewal);
  notNegative("repair", prices.repair);
  spent(life, 0);
  const { scale, shape } = life;
  if (!(shape > 1 && prices.repair > 0)) return null;
  const age = scale * (prices.renewal / (prices.repair * (shape - 1))) ** (1 / shape);
  if (!(age > 0 && age < Infinity))
    impossible("renewal over repair", prices.renewal / prices.repair, "a best age that is a number");
  return { age, costRate: costRateRepaired(life, age, prices) };
}
