// The rule for integrals: exact on powers, and right beside kinks, jumps and endless slopes.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { integral, integralFromZero } from "../../src/decisions/integral.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

describe("an integral", () => {
  it("of a power up to the 22nd is exact in one panel: nodes and weights are those of the rule", () => {
    for (let power = 0; power <= 22; power += 2)
      expect(integral((x) => x ** power, -1, 1) * (power + 1)).toBeCloseTo(2, 13);
  });

  it("goes on as pieces do", () => {
    fc.assert(
      fc.property(between(0, 3), between(0.1, 3), between(-2, 2), (a, length, k) => {
        const f = (x: number) => Math.exp(k * x) * Math.cos(3 * x) + 2;
        const [b, c] = [a + length / 3, a + length];
        expect(integral(f, a, b) + integral(f, b, c)).toBeCloseTo(integral(f, a, c), 11);
      }),
    );
  });

  it("misses of a jump or a kink only what lies beyond its outermost nodes, a 500th of a panel", () => {
    fc.assert(
      fc.property(between(0, 1), (at) => {
        expect(Math.abs(integral((x) => (x < at ? 1 : 0), 0, 1) - at)).toBeLessThan(1 / 450);
        const bent = integral((x) => Math.abs(x - at), 0, 1) - (at ** 2 + (1 - at) ** 2) / 2;
        expect(Math.abs(bent)).toBeLessThan(1 / 450 ** 2);
      }),
    );
  });

  it("from 0 on takes any power above −1, on any scale", () => {
    fc.assert(
      fc.property(between(0.1, 5), decades(-9, 9), (power, to) => {
        const value = integralFromZero((x) => x ** (power - 1), to, Math.min(1, power));
        expect(value / (to ** power / power)).toBeCloseTo(1, 11);
      }),
    );
  });

  it("from 0 on sees what is over long before the end", () => {
    fc.assert(
      fc.property(decades(0, 12), (end) => {
        expect(integralFromZero((x) => Math.exp(-x), end, 1, 1 / end)).toBeCloseTo(-Math.expm1(-end), 11);
      }),
    );
  });

  it("of what is no number is refused", () => {
    expect(refused(() => integral((x) => 1 / x, -1, 1))).toBe(true);
    expect(refused(() => integral(() => NaN, 0, 1))).toBe(true);
  });
});
