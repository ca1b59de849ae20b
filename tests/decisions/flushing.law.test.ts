// Flushing: mass is kept, more leaves less, small changes end in an exchange, a filter ends where what comes in is what it takes.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  changesUntil,
  dirtAtChange,
  filterTakes,
  oldAfterChanges,
  oldAfterExchange,
  oldAfterFillingFirst,
  oldAfterRemovingFirst,
  piecesAfter,
  steadyDirt,
  steadyPieces,
  timeUntilClean,
  volumesUntil,
} from "../../src/decisions/flushing.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

const shares = between(0.01, 0.99);
const counts = fc.integer({ min: 0, max: 40 });

describe("old fluid", () => {
  it("is kept, step by step: what is mixed in and let out", () => {
    fc.assert(
      fc.property(between(0.01, 3), counts, (added, n) => {
        let [filledFirst, removedFirst] = [1, 1];
        const removed = Math.min(1, added);
        for (let i = 0; i < n; i++) {
          filledFirst -= (filledFirst / (1 + added)) * added; // as much of the mixture as was filled
          removedFirst = removedFirst * (1 - removed) + 0 * removed; // new fluid in its place
        }
        expect(oldAfterFillingFirst(added, n)).toBeCloseTo(filledFirst, 12);
        expect(oldAfterRemovingFirst(removed, n)).toBeCloseTo(removedFirst, 12);
        // Nothing new is thrown away when the old goes out first.
        expect(oldAfterRemovingFirst(removed, n)).toBeLessThanOrEqual(oldAfterFillingFirst(removed, n));
      }),
    );
  });

  it("by ever smaller changes of the same fluid is left as by an exchange", () => {
    fc.assert(
      fc.property(between(0.1, 4), (volumes) => {
        const n = 1_000_000;
        expect(oldAfterRemovingFirst(volumes / n, n) / oldAfterExchange(volumes)).toBeCloseTo(1, 4);
        expect(oldAfterFillingFirst(volumes / n, n) / oldAfterExchange(volumes)).toBeCloseTo(1, 4);
        expect(oldAfterRemovingFirst(volumes / n, n)).toBeLessThan(oldAfterExchange(volumes));
        expect(oldAfterFillingFirst(volumes / n, n)).toBeGreaterThan(oldAfterExchange(volumes));
      }),
    );
  });

  it("takes as many changes and volumes as leave what is wanted, and not one less", () => {
    fc.assert(
      fc.property(shares, shares, (wanted, changed) => {
        const { exactly, whole } = changesUntil(wanted, changed);
        expect((1 - changed) ** exactly).toBeCloseTo(1 - wanted, 10);
        expect(1 - oldAfterChanges(changed, whole)).toBeGreaterThanOrEqual(wanted - 1e-12);
        expect(1 - oldAfterChanges(changed, whole - 1)).toBeLessThan(wanted);
        expect(oldAfterExchange(volumesUntil(wanted))).toBeCloseTo(wanted, 12);
      }),
    );
    expect(changesUntil(0.784, 0.4).whole).toBe(3);
    expect(changesUntil(1, 1)).toEqual({ exactly: 1, whole: 1 });
    expect(changesUntil(0, 0.3).whole).toBe(0);
  });
});

describe("dirt", () => {
  it("is kept: what comes in between two changes goes out with one, in the long run", () => {
    fc.assert(
      fc.property(between(0, 50), between(0.02, 1), (gain, changed) => {
        const { before, after } = steadyDirt(gain, changed);
        expect(before - after).toBeCloseTo(gain, 10);
        expect(after + gain).toBeCloseTo(before, 10);
        expect(before * (1 - changed)).toBeCloseTo(after, 10);
      }),
    );
  });

  it("grows to that from clean, as reckoned change by change", () => {
    fc.assert(
      fc.property(between(0, 50), between(0.02, 1), fc.integer({ min: 1, max: 30 }), (gain, changed, n) => {
        let dirt = 0;
        for (let i = 1; i < n; i++) dirt = (dirt + gain) * (1 - changed);
        const { before, after } = dirtAtChange(gain, changed, n);
        expect(before).toBeCloseTo(dirt + gain, 9);
        expect(after).toBeCloseTo((dirt + gain) * (1 - changed), 9);
        expect(before).toBeLessThanOrEqual(steadyDirt(gain, changed).before + 1e-9);
        expect(dirtAtChange(gain, changed, 5000).before).toBeCloseTo(steadyDirt(gain, changed).before, 9);
      }),
    );
  });
});

