// What a Weibull life must be: one that fades, whose pieces fit together, and that forgets its age at a shape of 1.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { integral } from "../../src/decisions/integral.ts";
import {
  ageByWhich,
  failedBy,
  failureDensity,
  hazard,
  lifeOfMean,
  meanLife,
  meanRemaining,
  spentBetween,
  survival,
  survivalFrom,
  usedUpTo,
} from "../../src/decisions/life.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

const lives = fc.record({ scale: decades(-2, 6), shape: between(0.4, 6) });
/** Ages as shares of the scale. */
const shares = between(0, 3);

describe("a life", () => {
  it("begins with all and fades to none", () => {
    fc.assert(
      fc.property(lives, shares, between(0, 1), (life, share, more) => {
        expect(survival(life, 0)).toBe(1);
        expect(survival(life, 1e9 * life.scale)).toBeLessThan(1e-300);
        const [young, old] = [share * life.scale, (share + more) * life.scale];
        expect(survival(life, old)).toBeLessThanOrEqual(survival(life, young));
        expect(survival(life, old) + failedBy(life, old)).toBeCloseTo(1, 14);
      }),
    );
  });

  it("fails by 63.2 % up to its scale, whatever its shape", () => {
    fc.assert(
      fc.property(lives, (life) => {
        expect(failedBy(life, life.scale)).toBeCloseTo(1 - 1 / Math.E, 14);
      }),
    );
  });

  it("has the age by which a share has failed as the reverse of the share", () => {
    fc.assert(
      fc.property(lives, between(1e-9, 0.9999), (life, share) => {
        expect(failedBy(life, ageByWhich(life, share)) / share).toBeCloseTo(1, 11);
      }),
    );
    expect(ageByWhich({ scale: 5, shape: 2 }, 0)).toBe(0);
    expect(ageByWhich({ scale: 5, shape: 2 }, 1)).toBe(Infinity);
  });

  it("goes on from an age as the rest of a whole goes on: R(a + b) = R(a) R(b|a)", () => {
    fc.assert(
      fc.property(lives, between(0, 2), between(0, 2), (life, a, b) => {
        const whole = survival(life, (a + b) * life.scale);
        const pieces = survival(life, a * life.scale) * survivalFrom(life, a * life.scale, b * life.scale);
        expect(pieces - whole).toBeCloseTo(0, 13);
      }),
    );
  });

  it("fails within a moment by its hazard, however short the moment", () => {
    fc.assert(
      fc.property(lives, between(0.05, 3), decades(-13, -8), (life, share, tiny) => {
        const age = share * life.scale;
        const step = tiny * age;
        expect(spentBetween(life, age, step) / (hazard(life, age) * step)).toBeCloseTo(1, 6);
        expect(failureDensity(life, age)).toBeCloseTo(hazard(life, age) * survival(life, age), 12);
      }),
    );
  });

  it("has a hazard that falls, stays or rises by its shape", () => {
    fc.assert(
      fc.property(lives, between(0.1, 2), (life, share) => {
        const rises = hazard(life, 1.5 * share * life.scale) / hazard(life, share * life.scale) - 1;
        expect(Math.abs(rises) < 1e-12 ? 0 : Math.sign(rises)).toBe(Math.sign(life.shape - 1));
      }),
    );
    expect(hazard({ scale: 4, shape: 1 }, 0)).toBe(0.25);
    expect(hazard({ scale: 4, shape: 0.5 }, 0)).toBe(Infinity);
    expect(hazard({ scale: 4, shape: 2 }, 0)).toBe(0);
  });

  it("of shape 1 forgets its age, of shape 2 ends in an error function", () => {
    fc.assert(
      fc.property(decades(-3, 3), between(0, 5), (scale, share) => {
        const life = { scale, shape: 1 };
        expect(meanRemaining(life, share * scale) / scale).toBeCloseTo(1, 12);
        expect(usedUpTo(life, share * scale) / scale).toBeCloseTo(-Math.expm1(-share), 12);
      }),
    );
    expect(meanLife({ scale: 1, shape: 2 })).toBeCloseTo(Math.sqrt(Math.PI) / 2, 14);
  });

  it("is used up to an age as the area under its survival, and the rest remains", () => {
    fc.assert(
      fc.property(lives, between(0.001, 4), (life, share) => {
        const age = share * life.scale;
        // From a hundredth of the age on, where the area is smooth.
        const area = integral((t) => survival(life, t), age / 100, age);
        expect((usedUpTo(life, age) - usedUpTo(life, age / 100)) / area).toBeCloseTo(1, 10);
        const whole = usedUpTo(life, age) + survival(life, age) * meanRemaining(life, age);
        expect(whole / meanLife(life)).toBeCloseTo(1, 11);
      }),
    );
  });

  it("leaves less to the old for a shape above 1, more for one below, in the end 1/hazard", () => {
    fc.assert(
      fc.property(lives, between(0.05, 3), (life, share) => {
        const gain =
          meanRemaining(life, 1.2 * share * life.scale) / meanRemaining(life, share * life.scale) - 1;
        expect(Math.abs(gain) < 1e-11 ? 0 : Math.sign(gain)).toBe(Math.sign(1 - life.shape));
      }),
    );
    for (const shape of [0.5, 1.7, 3, 6]) {
      const life = { scale: 1, shape };
      const old = 1e5 ** (1 / shape);
      expect(meanRemaining(life, old) * hazard(life, old)).toBeCloseTo(1, 4);
    }
  });

  it("has no seam where its series and its fraction meet", () => {
    for (const shape of [0.5, 0.9, 1.3, 2.5, 6]) {
      const meet = (1 / shape + 1) ** (1 / shape);
      const [before, after] = [1 - 1e-9, 1 + 1e-9].map((k) => meanRemaining({ scale: 1, shape }, k * meet));
      expect(Math.abs(after! / before! - 1)).toBeLessThan(1e-8);
    }
  });

  it("is told by its mean", () => {
    fc.assert(
      fc.property(decades(-3, 6), between(0.3, 8), (mean, shape) => {
        expect(meanLife(lifeOfMean(mean, shape)) / mean).toBeCloseTo(1, 12);
      }),
    );
  });

  it("that cannot be is refused", () => {
    for (const life of [
      { scale: 0, shape: 1 },
      { scale: 1, shape: -1 },
      { scale: NaN, shape: 1 },
      { scale: 1, shape: Infinity },
    ])
      expect(refused(() => survival(life, 1))).toBe(true);
    expect(refused(() => survival({ scale: 1, shape: 1 }, -1))).toBe(true);
    expect(refused(() => ageByWhich({ scale: 1, shape: 1 }, 1.1))).toBe(true);
    expect(refused(() => survivalFrom({ scale: 1, shape: 1 }, 1, -1))).toBe(true);
  });
});
