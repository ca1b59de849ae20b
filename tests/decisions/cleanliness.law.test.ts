// The code of a dirty fluid: it rises with the count, by about one for twice as many, and says where it rests on few.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isoCode, isoNumber } from "../../src/decisions/cleanliness.ts";
import { decades } from "../between.ts";
import { refused } from "./refused.ts";

describe("the number of a count", () => {
  it("rises with the count, by one for twice as many, by the rounded limits at times by none or two", () => {
    fc.assert(
      fc.property(decades(-2, 6), (count) => {
        const rise = isoNumber(2 * count) - isoNumber(count);
        expect([0, 1, 2]).toContain(rise);
        expect(isoNumber(count * 0.999)).toBeLessThanOrEqual(isoNumber(count));
        expect(Math.abs(isoNumber(count) - Math.ceil(Math.log2(count / 0.01)))).toBeLessThanOrEqual(1);
      }),
    );
    expect(isoNumber(0)).toBe(0);
    expect(isoNumber(2_500_000)).toBe(28);
    expect(isoNumber(2_500_001)).toBe(Infinity);
  });

  it("stands behind ≥ where fewer than twenty pieces were counted", () => {
    expect(isoCode([4000, 520, 52])).toBe("19/16/13");
    expect(isoCode([4000, 520, 52], [400, 52, 19])).toBe("19/16/≥13");
    expect(isoCode([4000, 520, 52], [400, 52, 20])).toBe("19/16/13");
    expect(isoCode([3e6, 520, 0], [400, 52, 0])).toBe(">28/16/≥0");
  });

  it("of what cannot be is refused", () => {
    expect(refused(() => isoNumber(-1))).toBe(true);
    expect(refused(() => isoCode([10, 20, 5]))).toBe(true);
    expect(refused(() => isoCode([NaN, 20, 5]))).toBe(true);
    expect(refused(() => isoCode([30, 20, 5], [1, 2.5, 3]))).toBe(true);
  });
});
