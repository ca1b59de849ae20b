// Joints side by side: shares that add up to all, a set that lives as its weakest, a choice that tips where it is said to.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { failsFirst, lifeOfSet, noneFails, oneOrSet, someFails } from "../../src/decisions/joints.ts";
import { survival, survivalFrom } from "../../src/decisions/life.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

const joints = fc.array(
  fc.record({
    life: fc.record({ scale: between(5, 40), shape: between(0.5, 5) }),
    age: fc.oneof(fc.constant(0), between(0.01, 20)),
  }),
  { minLength: 1, maxLength: 5 },
);

describe("joints side by side", () => {
  it("fail first, one or another, or none does: the shares add up to 1", () => {
    fc.assert(
      fc.property(joints, between(0, 60), (set, within) => {
        const { each, none } = failsFirst(set, within);
        expect(each.reduce((sum, share) => sum + share, none)).toBeCloseTo(1, 10);
        expect(none + someFails(set, within)).toBeCloseTo(1, 13);
        for (const share of each) expect(share).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 60 },
    );
  });

  it("in the end one has failed for sure, wherever the end is", () => {
    fc.assert(
      fc.property(joints, decades(4, 60), (set, within) => {
        const { each } = failsFirst(set, within);
        if (noneFails(set, within) < 1e-15) expect(each.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 10);
      }),
      { numRuns: 60 },
    );
  });

  it("all alike fail first alike, and as one with the set's own life", () => {
    fc.assert(
      fc.property(
        between(5, 40),
        between(0.5, 5),
        fc.integer({ min: 1, max: 6 }),
        between(0, 30),
        (scale, shape, n, age) => {
          const life = { scale, shape };
          const set = Array.from({ length: n }, () => ({ life, age }));
          const { each } = failsFirst(set, 5);
          for (const share of each) expect(share).toBeCloseTo(each[0]!, 12);
          expect(noneFails(set, 5)).toBeCloseTo(survivalFrom(lifeOfSet(life, n), age, 5), 12);
          expect(survival(lifeOfSet(life, n), 7)).toBeCloseTo(survival(life, 7) ** n, 12);
        },
      ),
    );
  });

  it("of shape 1 fail first by their rates, whatever their ages", () => {
    const set = [2, 5, 10].map((scale, i) => ({ life: { scale, shape: 1 }, age: 3 * i }));
    const { each, none } = failsFirst(set, 4);
    expect(none).toBeCloseTo(Math.exp(-4 * 0.8), 13);
    each.forEach((share, i) => expect(share).toBeCloseTo(((1 - none) * [0.5, 0.2, 0.1][i]!) / 0.8, 12));
  });

  it("one more never holds better", () => {
    fc.assert(
      fc.property(joints, between(0, 30), (set, within) => {
        expect(noneFails(set, within)).toBeLessThanOrEqual(noneFails(set.slice(1), within));
      }),
    );
    expect(noneFails([], 3)).toBe(1);
  });

  const choices = fc.record({
    ages: fc.array(between(1, 25), { minLength: 1, maxLength: 5 }),
    shape: between(0.7, 5),
    visit: between(0, 500),
    harm: between(0, 5000),
    within: between(0.1, 10),
  });

  it("the set is cheaper under the price that tips, and one is over it", () => {
    fc.assert(
      fc.property(choices, between(0.01, 0.99), ({ ages, shape, visit, harm, within }, share) => {
        const life = { scale: 16, shape };
        const others = ages.map((age) => ({ life, age }));
        const at = (part: number) => oneOrSet(others, life, within, { part, visit, harm });
        const tips = at(0).tippingPart;
        if (tips > 1e-6 && tips < 1e9) {
          expect(at(share * tips).set).toBeLessThan(at(share * tips).one);
          expect(at(tips).set / at(tips).one).toBeCloseTo(1, 10);
        }
        const above = at(tips + 1 + share);
        expect(above.set).toBeGreaterThan(above.one);
      }),
    );
  });

  it("more harm of a failure speaks for the set where the old are worse than the new", () => {
    fc.assert(
      fc.property(choices, between(1, 1000), ({ ages, visit, harm, within }, more) => {
        const life = { scale: 16, shape: 3 };
        const others = ages.map((age) => ({ life, age }));
        const tips = (worse: number) =>
          oneOrSet(others, life, within, { part: 1, visit, harm: worse }).tippingPart;
        expect(tips(harm + more)).toBeGreaterThan(tips(harm));
      }),
    );
  });

  it("where age says nothing, new parts are for nothing: the set is never cheaper", () => {
    const life = { scale: 16, shape: 1 };
    const others = [3, 9].map((age) => ({ life, age }));
    expect(oneOrSet(others, life, 2, { part: 10, visit: 100, harm: 1000 }).tippingPart).toBeLessThan(1e-9);
  });

  it("that cannot be are refused", () => {
    const life = { scale: 16, shape: 3 };
    expect(refused(() => oneOrSet([], life, 2, { part: 1, visit: 1, harm: 0 }))).toBe(true);
    expect(refused(() => oneOrSet([{ life, age: 1 }], life, 2, { part: -1, visit: 1, harm: 0 }))).toBe(true);
    expect(refused(() => noneFails([{ life, age: -1 }], 2))).toBe(true);
    expect(refused(() => failsFirst([{ life, age: 1 }], -2))).toBe(true);
    expect(refused(() => lifeOfSet(life, 1.5))).toBe(true);
  });
});
