// Cycles that an uncracked line stands, until a crack starts: stress amplitude against number of cycles.
import { impossible, positive, type Range } from "../../errors.ts";

export const fatigueRange: Range = {
  law: "stress and number of cycles",
  quantity: "cycles",
  unit: "1",
  low: 1e3,
  high: 5e8,
  source: "rotating-beam and axial tests of wrought aluminium; lives scatter by a factor of 10 or more",
};

/** Amplitude [Pa] = coefficient [Pa] · N^−slope: a straight line on double logarithmic paper (Basquin 1910). */
export interface FatigueLine {
  readonly coefficient: number;
  readonly slope: number;
}

/** 6061-T6, reversed load: 705 MPa (2N)^−0.11. */
export const aluminium6061: FatigueLine = { coefficient: 705e6 * 2 ** -0.11, slope: 0.11 };

/** The line through two points (cycles, amplitude in Pa); for lack of tests, 0.9 of the strength at 10³ and the table value at 5·10⁸. */
export function fatigueLine(
  cycles1: number,
  amplitude1: number,
  cycles2: number,
  amplitude2: number,
): FatigueLine {
  positive("cycles1", cycles1);
  if (!(cycles2 > cycles1 && cycles2 < Infinity)) impossible("cycles2", cycles2, "more than the first");
  positive("amplitude2", amplitude2, "Pa");
  if (!(amplitude1 > amplitude2 && amplitude1 < Infinity))
    impossible("amplitude1", amplitude1, "more than the second");
  const slope = Math.log(amplitude1 / amplitude2) / Math.log(cycles2 / cycles1);
  return { coefficient: amplitude1 * cycles1 ** slope, slope };
}

function check(line: FatigueLine): void {
  positive("coefficient", line.coefficient, "Pa");
  positive("slope", line.slope);
}

/** Reversed stress amplitude [Pa] that is stood for so many cycles. */
export function fatigueStrength(line: FatigueLine, cycles: number): number {
  positive("cycles", cycles);
  check(line);
  return line.coefficient * cycles ** -line.slope;
}

/** Cycles that a reversed stress amplitude [Pa] is stood. */
export function fatigueCycles(line: FatigueLine, amplitude: number): number {
  positive("amplitude", amplitude, "Pa");
  check(line);
  return Math.min(Number.MAX_VALUE, (line.coefficient / amplitude) ** (1 / line.slope));
}

/**
 * Reversed stress amplitude [Pa] that 6061-T6 stands for so many cycles, mean of the data: 14 479 MPa/√N + 96.5 MPa.
 * Source: fit to published tests, reversed load, 10³ cycles and more (engineering reference page on aluminium fatigue, after Yahr).
 */
export function meanStrength6061(cycles: number): number {
  positive("cycles", cycles);
  return 14_479e6 / Math.sqrt(cycles) + 96.5e6;
}

const ksi = 6_894_757; // Pa

/**
 * Cycles that 6061-T6 stands between a largest stress [Pa] and its share R at the other end (−1 reversed, 0 pulsating):
 * log₁₀ N = 20.68 − 9.84 log₁₀ S_eq, S_eq = S_max(1 − R)^0.63 in ksi. Source: MIL-HDBK-5.
 */
export function cyclesBetween6061(largestStress: number, stressRatio: number): number {
  positive("largestStress", largestStress, "Pa");
  if (!(stressRatio >= -1 && stressRatio < 1)) impossible("stressRatio", stressRatio, "-1 to less than 1");
  const equivalent = (largestStress / ksi) * (1 - stressRatio) ** 0.63;
  return 10 ** Math.min(300, 20.68 - 9.84 * Math.log10(equivalent));
}
