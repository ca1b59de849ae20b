import { describe, expect, it } from "vitest";
import type { Range } from "../../src/errors.ts";
import { arrheniusRange, arrheniusRate } from "../../src/physics/damage/arrhenius.ts";
import { capacityLeft, glazeLossRange } from "../../src/physics/damage/damage-index.ts";
import { glazeRange, glazeRate } from "../../src/physics/damage/glaze.ts";
import { iecAgeing, insulationRange } from "../../src/physics/damage/insulation.ts";
import { minerRange, minerSum } from "../../src/physics/damage/miner.ts";
import { charRate, pyrolysisRange } from "../../src/physics/damage/pyrolysis.ts";
import { hollomonJaffe, temperingRange } from "../../src/physics/damage/tempering.ts";
import { tintNumber, tintRange } from "../../src/physics/damage/tint.ts";
import { wearDepth, wearRange } from "../../src/physics/damage/wear.ts";

// Each law at both ends of its range and well outside it: a finite number every time.
const laws: readonly [Range, (x: number) => number][] = [
  [arrheniusRange, (T) => arrheniusRate(1e10, 1e5, T)],
  [glazeLossRange, (loss) => capacityLeft(0.5, 0, 0, 5e-4, loss)],
  [glazeRange, glazeRate],
  [insulationRange, iecAgeing],
  [minerRange, (sum) => minerSum([{ time: sum, life: 1 }])],
  [pyrolysisRange, charRate],
  [temperingRange, (T) => hollomonJaffe(T, 60)],
  [tintRange, (seconds) => tintNumber(550, seconds)],
  [wearRange, (w) => wearDepth(1e6, 0.05, w)],
];

describe("ranges of the damage laws", () => {
  it.each(laws.map(([range, law]) => ({ range, law })))("$range.law in $range.quantity", ({ range, law }) => {
    expect(range.low).toBeLessThan(range.high);
    expect(range.source.length).toBeGreaterThan(10);
    for (const x of [range.low, range.high, range.low / 10, 3 * range.high])
      expect(Number.isFinite(law(x))).toBe(true);
  });
});
