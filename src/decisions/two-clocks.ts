// A line that ages by two clocks at once: it tires by the distance driven and rusts by the calendar; what comes first ends it.
import { notNegative, positive } from "../errors.ts";
import { failsFirst, noneFails, type Joint } from "./joints.ts";
import { integralFromZero } from "./integral.ts";
import { ageByWhich, checkLife, type WeibullLife } from "./life.ts";

/**
 * Fatigue with its scale as a distance, corrosion with its scale as a time, the distance driven in a unit of that time (0: it
 * stands), and how many times faster it rusts here than where the corrosion life was recorded (1 when left out; salt).
 */
export interface TwoClocks {
  readonly fatigue: WeibullLife;
  readonly corrosion: WeibullLife;
  readonly distancePerTime: number;
  readonly exposure?: number;
}

/** Both as lives by the calendar, one after the other; no fatigue where nothing is driven. */
function byTime({ fatigue, corrosion, distancePerTime, exposure = 1 }: TwoClocks): WeibullLife[] {
  checkLife(fatigue);
  checkLife(corrosion);
  notNegative("distancePerTime", distancePerTime);
  positive("exposure", exposure);
  const within = (scale: number) => Math.min(Number.MAX_VALUE, Math.max(Number.MIN_VALUE, scale));
  const rusts = { shape: corrosion.shape, scale: within(corrosion.scale / exposure) };
  if (distancePerTime === 0) return [rusts];
  return [rusts, { shape: fatigue.shape, scale: within(fatigue.scale / distancePerTime) }];
}

const bothAt = (clocks: TwoClocks, age: number): Joint[] => {
  notNegative("age", age);
  return byTime(clocks).map((life) => ({ life, age }));
};

/** Share that still holds at an age by the calendar: the product of both. Independent mechanisms (NIST/SEMATECH e-Handbook 8.1.8.1). */
export function survivalOfBoth(clocks: TwoClocks, age: number): number {
  return noneFails(bothAt(clocks, 0), age);
}

/** Of those that hold at an age by the calendar, the share that holds for so much more time. */
export function survivalOfBothFrom(clocks: TwoClocks, age: number, more: number): number {
  return noneFails(bothAt(clocks, age), more);
}

/** What has become of the kind by an age. The three add up to 1, which nothing here enforces. */
export interface Causes {
  readonly holds: number;
  readonly fatigue: number;
  readonly corrosion: number;
}

/** Shares that hold at an age by the calendar, that failed by fatigue and by corrosion: ∫ h R by quadrature. */
export function causesBy(clocks: TwoClocks, age: number): Causes {
  notNegative("age", age);
  const { each, none } = failsFirst(bothAt(clocks, 0), age);
  return { holds: none, corrosion: each[0]!, fatigue: each[1] ?? 0 };
}

/** Of a failure at just this age, above 0, the share that is by fatigue: its part of the hazard. */
export function fatigueShareAt(clocks: TwoClocks, age: number): number {
  positive("age", age);
  const [rusts, tires] = byTime(clocks);
  if (tires === undefined) return 0;
  // By the ratio, as both may leave the numbers.
  const ratio = Math.exp(logHazard(rusts!, age) - logHazard(tires, age));
  return 1 / (1 + ratio);
}

const logHazard = ({ scale, shape }: WeibullLife, age: number) =>
  Math.log(shape) - Math.log(scale) + (shape - 1) * (Math.log(age) - Math.log(scale));

/** Spent so often over, a kind has one left in e^700. */
const NOBODY = 700;

/** Mean life by the calendar: ∫ R over all ages, by quadrature. */
export function meanLifeOfBoth(clocks: TwoClocks): number {
  const lives = byTime(clocks);
  const joints = lives.map((life) => ({ life, age: 0 }));
  // Nobody is left at the end; the scale that counts is that of the sooner one's own middle.
  const last = Math.min(...lives.map(({ scale, shape }) => scale * NOBODY ** (1 / shape)));
  if (!(last < Infinity)) return Infinity;
  const middle = Math.min(...lives.map((life) => ageByWhich(life, 0.3)));
  return integralFromZero((t) => noneFails(joints, t), last, 1, middle > 0 ? Math.min(1, middle / last) : 1);
}
