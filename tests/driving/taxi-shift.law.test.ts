import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dailyDriving, weekOf } from "../../src/driving/pattern.ts";
import { statistics } from "../../src/driving/statistics.ts";
import { taxiShift, usualShift } from "../../src/driving/taxi-shift.ts";
import { gravity as g } from "../../src/physics/load/road.ts";

const most = (values: Float64Array) => values.reduce((top, value) => Math.max(top, Math.abs(value)), 0);
const idleShare = (trace: ReturnType<typeof taxiShift>) =>
  dailyDriving(weekOf([{ trace, startsAt: 21600, days: [0] }])).idleShare;

describe("taxi shift", () => {
  test("is some three and a half hours, about half of them standing, within its bands", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), (seed) => {
        const t = taxiShift(seed);
        const { duration, distance, stops, maxSpeed, maxAcceleration, minAcceleration, climb } =
          statistics(t);
        expect(duration / 3600).toBeGreaterThan(3);
        expect(duration / 3600).toBeLessThan(4.5);
        expect(distance / 1000).toBeGreaterThan(45);
        expect(distance / 1000).toBeLessThan(80);
        expect(stops).toBeGreaterThan(70);
        expect(maxSpeed * 3.6).toBeGreaterThan(80); // it has been out to the airport
        expect(maxSpeed * 3.6).toBeLessThanOrEqual(110 + 1e-9);
        expect(idleShare(t)).toBeGreaterThan(0.4);
        expect(idleShare(t)).toBeLessThan(0.65);
        expect(maxAcceleration).toBeLessThanOrEqual(0.25 * g + 1e-9);
        expect(-minAcceleration).toBeLessThanOrEqual(0.3 * g + 1e-9);
        expect(most(t.lateral)).toBeLessThanOrEqual(0.3 * g + 1e-9);
        expect(most(t.grade)).toBeLessThanOrEqual(0.08);
        expect(Math.abs(climb)).toBeLessThan(10);
        expect(t.time.every((time, i) => i === 0 || time > t.time[i - 1])).toBe(true);
        expect([t.speed[0], t.speed[t.speed.length - 1]]).toEqual([0, 0]);
        expect(t.lateral.every((y, i) => y === 0 || t.speed[i] > 0)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  test("is the same for the same seed and another for the next", () => {
    expect(taxiShift(7)).toEqual(taxiShift(7));
    expect(taxiShift(7).time).not.toEqual(taxiShift(8).time);
  });

  test("follows its options", () => {
    expect(most(taxiShift(3, { ...usualShift, hilliness: 0 }).grade)).toBe(0);
    expect(most(taxiShift(3, { ...usualShift, hardness: 0.5 }).lateral)).toBeLessThanOrEqual(0.15 * g + 1e-9);
    const short = taxiShift(3, { ...usualShift, duration: 3600 });
    expect(statistics(short).maxSpeed * 3.6).toBeLessThanOrEqual(50); // an hour is too short for the airport
    expect(() => taxiShift(NaN)).toThrow(/seed/);
    expect(() => taxiShift(1, { ...usualShift, duration: 100 })).toThrow(/duration/);
    for (const hardness of [0.05, 2])
      for (const hilliness of [0, 4])
        for (const duration of [300, 9000]) {
          const t = taxiShift(11, { hardness, hilliness, duration });
          for (const column of [t.time, t.speed, t.grade, t.lateral])
            expect(column.every(Number.isFinite)).toBe(true);
          expect(t.speed.every((v) => v >= 0)).toBe(true);
        }
  });
});