describe("a filter in a loop", () => {
  const loops = fc.record({
    volume: between(2e-3, 2e-2),
    flow: decades(-6, -3),
    takes: between(0.01, 1),
    comesIn: decades(0, 6),
  });

  it("keeps its pieces: what came in is in the fluid or in the filter", () => {
    fc.assert(
      fc.property(loops, decades(3, 9), decades(1, 5), (loop, first, time) => {
        // Taken out: the integral of Q η C, by Simpson's rule in many steps.
        const steps = 400;
        const rate = (t: number) => loop.flow * loop.takes * piecesAfter(loop, first, t);
        const turns = Math.min(time, (3 * loop.volume) / (loop.flow * loop.takes));
        let taken = 0;
        for (let i = 0; i < steps; i++) {
          const [a, b] = [(turns * i) / steps, (turns * (i + 1)) / steps];
          taken += ((b - a) / 6) * (rate(a) + 4 * rate((a + b) / 2) + rate(b));
        }
        const came = loop.volume * first + loop.comesIn * turns;
        expect((loop.volume * piecesAfter(loop, first, turns) + taken) / came).toBeCloseTo(1, 9);
      }),
      { numRuns: 40 },
    );
  });

  it("ends where as much comes in as it takes, from above and from below", () => {
    fc.assert(
      fc.property(loops, (loop) => {
        const end = steadyPieces(loop);
        const long = (60 * loop.volume) / (loop.flow * loop.takes);
        for (const first of [0, 1e12])
          expect(piecesAfter(loop, first * 1e-9 * end, long) / end).toBeCloseTo(1, 9);
        expect(piecesAfter(loop, end, long / 7) / end).toBeCloseTo(1, 12);
      }),
    );
  });

  it("is clean when it says", () => {
    fc.assert(
      fc.property(loops, shares, (loop, share) => {
        const still = { ...loop, comesIn: 0 };
        expect(piecesAfter(still, 1e6, timeUntilClean(still, share)) / 1e6).toBeCloseTo(share, 12);
      }),
    );
  });

  it("that takes nothing lets all stay and gather", () => {
    const loop = { volume: 8e-3, flow: 1e-4, takes: filterTakes(1), comesIn: 4 };
    expect(piecesAfter(loop, 100, 10)).toBeCloseTo(100 + 5000, 9);
    expect(steadyPieces(loop)).toBe(Infinity);
    expect(timeUntilClean(loop, 0.5)).toBe(Infinity);
    expect(steadyPieces({ ...loop, comesIn: 0 })).toBe(0);
  });
});

describe("what cannot be", () => {
  it("is refused", () => {
    for (const work of [
      () => oldAfterExchange(-1),
      () => volumesUntil(0),
      () => oldAfterChanges(0.4, 1.5),
      () => oldAfterChanges(0, 2),
      () => oldAfterFillingFirst(-0.1, 1),
      () => oldAfterRemovingFirst(1.1, 1),
      () => changesUntil(1, 0.4),
      () => steadyDirt(-1, 0.4),
      () => dirtAtChange(1, 0.4, -1),
      () => filterTakes(0.5),
      () => piecesAfter({ volume: 0, flow: 1, takes: 1, comesIn: 1 }, 1, 1),
    ])
      expect(refused(work)).toBe(true);
  });
});
