// A seal that sets: the gap past it opens fast at first, then settles.
import { impossible } from "../../errors.ts";

/**
 * Clearance [m] past a seal after so many seconds of running: c₀ + (c₁ − c₀)(1 − e^(−t/τ)), from the first clearance
 * to the settled one [m] with a time constant [s]. A relaxation, as compression set of rubber follows (assumed form);
 * bounded by c₁, so the leak ends at a known size.
 */
export function sealClearance(
  first: number,
  settled: number,
  timeConstant: number,
  runningSeconds: number,
): number {
  if (!(first >= 0 && first < Infinity)) impossible("first", first, "0 m or more");
  if (!(settled >= 0 && settled < Infinity)) impossible("settled", settled, "0 m or more");
  if (!(timeConstant > 0 && timeConstant < Infinity))
    impossible("timeConstant", timeConstant, "more than 0 s");
  if (!(runningSeconds >= 0 && runningSeconds < Infinity))
    impossible("runningSeconds", runningSeconds, "0 s or more");
  return first - (settled - first) * Math.expm1(-runningSeconds / timeConstant);
}
