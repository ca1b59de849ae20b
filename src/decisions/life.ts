// The life of a part after Weibull: how many of its kind still hold at an age, and how soon the next gives way.
import logGamma from "@stdlib/math-base-special-gammaln";
import { fraction, notNegative, positive } from "../errors.ts";

/**
 * Life of a part: the age by which 63.2 % of its kind have failed, in whatever it ages by (kilometres, years, running hours:
 * all ages beside it in the same), and the shape: below 1 the young fail, at 1 age says nothing, above 1 the old fail.
 */
export interface WeibullLife {
  readonly scale: number;
  readonly shape: number;
}

export function checkLife({ scale, shape }: WeibullLife): void {
  positive("scale", scale);
  positive("shape", shape);
}

function check(life: WeibullLife, age: number): void {
  checkLife(life);
  notNegative("age", age);
}

/** (age/scale)^shape [-]: what has been spent by an age; its exponential, turned over, still holds. Source: Weibull (1951). */
export function spent(life: WeibullLife, age: number): number {
  check(life, age);
  return (age / life.scale) ** life.shape;
}

/** What an age and so much more of it spend beyond what the age had spent [-]: right where the two are close, too. */
export function spentBetween(life: WeibullLife, age: number, more: number): number {
  check(life, age);
  notNegative("more", more);
  const before = spent(life, age);
  if (more === 0) return 0;
  if (before === 0 || more > age) {
    const after = (age / life.scale + more / life.scale) ** life.shape;
    return after === Infinity ? Infinity : after - before;
  }
  const growth = Math.expm1(life.shape * Math.log1p(more / age));
  return growth === 0 ? 0 : before * growth;
}

/** Share of the kind that still holds at an age of 0 or more: exp(−(age/scale)^shape), from 1 down to 0. */
export function survival(life: WeibullLife, age: number): number {
  return Math.exp(-spent(life, age));
}

/** Share that has failed by an age: 1 − survival, to all digits where it is small. */
export function failedBy(life: WeibullLife, age: number): number {
  return -Math.expm1(-spent(life, age));
}

/** Of those that hold at an age, the share that holds for so much more: R(age + more)/R(age). */
export function survivalFrom(life: WeibullLife, age: number, more: number): number {
  return Math.exp(-spentBetween(life, age, more));
}

/** Of those that hold at an age, how many fail for each unit of it: (shape/scale)(age/scale)^(shape − 1). Infinity at 0 for a shape below 1. */
export function hazard(life: WeibullLife, age: number): number {
  check(life, age);
  if (life.shape === 1) return 1 / life.scale;
  return Math.exp(
    Math.log(life.shape) - Math.log(life.scale) + (life.shape - 1) * (Math.log(age) - Math.log(life.scale)),
  );
}

/** Share of the kind that fails at an age, for each unit of it: hazard times survival. */
export function failureDensity(life: WeibullLife, age: number): number {
  const holds = survival(life, age);
  return holds === 0 ? 0 : hazard(life, age) * holds;
}

/** Age by which a share of the kind has failed, from 0 to 1 (0.1: the B10 life): scale (−ln(1 − share))^(1/shape). Infinity for 1. */
export function ageByWhich(life: WeibullLife, share: number): number {
  checkLife(life);
  fraction("share", share);
  return life.scale * (-Math.log1p(-share)) ** (1 / life.shape);
}

/** Mean life: scale Γ(1 + 1/shape). */
export function meanLife(life: WeibullLife): number {
  checkLife(life);
  return life.scale * Math.exp(logGamma(1 + 1 / life.shape));
}

/** The life of a shape whose mean is told. */
export function lifeOfMean(mean: number, shape: number): WeibullLife {
  positive("mean", mean);
  positive("shape", shape);
  return { scale: mean * Math.exp(-logGamma(1 + 1 / shape)), shape };
}

/** Above this the series for what has been lived would leave the numbers; next to nobody is left by then. */
const NOBODY = 600;

/**
 * Mean time that the kind has been in use up to an age, failed ones to their failure: ∫₀^age R. Never more than the age or the
 * mean life. The lower incomplete gamma function of 1/shape by its series, all of whose terms add.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 6.5.29 (recalled).
 */
export function usedUpTo(life: WeibullLife, age: number): number {
  const x = spent(life, age);
  if (x >= NOBODY) return Math.min(age, meanLife(life));
  const a = 1 / life.shape;
  let [term, sum] = [1, 1];
  for (let n = 1; n < 5000 && term > 1e-17 * sum; n++) sum += term *= x / (a + n);
  return Math.min(age, age * (Math.exp(-x) * sum));
}

/**
 * Mean life that remains to those that hold at an age: ∫ R beyond it, over R(age). The mean life at age 0; it falls with age
 * for a shape above 1 and rises for one below. In old age by a continued fraction, so that no 0/0 is left.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 6.5.31 (recalled), in Legendre's contracted form.
 */
export function meanRemaining(life: WeibullLife, age: number): number {
  const x = spent(life, age);
  const a = 1 / life.shape;
  if (age === 0 || x === 0) return meanLife(life);
  if (x < a + 1) return Math.exp(x) * (meanLife(life) - usedUpTo(life, age));
  if (x === Infinity) return 0;
  // Lentz's way of working a continued fraction from its front.
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 5000; n++) {
    const over = n * (a - n);
    b += 2;
    d = 1 / (over * d + b);
    c = b + over / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return (age / life.shape) * value;
}
