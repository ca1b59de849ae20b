import { impossible, notNegative, type Range } from "../../errors.ts";

/** The sum takes no notice of order; tests scatter widely about 1. */
export const minerRange: Range = {
  law: "Palmgren-Miner sum",
  quantity: "sum at failure",
  unit: "1",
  low: 0.3,
  high: 3,
  source: "Palmgren 1924, Miner 1945; scatter recalled",
};

/** A stretch of time and the life that the same conditions would give throughout, in one unit of time. */
export interface Stretch {
  readonly time: number;
  readonly life: number;
}

/** Share of life used [1]: sum of time over life; failure is expected at 1. Order does not matter. */
export function minerSum(stretches: readonly Stretch[]): number {
  let sum = 0;
  for (const { time, life } of stretches) {
    if (!(life > 0)) impossible("life", life, "more than 0, or Infinity for none used");
    notNegative("time", time);
    sum += time / life;
  }
  return sum;
}
