// A cooler that plugs: shares that add up, bounds in order, resistances that add, deposits that close a bore.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  blockedAtLeast,
  blockedByChance,
  flowLeft,
  flowLeftInLine,
  flowPastDepositInSlot,
  flowPastDepositInTube,
  meanPressureTimes,
  openAfterPieces,
  passageRange,
  pressureTimes,
  slotPassage,
  tubePassage,
} from "../../src/decisions/plugging.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

const blocked = fc
  .integer({ min: 1, max: 200 })
  .chain((n) => fc.tuple(fc.constant(n), fc.integer({ min: 0, max: n })));

describe("blocked passages", () => {
  it("leave their flow, or take its reverse in pressure", () => {
    fc.assert(
      fc.property(blocked, ([n, m]) => {
        if (m < n) expect(flowLeft(n, m) * pressureTimes(n, m)).toBeCloseTo(1, 12);
        else expect([flowLeft(n, m), pressureTimes(n, m)]).toEqual([0, Infinity]);
      }),
    );
  });

  it("are hidden by a line that resists much, and plain without one", () => {
    fc.assert(
      fc.property(blocked, decades(-3, 3), ([n, m], ratio) => {
        const left = flowLeftInLine(ratio, 1, n, m);
        expect(flowLeftInLine(0, 1, n, m)).toBeCloseTo(flowLeft(n, m), 12);
        expect(left).toBeGreaterThanOrEqual(flowLeft(n, m) - 1e-12);
        expect(flowLeftInLine(1e300, 1e-300, n, m)).toBe(m === n ? 0 : 1);
        // Line and cooler in series take the whole pressure between them.
        if (m < n) expect(left * (ratio + pressureTimes(n, m))).toBeCloseTo(ratio + 1, 9);
      }),
    );
  });

  it("by chance are some number for sure, so many in the mean, so widely spread", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3000 }), between(0, 1), (n, p) => {
        const law = blockedByChance(n, p);
        const sum = (f: (k: number) => number) =>
          law.probabilities.reduce((all, share, k) => all + share * f(k), 0);
        expect(sum(() => 1)).toBeCloseTo(1, 11);
        expect(sum((k) => k) - law.mean).toBeCloseTo(0, 8);
        expect(sum((k) => (k - law.mean) ** 2) - law.deviation ** 2).toBeCloseTo(0, 6);
        expect(blockedAtLeast(law, 0)).toBeCloseTo(1, 11);
        expect(blockedAtLeast(law, n + 1)).toBe(0);
        if (n < 500 && p < 1) expect(law.probabilities[0]).toBeCloseTo((1 - p) ** n, 12);
      }),
    );
  });

  it("take more pressure in the mean than the mean number does", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 100 }), between(0.001, 0.6), (n, p) => {
        const law = blockedByChance(n, p);
        const notAll = law.mean - n * law.probabilities[n]!;
        const mean = notAll / (1 - law.probabilities[n]!);
        expect(meanPressureTimes(law)).toBeGreaterThanOrEqual((n / (n - mean)) * (1 - 1e-12));
      }),
    );
    expect(meanPressureTimes(blockedByChance(5, 0))).toBe(1);
    expect(meanPressureTimes(blockedByChance(5, 1))).toBe(Infinity);
  });

  it("by pieces are as counted case by case: three passages, four pieces", () => {
    // All 81 ways in which four pieces land on three passages.
    const open = Array.from(
      { length: 81 },
      (_, way) =>
        3 - new Set([way % 3, Math.floor(way / 3) % 3, Math.floor(way / 9) % 3, Math.floor(way / 27)]).size,
    );
    const mean = open.reduce((a, b) => a + b, 0) / 81;
    const variance = open.reduce((sum, k) => sum + (k - mean) ** 2, 0) / 81;
    const law = openAfterPieces(3, 4);
    expect(law.anywhere).toBeCloseTo(mean, 12);
    expect(law.deviation).toBeCloseTo(Math.sqrt(variance), 12);
    expect(law.followingFlow).toBe(0);
  });

  it("are more where pieces follow the flow than where they clump", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 0, max: 800 }), (n, m) => {
        const { anywhere, followingFlow, deviation } = openAfterPieces(n, m);
        expect(followingFlow).toBeLessThanOrEqual(anywhere + 1e-9);
        expect(anywhere).toBeLessThanOrEqual(n);
        expect(deviation).toBeGreaterThanOrEqual(0);
        expect(openAfterPieces(n, m + 1).anywhere).toBeLessThanOrEqual(anywhere);
      }),
    );
    expect(openAfterPieces(7, 0)).toEqual({ anywhere: 7, deviation: 0, followingFlow: 7 });
    expect(openAfterPieces(1, 1).anywhere).toBe(0);
    expect(openAfterPieces(2, 1)).toMatchObject({ anywhere: 1, followingFlow: 1 });
  });
});

describe("a passage", () => {
  const fluid = { viscosity: 0.02, density: 850 };

  it("passes by the fourth power of its bore, the third of its gap", () => {
    fc.assert(
      fc.property(between(1e-4, 5e-3), between(1.1, 3), (size, wider) => {
        const tube = (d: number) => tubePassage(d, 0.4, 1e4, fluid).flow;
        expect(tube(wider * size) / tube(size)).toBeCloseTo(wider ** 4, 9);
        const slot = (g: number) => slotPassage(1e4, g, 0.4, 1e4, fluid).flow;
        expect(slot(wider * size) / slot(size) / wider ** 3).toBeCloseTo(1, 5);
      }),
    );
  });

  it("narrowed by a deposit passes what a narrower one passes", () => {
    fc.assert(
      fc.property(between(5e-4, 5e-3), between(0, 0.49), (size, share) => {
        const left = size * (1 - 2 * share);
        const tube = tubePassage(left, 0.4, 1e4, fluid).flow / tubePassage(size, 0.4, 1e4, fluid).flow;
        expect(flowPastDepositInTube(share * size, size)).toBeCloseTo(tube, 9);
        const slot =
          slotPassage(1e6, left, 0.4, 1e4, fluid).flow / slotPassage(1e6, size, 0.4, 1e4, fluid).flow;
        expect(flowPastDepositInSlot(share * size, size)).toBeCloseTo(slot, 7);
      }),
    );
    expect(flowPastDepositInTube(1e-3, 2e-3)).toBe(0);
  });

  it("leaves its range where it gets turbulent, and computes on", () => {
    const wide = tubePassage(9e-3, 0.4, 20e3, fluid);
    expect(wide.reynolds).toBeGreaterThan(passageRange.high);
    expect(wide.flow).toBeGreaterThan(0);
    expect(wide.velocity * (Math.PI / 4) * 9e-3 ** 2).toBeCloseTo(wide.flow, 15);
  });

  it("that cannot be is refused", () => {
    for (const work of [
      () => flowLeft(0, 0),
      () => flowLeft(4, 5),
      () => pressureTimes(4, 1.5),
      () => flowLeftInLine(-1, 1, 4, 1),
      () => blockedByChance(4, 1.1),
      () => blockedByChance(1e9, 0.1),
      () => openAfterPieces(3, -1),
      () => tubePassage(0, 1, 1, fluid),
      () => tubePassage(1e-3, 1, 1, { viscosity: 0, density: 850 }),
      () => slotPassage(1e-3, 2e-3, 1, 1, fluid),
      () => flowPastDepositInTube(2e-3, 2e-3),
      () => flowPastDepositInSlot(-1e-3, 2e-3),
    ])
      expect(refused(work)).toBe(true);
  });
});
