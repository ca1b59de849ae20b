// What a controller learns about filling: nothing from a sound unit, the lateness of a slow one, and never more than it may.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nextFill } from "../../src/physics/clutch/learned-fill.ts";

const gains = fc.double({ min: 0.01, max: 1, noNaN: true });
const limits = fc.double({ min: 0.01, max: 1, noNaN: true });

describe("the learned fill", () => {
  test("stays where it is when the clutch is full on time, and at nothing when it is early", () => {
    fc.assert(
      fc.property(gains, limits, fc.double({ min: 0, max: 1, noNaN: true }), (gain, limit, share) => {
        expect(nextFill(share * limit, 0, gain, limit)).toBe(share * limit);
        expect(nextFill(0, -share, gain, limit)).toBe(0);
      }),
    );
  });

  test("comes to what a fill is late by, by a share of what is left each time, or to its limit", () => {
    fc.assert(
      fc.property(gains, limits, fc.double({ min: 0, max: 2, noNaN: true }), (gain, limit, slow) => {
        let learned = 0;
        for (let shift = 1; shift <= 3000; shift++) {
          const next = nextFill(learned, slow - learned, gain, limit);
          expect(next).toBeGreaterThanOrEqual(learned - 1e-15);
          expect(next).toBeLessThanOrEqual(limit);
          if (slow <= limit) expect(slow - next).toBeCloseTo(slow * (1 - gain) ** shift, 9);
          learned = next;
        }
        expect(learned).toBeCloseTo(Math.min(slow, limit), 9);
      }),
      { numRuns: 20 },
    );
  });

  test("is unlearned when the fluid is good again", () => {
    let learned = 0.15;
    for (let shift = 0; shift < 60; shift++) learned = nextFill(learned, -learned, 0.2, 0.15);
    expect(learned).toBeLessThan(1e-6);
  });

  test("believes a wild reading no further than its limit, and refuses what is no number", () => {
    expect(nextFill(0, 20, 0.2, 0.15)).toBeCloseTo(0.03, 12);
    expect(nextFill(0, Infinity, 0.2, 0.15)).toBeCloseTo(0.03, 12);
    expect(() => nextFill(0, NaN, 0.2, 0.15)).toThrow(/late/);
    expect(() => nextFill(0, 1, 2, 0.15)).toThrow(/gain/);
    expect(() => nextFill(0, 1, 0.2, -1)).toThrow(/limit/);
  });
});
