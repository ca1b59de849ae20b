// A leak whose flow has grown as a power of its running time: what the loss says about its age.
import { impossible } from "../../errors.ts";

/** Powers of a hole, slot or hole-size law d ∝ tⁿ: flow goes as the square (orifice), cube (slot) or fourth (long hole) of size. */
export const flowPower = { orifice: 2, slot: 3, longHole: 4 } as const;

/**
 * Running seconds behind a lost volume [m³] when the flow now [m³/s] grew as t^p: (p + 1)V/Q. Choosing p moves the
 * answer by up to 5, so give an interval, never one date.
 */
export function runningTime(lost: number, flowNow: number, power: number): number {
  if (!(lost >= 0 && lost < Infinity)) impossible("lost", lost, "0 m³ or more");
  if (!(flowNow > 0 && flowNow < Infinity)) impossible("flowNow", flowNow, "more than 0 m³/s");
  if (!(power >= 0 && power < Infinity)) impossible("power", power, "0 or more");
  return ((power + 1) * lost) / flowNow;
}

/** Share of all the loss that fell in the last part (0 to 1) of the time, for flow growing as t^p: 1 − (1 − part)^(p+1). */
export function shareInLast(part: number, power: number): number {
  if (!(part >= 0 && part <= 1)) impossible("part", part, "0 to 1");
  if (!(power >= 0 && power < Infinity)) impossible("power", power, "0 or more");
  return 1 - (1 - part) ** (power + 1);
}
