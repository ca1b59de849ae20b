// Looking for what can be found: a sample says what its law says, more looks and better looks miss no more, the best interval is best.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bestInterval,
  downtime,
  exponentialDelays,
  inspectionCost,
  neverLooking,
  shareThatFails,
  stillWaiting,
  weibullDelays,
  type Delays,
} from "../../src/decisions/inspection.ts";
import { ageByWhich, lifeOfMean, usedUpTo } from "../../src/decisions/life.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

const laws: fc.Arbitrary<Delays> = fc.oneof(
  decades(-1, 2).map(exponentialDelays),
  fc.tuple(decades(-1, 2), between(0.6, 5)).map(([mean, shape]) => weibullDelays(lifeOfMean(mean, shape))),
  fc
    .array(between(0, 40), { minLength: 1, maxLength: 20 })
    .map((delays) => ({ kind: "sample", delays }) as const),
);
const finding = fc.oneof(fc.constant(1), between(0.2, 1));

/** Exponential delays in closed form. */
const closed = (mean: number, interval: number, finds: number) => {
  const e = Math.exp(-interval / mean);
  return 1 - (finds * mean * (1 - e)) / (interval * (1 - (1 - finds) * e));
};

describe("what fails between looks", () => {
  it("is as the closed form has it for exponential delays", () => {
    fc.assert(
      fc.property(decades(-1, 2), decades(-2, 2), between(0.001, 1), (mean, times, finds) => {
        const share = shareThatFails(exponentialDelays(mean), times * mean, finds);
        expect(share).toBeCloseTo(closed(mean, times * mean, finds), 11);
      }),
      { numRuns: 60 },
    );
  });

  it("so it is where looks hardly ever find anything, or come thousands of times before a failure", () => {
    for (const [times, finds] of [
      [1e-3, 0.01],
      [1e-5, 1e-4],
      [1e-4, 1e-4],
      [0.01, 1e-3],
      [1, 1e-6],
      [1e-4, 0.015],
    ] as const)
      expect(
        Math.abs(shareThatFails(exponentialDelays(3), 3 * times, finds) / closed(3, 3 * times, finds) - 1),
      ).toBeLessThan(1e-7);
  });

  it("is one less the mean wait within an interval, for perfect looks and Weibull delays", () => {
    fc.assert(
      fc.property(decades(0, 2), between(0.6, 5), decades(-1, 2), (mean, shape, interval) => {
        const life = lifeOfMean(mean, shape);
        expect(shareThatFails(weibullDelays(life), interval)).toBeCloseTo(
          1 - usedUpTo(life, interval) / interval,
          11,
        );
      }),
    );
  });

  it("is nothing if looks are close together, all if far apart or blind", () => {
    fc.assert(
      fc.property(laws, (delays) => {
        if (delays.kind === "survival") {
          expect(shareThatFails(delays, 1e-9)).toBeLessThan(1e-3);
          expect(shareThatFails(delays, 1e7)).toBeGreaterThan(1 - 1e-4);
        }
        expect(shareThatFails(delays, 5, 0)).toBe(1);
      }),
    );
    expect(shareThatFails({ kind: "sample", delays: [0] }, 5)).toBe(1);
    expect(shareThatFails({ kind: "sample", delays: [Infinity] }, 5, 0)).toBe(0);
  });

  it("is no more with twice as many looks", () => {
    fc.assert(
      fc.property(laws, decades(-1, 2), finding, (delays, interval, finds) => {
        const seldom = shareThatFails(delays, interval, finds);
        const often = shareThatFails(delays, interval / 2, finds);
        expect(often).toBeLessThanOrEqual(seldom + 1e-12);
      }),
    );
  });

  it("is no more with looks that find more", () => {
    fc.assert(
      fc.property(
        laws,
        decades(-1, 2),
        between(0.05, 1),
        between(0, 1),
        (delays, interval, finds, better) => {
          const worse = shareThatFails(delays, interval, finds);
          expect(shareThatFails(delays, interval, finds + better * (1 - finds))).toBeLessThanOrEqual(
            worse + 1e-12,
          );
        },
      ),
    );
  });

  it("is no more where delays are longer", () => {
    fc.assert(
      fc.property(
        fc.array(between(0, 40), { minLength: 1, maxLength: 20 }),
        between(1, 3),
        decades(-1, 2),
        finding,
        (delays, longer, interval, finds) => {
          const short = shareThatFails({ kind: "sample", delays }, interval, finds);
          const long = shareThatFails(
            { kind: "sample", delays: delays.map((d) => longer * d) },
            interval,
            finds,
          );
          expect(long).toBeLessThanOrEqual(short + 1e-12);
        },
      ),
    );
  });

  it("a sample of a law says what the law says", () => {
    fc.assert(
      fc.property(between(2, 30), between(0.8, 4), decades(0, 2), finding, (mean, shape, interval, finds) => {
        const life = lifeOfMean(mean, shape);
        const delays = Array.from({ length: 4000 }, (_, i) => ageByWhich(life, (i + 0.5) / 4000));
        const sampled = shareThatFails({ kind: "sample", delays }, interval, finds);
        expect(Math.abs(sampled - shareThatFails(weibullDelays(life), interval, finds))).toBeLessThan(5e-4);
        expect(stillWaiting({ kind: "sample", delays }, mean)).toBeCloseTo(
          stillWaiting(weibullDelays(life), mean),
          3,
        );
      }),
    );
  });

  it("a sample is counted as by hand: two delays, looks that find half", () => {
    // 2.5 intervals: two looks for certain, a third with ½: ¼·(1 − ¼); half an interval: one with ½: 1 − ¼.
    expect(shareThatFails({ kind: "sample", delays: [25, 5] }, 10, 0.5)).toBeCloseTo(
      (0.25 * 0.75 + 0.75) / 2,
      14,
    );
    // One that never fails never counts.
    expect(shareThatFails({ kind: "sample", delays: [5, Infinity] }, 10)).toBeCloseTo(0.25, 14);
  });
});

