// Two clocks: all that was new has held, tired or rusted; a line that stands only rusts, and salt hastens the calendar.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meanLife, meanRemaining, survival } from "../../src/decisions/life.ts";
import {
  causesBy,
  fatigueShareAt,
  meanLifeOfBoth,
  survivalOfBoth,
  survivalOfBothFrom,
} from "../../src/decisions/two-clocks.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

const clocks = fc.record({
  fatigue: fc.record({ scale: decades(4, 6), shape: between(0.6, 5) }),
  corrosion: fc.record({ scale: between(3, 40), shape: between(0.6, 5) }),
  distancePerTime: decades(2, 5),
  exposure: between(0.3, 4),
});

describe("two clocks", () => {
  it("all that was new has held, tired or rusted", () => {
    fc.assert(
      fc.property(clocks, between(0, 60), (line, age) => {
        const { holds, fatigue, corrosion } = causesBy(line, age);
        expect(holds + fatigue + corrosion).toBeCloseTo(1, 10);
        expect(holds).toBeCloseTo(survivalOfBoth(line, age), 14);
      }),
      { numRuns: 60 },
    );
  });

  it("hold together as each for itself", () => {
    fc.assert(
      fc.property(clocks, between(0, 40), (line, age) => {
        const tires = survival(line.fatigue, age * line.distancePerTime);
        const rusts = survival(line.corrosion, age * line.exposure);
        expect(survivalOfBoth(line, age)).toBeCloseTo(tires * rusts, 12);
      }),
    );
  });

  it("more driving, more salt, more years: never a longer life", () => {
    fc.assert(
      fc.property(clocks, between(0, 40), between(1, 3), (line, age, more) => {
        const holds = survivalOfBoth(line, age) + 1e-14;
        expect(
          survivalOfBoth({ ...line, distancePerTime: more * line.distancePerTime }, age),
        ).toBeLessThanOrEqual(holds);
        expect(survivalOfBoth({ ...line, exposure: more * line.exposure }, age)).toBeLessThanOrEqual(holds);
        expect(survivalOfBoth(line, more * age)).toBeLessThanOrEqual(holds);
        const mean = meanLifeOfBoth(line);
        expect(mean).toBeLessThanOrEqual(meanLife(line.corrosion) / line.exposure + 1e-9 * mean);
        expect(mean).toBeLessThanOrEqual(meanLife(line.fatigue) / line.distancePerTime + 1e-9 * mean);
      }),
      { numRuns: 60 },
    );
  });

  it("the mean life is that of one alone where the other is far off", () => {
    fc.assert(
      fc.property(clocks, (line) => {
        const { corrosion, fatigue, exposure, distancePerTime } = line;
        const standing = meanLifeOfBoth({ ...line, distancePerTime: 0 });
        expect(standing / (meanLife(corrosion) / exposure)).toBeCloseTo(1, 10);
        const dry = meanLifeOfBoth({ ...line, corrosion: { scale: 1e30, shape: 2 } });
        expect(dry / (meanLife(fatigue) / distancePerTime)).toBeCloseTo(1, 10);
      }),
      { numRuns: 60 },
    );
  });

  it("two of one shape are one: rates to that power add", () => {
    fc.assert(
      fc.property(between(0.6, 4), between(3, 30), between(3, 30), (shape, a, b) => {
        const line = {
          fatigue: { scale: 1e4 * a, shape },
          corrosion: { scale: b, shape },
          distancePerTime: 1e4,
        };
        const scale = (a ** -shape + b ** -shape) ** (-1 / shape);
        expect(meanLifeOfBoth(line) / meanLife({ scale, shape })).toBeCloseTo(1, 10);
        expect(causesBy(line, 10).fatigue).toBeCloseTo(
          ((1 - survival({ scale, shape }, 10)) * a ** -shape) / scale ** -shape,
          10,
        );
        expect(fatigueShareAt(line, 7)).toBeCloseTo(a ** -shape / scale ** -shape, 12);
      }),
      { numRuns: 60 },
    );
  });

  it("go on from an age as the rest of the whole", () => {
    fc.assert(
      fc.property(clocks, between(0, 5), between(0, 5), (line, age, more) => {
        const whole = survivalOfBoth(line, age + more);
        expect(survivalOfBoth(line, age) * survivalOfBothFrom(line, age, more) - whole).toBeCloseTo(0, 13);
      }),
    );
    const rusts = { fatigue: { scale: 1, shape: 2 }, corrosion: { scale: 9, shape: 2 }, distancePerTime: 0 };
    expect(fatigueShareAt(rusts, 3)).toBe(0);
    expect(causesBy(rusts, 3).fatigue).toBe(0);
    expect(meanRemaining(rusts.corrosion, 0)).toBeCloseTo(meanLifeOfBoth(rusts), 10);
  });

  it("that cannot be are refused", () => {
    const line = {
      fatigue: { scale: 1e5, shape: 2 },
      corrosion: { scale: 9, shape: 2 },
      distancePerTime: 1e4,
    };
    expect(refused(() => survivalOfBoth({ ...line, distancePerTime: -1 }, 1))).toBe(true);
    expect(refused(() => survivalOfBoth({ ...line, exposure: 0 }, 1))).toBe(true);
    expect(refused(() => causesBy(line, -1))).toBe(true);
    expect(refused(() => fatigueShareAt(line, 0))).toBe(true);
  });
});
