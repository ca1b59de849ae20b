// Several joints or lines side by side, each of its own age: which gives way first, and whether to replace one of them or all.
import { impossible, notNegative } from "../errors.ts";
import { integralFromZero } from "./integral.ts";
import { checkLife, hazard, spentBetween, type WeibullLife } from "./life.ts";

/** A joint that holds now: its kind's life, and its age in the same unit. */
export interface Joint {
  readonly life: WeibullLife;
  readonly age: number;
}

const spentByAll = (joints: readonly Joint[], within: number) =>
  joints.reduce((sum, { life, age }) => sum + spentBetween(life, age, within), 0);

/** Probability that none of the joints fails within so much more age, each failing for itself: the product of their own. 1 for no joints. */
export function noneFails(joints: readonly Joint[], within: number): number {
  notNegative("within", within);
  return Math.exp(-spentByAll(joints, within));
}

/** Probability that at least one of them does: 1 − `noneFails`, to all digits where it is small. */
export function someFails(joints: readonly Joint[], within: number): number {
  notNegative("within", within);
  return -Math.expm1(-spentByAll(joints, within));
}

/** What is left beyond this has no weight in seventeen digits. */
const GONE = 45;

/** An age at which so much has been spent, from above: sought by doubling and halving. */
function whenSpent(joints: readonly Joint[], amount: number, within: number): number {
  if (spentByAll(joints, within) <= amount) return within;
  let [low, high] = [0, within];
  for (let turn = 0; turn < 2200 && high - low > 0.25 * high; turn++) {
    // By the square root across decades, by the middle once within one.
    const middle =
      low === 0 ? high / 1024 : high / low > 4 ? Math.sqrt(low) * Math.sqrt(high) : 0.5 * (low + high);
    if (middle === 0) break;
    if (spentByAll(joints, middle) <= amount) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Probability, for each joint, that it fails within so much more age and before all the others, in their order, and that none
 * does. ∫ h_i(age_i + x) Π R by quadrature, to eleven digits and more for shapes of 0.1 up; the shares and `none` add up to 1,
 * which nothing here enforces.
 * Source: competing risks, NIST/SEMATECH e-Handbook 8.1.8.1: independent, and the first to finish wins.
 */
export function failsFirst(
  joints: readonly Joint[],
  within: number,
): { readonly each: readonly number[]; readonly none: number } {
  const none = noneFails(joints, within);
  const end = whenSpent(joints, GONE, within);
  const typical = whenSpent(joints, 1, within);
  const each = joints.map((one) => {
    const power = one.age === 0 ? Math.min(1, one.life.shape) : 1;
    return integralFromZero(
      (x) => {
        const holds = Math.exp(-spentByAll(joints, x));
        return holds === 0 ? 0 : Math.min(Number.MAX_VALUE, hazard(one.life, one.age + x)) * holds;
      },
      end,
      power,
      end > 0 ? typical / end : 1,
    );
  });
  return { each, none };
}

/** Life of a set of so many joints of one kind and one age, until its first fails: the same shape, scale · count^(−1/shape). */
export function lifeOfSet(life: WeibullLife, count: number): WeibullLife {
  checkLife(life);
  if (!(Number.isInteger(count) && count >= 1)) impossible("count", count, "a whole number, 1 or more");
  return { shape: life.shape, scale: Math.max(Number.MIN_VALUE, life.scale * count ** (-1 / life.shape)) };
}

/** What a replacement costs, in the user's own currency: a part, the labour of a visit whatever is done in it, and what a later failure harms beside. */
export interface JointPrices {
  readonly part: number;
  readonly visit: number;
  readonly harm: number;
}

export interface OneOrSet {
  /** Probability of another failure within the time looked at, with the one that failed replaced, or with all. */
  readonly againAfterOne: number;
  readonly againAfterSet: number;
  /** Expected cost of both, now and of the first return. */
  readonly one: number;
  readonly set: number;
  /** Price of a part under which the set is cheaper: 0 where it never is, Infinity where it always is. */
  readonly tippingPart: number;
}

/**
 * One joint has failed: replace it alone, or the others that still hold with it? New parts have the life `fresh`. Expected cost
 * up to the first return within so much more age: part · replaced + visit + P(again)(part + visit + harm). A second return is
 * left out, so the horizon is one within which that is rare; so is what the labour of more joints costs more in the same visit.
 * Errors: nothing else in the set, a price below 0.
 */
export function oneOrSet(
  others: readonly Joint[],
  fresh: WeibullLife,
  within: number,
  prices: JointPrices,
): OneOrSet {
  if (others.length === 0) impossible("others", 0, "one other joint or more");
  notNegative("part", prices.part);
  notNegative("visit", prices.visit);
  notNegative("harm", prices.harm);
  const one: Joint = { life: fresh, age: 0 };
  const againAfterOne = someFails([...others, one], within);
  const againAfterSet = someFails([...others.map(() => one), one], within);
  const ofReturn = prices.part + prices.visit + prices.harm;
  const saved = againAfterOne - againAfterSet;
  const worth = saved * (prices.visit + prices.harm);
  return {
    againAfterOne,
    againAfterSet,
    one: prices.part + prices.visit + againAfterOne * ofReturn,
    set: (1 + others.length) * prices.part + prices.visit + againAfterSet * ofReturn,
    tippingPart: worth > 0 ? worth / (others.length - saved) : 0,
  };
}