describe("the best interval", () => {
  const prices = fc.record({
    faults: decades(-3, 0),
    failure: between(1000, 9000),
    found: between(0, 900),
    look: between(1, 100),
  });

  it("costs least: less than its neighbours, than any other, and than never looking", () => {
    fc.assert(
      fc.property(laws, prices, finding, decades(-2, 2), (delays, paid, finds, other) => {
        const best = bestInterval(delays, paid, finds);
        const slack = 1 + 1e-9;
        if (best.interval === null) {
          expect(inspectionCost(delays, 10 * other, paid, finds)).toBeGreaterThanOrEqual(
            neverLooking(delays, paid) / slack,
          );
          return;
        }
        expect(best.costRate).toBeLessThan(best.neverLooking);
        for (const k of [0.98, 1.02, other])
          expect(inspectionCost(delays, k * best.interval, paid, finds) * slack).toBeGreaterThanOrEqual(
            best.costRate,
          );
        expect(best.failing).toBe(shareThatFails(delays, best.interval, finds));
      }),
      { numRuns: 60 },
    );
  });

  it("lies in a valley that goes as a square", () => {
    const delays = weibullDelays(lifeOfMean(12, 2));
    const paid = { faults: 1 / 80, failure: 4200, found: 260, look: 35 };
    const { interval, costRate } = bestInterval(delays, paid);
    const loss = (k: number) =>
      inspectionCost(delays, interval! * (1 + k), paid) +
      inspectionCost(delays, interval! * (1 - k), paid) -
      2 * costRate;
    expect(loss(0.01)).toBeGreaterThan(0);
    expect(loss(0.02) / loss(0.01)).toBeCloseTo(4, 1);
  });

  it("is never where nothing is saved: no faults, burns that cost no more, looks too dear or blind", () => {
    const delays = exponentialDelays(12);
    const paid = { faults: 1 / 80, failure: 4200, found: 260, look: 35 };
    for (const none of [{ faults: 0 }, { failure: 260 }, { failure: 100 }, { look: 1000 }])
      expect(bestInterval(delays, { ...paid, ...none }).interval).toBe(null);
    expect(bestInterval(delays, paid, 0).interval).toBe(null);
    expect(bestInterval(delays, paid, 0).costRate).toBe(neverLooking(delays, paid));
    expect(bestInterval({ kind: "sample", delays: [Infinity] }, paid)).toMatchObject({
      interval: null,
      costRate: 0,
      failing: 0,
    });
  });

  it("comes the oftener, the cheaper a look", () => {
    fc.assert(
      fc.property(between(0.6, 4), between(1, 40), between(1.5, 4), (shape, look, times) => {
        const delays = weibullDelays(lifeOfMean(12, shape));
        const at = (price: number) =>
          bestInterval(delays, { faults: 0.05, failure: 4200, found: 260, look: price });
        const [cheap, dear] = [at(look), at(times * look)];
        if (dear.interval !== null) expect(cheap.interval).toBeLessThan(dear.interval);
        expect(cheap.costRate).toBeLessThanOrEqual(dear.costRate);
      }),
      { numRuns: 30 },
    );
  });

  it("of a sample is close to that of its law", () => {
    const life = lifeOfMean(12, 2);
    const delays = Array.from({ length: 2000 }, (_, i) => ageByWhich(life, (i + 0.5) / 2000));
    const paid = { faults: 1 / 80, failure: 4200, found: 260, look: 35 };
    for (const finds of [1, 0.7]) {
      const [one, other] = [
        bestInterval({ kind: "sample", delays }, paid, finds),
        bestInterval(weibullDelays(life), paid, finds),
      ];
      expect(Math.abs(one.interval! / other.interval! - 1)).toBeLessThan(0.01);
      expect(Math.abs(one.costRate / other.costRate - 1)).toBeLessThan(1e-3);
    }
  });
});

describe("standing still", () => {
  it("for looks alone where there are no faults, for failures alone where looks take no time", () => {
    const delays = exponentialDelays(6);
    expect(downtime(delays, 9, { faults: 0, failure: 5, look: 1 })).toBeCloseTo(0.1, 14);
    expect(downtime(delays, 9, { faults: 0.2, failure: 0.5, look: 0 })).toBeCloseTo(
      0.1 * shareThatFails(delays, 9),
      14,
    );
  });

  it("for what cannot be is refused", () => {
    const delays = exponentialDelays(6);
    expect(refused(() => exponentialDelays(0))).toBe(true);
    expect(refused(() => shareThatFails(delays, 0))).toBe(true);
    expect(refused(() => shareThatFails(delays, 1, 1.2))).toBe(true);
    expect(refused(() => shareThatFails({ kind: "sample", delays: [] }, 1))).toBe(true);
    expect(refused(() => shareThatFails({ kind: "sample", delays: [NaN] }, 1))).toBe(true);
    expect(refused(() => shareThatFails({ kind: "survival", survival: () => 2 }, 1))).toBe(true);
    expect(refused(() => inspectionCost(delays, 1, { faults: -1, failure: 1, found: 1, look: 1 }))).toBe(
      true,
    );
    expect(refused(() => bestInterval(delays, { faults: 1, failure: 1, found: 0, look: 0 }))).toBe(true);
    expect(refused(() => downtime(delays, 1, { faults: 1, failure: -1, look: 1 }))).toBe(true);
    expect(refused(() => stillWaiting(delays, -1))).toBe(true);
  });
});
