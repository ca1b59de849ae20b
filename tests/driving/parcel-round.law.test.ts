import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parcelRound, usualRound } from "../../src/driving/parcel-round.ts";
import { roundBuilder } from "../../src/driving/round-builder.ts";
import { statistics } from "../../src/driving/statistics.ts";
import { gravity as g } from "../../src/physics/load/road.ts";

const seed = fc.integer({ min: 0, max: 1e6 });
const most = (values: Float64Array) => values.reduce((top, value) => Math.max(top, Math.abs(value)), 0);

describe("parcel round", () => {
  test("is about 40 minutes and 20 km of stop and go, within its bands", () => {
    fc.assert(
      fc.property(seed, (s) => {
        const t = parcelRound(s);
        const { duration, distance, stops, maxSpeed, maxAcceleration, minAcceleration, climb } =
          statistics(t);
        expect(duration / 60).toBeGreaterThan(35);
        expect(duration / 60).toBeLessThan(46);
        expect(distance / 1000).toBeGreaterThan(16);
        expect(distance / 1000).toBeLessThan(25);
        expect(stops).toBeGreaterThan(9);
        expect(maxSpeed * 3.6).toBeLessThanOrEqual(90);
        expect(maxAcceleration).toBeLessThanOrEqual(0.25 * g + 1e-9);
        expect(-minAcceleration).toBeLessThanOrEqual(0.3 * g + 1e-9);
        expect(most(t.lateral)).toBeLessThanOrEqual(0.3 * g + 1e-9);
        expect(most(t.grade)).toBeLessThanOrEqual(0.08);
        expect(Math.abs(climb)).toBeLessThan(5);
        expect(t.time.every((time, i) => i === 0 || time > t.time[i - 1])).toBe(true);
        expect([t.speed[0], t.speed[t.speed.length - 1]]).toEqual([0, 0]);
        // Standing or straight on: a vehicle that does not turn feels nothing sideways.
        expect(t.lateral.every((y, i) => y === 0 || t.speed[i] > 0)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  test("is the same for the same seed and another for the next", () => {
    expect(parcelRound(7)).toEqual(parcelRound(7));
    expect(parcelRound(7).time).not.toEqual(parcelRound(8).time);
  });

  test("follows its options", () => {
    const flat = parcelRound(3, { ...usualRound, hilliness: 0 });
    expect(most(flat.grade)).toBe(0);
    const gentle = parcelRound(3, { ...usualRound, hardness: 0.5 });
    expect(statistics(gentle).maxAcceleration).toBeLessThanOrEqual(0.125 * g + 1e-9);
    expect(most(gentle.lateral)).toBeLessThanOrEqual(0.15 * g + 1e-9);
    const long = statistics(parcelRound(3, { ...usualRound, duration: 4 * 3600 })).duration;
    expect(Math.abs(long / (4 * 3600) - 1)).toBeLessThan(0.05);
    expect(() => parcelRound(NaN)).toThrow(/seed/);
    expect(() => parcelRound(1, { ...usualRound, hardness: 0 })).toThrow(/hardness/);
  });

  test("holds together at the ends of its options", () => {
    for (const hardness of [0.05, 2])
      for (const hilliness of [0, 4])
        for (const duration of [300, 9000]) {
          const t = parcelRound(11, { hardness, hilliness, duration });
          for (const column of [t.time, t.speed, t.grade, t.lateral])
            expect(column.every(Number.isFinite)).toBe(true);
          expect(t.speed.every((v) => v >= 0)).toBe(true);
        }
  });
});

describe("round builder", () => {
  test("keeps the length of a stretch whenever it is long enough for its speeds", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 5000, noNaN: true }),
        fc.double({ min: 3, max: 30, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (length, cruise, launch, braking) => {
          const road = roundBuilder();
          road.stretch({ length, cruise, exit: 0, launch, braking, grade: 0 });
          const t = road.trace("one");
          expect(statistics(t).distance).toBeCloseTo(length, 4);
          expect(statistics(t).maxSpeed).toBeLessThanOrEqual(cruise + 1e-9);
        },
      ),
    );
  });

  test("a bend turns the heading by its angle, at the lateral acceleration of its speed and radius", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 500, noNaN: true }),
        fc.double({ min: 0.1, max: 4, noNaN: true }),
        fc.double({ min: 1, max: 25, noNaN: true }),
        fc.constantFrom(-1, 1),
        (radius, angle, speed, side) => {
          const road = roundBuilder();
          road.stretch({ length: 0, cruise: speed, exit: speed, launch: 1, braking: 1, grade: 0 });
          road.turn(radius, angle, side, 0);
          const t = road.trace("bend");
          let heading = 0;
          for (let i = 0; i + 1 < t.time.length; i++)
            heading += (t.lateral[i] / t.speed[i + 1]) * (t.time[i + 1] - t.time[i]);
          expect(heading).toBeCloseTo(side * angle, 6);
          if ((radius * angle) / speed > 1) expect(most(t.lateral)).toBeCloseTo((speed * speed) / radius, 9);
        },
      ),
    );
  });
});
