// Replacing in time: the best age is better than its neighbours and than never, and there is none where age does no harm.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hazard, meanLife } from "../../src/decisions/life.ts";
import {
  bestRenewal,
  bestReplacement,
  costRate,
  costRateRepaired,
  runToFailure,
} from "../../src/decisions/replacement-age.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

const ageing = fc.record({ scale: decades(-2, 6), shape: between(1.3, 6) });
const prices = fc
  .tuple(between(1, 100), between(1.2, 100))
  .map(([planned, times]) => ({ planned, failure: times * planned }));

describe("replacing in time", () => {
  it("costs least at its best age: a valley, on both sides and at every distance", () => {
    fc.assert(
      fc.property(ageing, prices, between(1.02, 5), (life, paid, away) => {
        const { age, costRate: least, runToFailure: never } = bestReplacement(life, paid);
        if (age === null) return;
        expect(least).toBeLessThan(never * (1 + 1e-12));
        const rate = (k: number) => costRate(life, k * age, paid);
        for (const k of [1 / away, away]) expect(rate(k)).toBeGreaterThanOrEqual(least * (1 - 1e-13));
        // Beside it the cost goes as a square: twice as far, four times the loss.
        const loss = (k: number) => rate(1 + k) + rate(1 - k) - 2 * least;
        if (loss(0.01) > 1e-7 * least) expect(loss(0.02) / loss(0.01)).toBeCloseTo(4, 0);
      }),
    );
  });

  it("costs there what its hazard costs", () => {
    fc.assert(
      fc.property(ageing, prices, (life, paid) => {
        const { age, costRate: least } = bestReplacement(life, paid);
        if (age !== null)
          expect(((paid.failure - paid.planned) * hazard(life, age)) / least).toBeCloseTo(1, 8);
      }),
    );
  });

  it("has no best age where the hazard does not rise, or a failure costs no more: run it until it fails", () => {
    fc.assert(
      fc.property(decades(-2, 6), between(0.2, 1), prices, (scale, shape, paid) => {
        const none = bestReplacement({ scale, shape }, paid);
        expect(none.age).toBe(null);
        expect(none.costRate).toBe(runToFailure({ scale, shape }, paid));
      }),
    );
    expect(bestReplacement({ scale: 1, shape: 3 }, { planned: 5, failure: 5 }).age).toBe(null);
    expect(bestReplacement({ scale: 1, shape: 3 }, { planned: 5, failure: 3 }).age).toBe(null);
    // So nearly constant a hazard would be replaced at an age that nobody reaches.
    expect(bestReplacement({ scale: 1, shape: 1.001 }, { planned: 1, failure: 1.01 }).age).toBe(null);
  });

  it("comes the earlier, the dearer a failure; late, it is as good as never", () => {
    fc.assert(
      fc.property(ageing, prices, between(1.1, 4), (life, paid, times) => {
        const [one, other] = [paid, { ...paid, failure: times * paid.failure }].map(
          (p) => bestReplacement(life, p).age,
        );
        if (typeof one === "number") expect(other).toBeLessThan(one);
        expect(costRate(life, 50 * life.scale, paid) / runToFailure(life, paid)).toBeCloseTo(1, 10);
        expect(runToFailure(life, paid) * meanLife(life)).toBeCloseTo(paid.failure, 8);
      }),
    );
  });

  it("costs the price of a part over its age where nothing fails yet", () => {
    expect(costRate({ scale: 1e6, shape: 4 }, 10, { planned: 7, failure: 70 })).toBeCloseTo(0.7, 12);
  });
});

describe("patching, and renewing at an age", () => {
  it("costs least at its best age", () => {
    fc.assert(
      fc.property(
        ageing,
        between(1, 100),
        between(0.1, 100),
        between(1.02, 5),
        (life, renewal, repair, away) => {
          const paid = { renewal, repair };
          const { age, costRate: least } = bestRenewal(life, paid)!;
          for (const k of [1 / away, away])
            expect(costRateRepaired(life, k * age, paid)).toBeGreaterThan(least);
          // There the patches of a whole period have cost the renewal's price over shape − 1.
          expect(least * age).toBeCloseTo(renewal * (1 + 1 / (life.shape - 1)), 8);
        },
      ),
    );
  });

  it("has none where the hazard does not rise or a patch is for nothing", () => {
    expect(bestRenewal({ scale: 1, shape: 1 }, { renewal: 1, repair: 1 })).toBe(null);
    expect(bestRenewal({ scale: 1, shape: 3 }, { renewal: 1, repair: 0 })).toBe(null);
  });

  it("for prices and ages that cannot be is refused", () => {
    const life = { scale: 1, shape: 2 };
    expect(refused(() => costRate(life, 0, { planned: 1, failure: 2 }))).toBe(true);
    expect(refused(() => bestReplacement(life, { planned: 0, failure: 2 }))).toBe(true);
    expect(refused(() => bestReplacement(life, { planned: 1, failure: NaN }))).toBe(true);
    expect(refused(() => bestRenewal(life, { renewal: -1, repair: 1 }))).toBe(true);
    expect(refused(() => costRateRepaired(life, -1, { renewal: 1, repair: 1 }))).toBe(true);
  });
});
