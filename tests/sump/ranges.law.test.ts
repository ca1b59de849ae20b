import { describe, expect, it } from "vitest";
import type { Range } from "../../src/errors.ts";
import { bubbleRange, bubbleRise } from "../../src/physics/sump/bubbles.ts";
import { airOnset, airOnsetRange } from "../../src/physics/sump/pickup.ts";
import { sloshEnvelope, staticTiltRange } from "../../src/physics/sump/slosh.ts";
import { submergenceByBell, submergenceRange } from "../../src/physics/sump/submergence.ts";

// Each law at both ends of its range and well outside it: a finite number every time.
const laws: readonly [Range, (x: number) => number][] = [
  // A bubble whose Stokes speed gives this Reynolds number in hot fluid.
  [
    bubbleRange,
    (reynolds) => bubbleRise(Math.cbrt((reynolds * 18 * 0.007 ** 2) / (830 ** 2 * 9.81)), 0.007, 830),
  ],
  // A flow whose onset lies at this many radii of a mouth of 15 mm.
  [airOnsetRange, (radii) => airOnset(Math.sqrt(9.81 * ((radii * 0.015) / 0.69) ** 5))],
  [staticTiltRange, (ratio) => sloshEnvelope(0, ratio * 4, 0.1, 4, 0.2)],
  [submergenceRange, (reynolds) => submergenceByBell(0.1, (reynolds * Math.PI * 0.1 * 1e-6) / 4)],
];

describe("ranges of the sump's laws", () => {
  it.each(laws.map(([range, law]) => ({ range, law })))("$range.law in $range.quantity", ({ range, law }) => {
    expect(range.low).toBeLessThan(range.high);
    expect(range.source.length).toBeGreaterThan(10);
    for (const x of [range.low, range.high, 10 * range.high]) expect(Number.isFinite(law(x))).toBe(true);
  });
});
