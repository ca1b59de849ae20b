import { expect, test } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { clock, dailyDriving, everyDay, tripTime, weekOf, workdays } from "../../src/driving/pattern.ts";
import { statistics } from "../../src/driving/statistics.ts";

const at = (startsAt: number, days: readonly number[] = everyDay) => ({ trace: nedc, startsAt, days });

test("a week holds its trips by day, in the order of their start", () => {
  const week = weekOf([at(clock(17, 30), workdays), at(clock(7, 30))]);
  expect(week.days.map((trips) => trips.length)).toEqual([2, 2, 2, 2, 2, 1, 1]);
  expect(week.days[0].map(({ startsAt }) => startsAt)).toEqual([27000, 63000]);
  expect(tripTime(week.days[0][0])).toBeCloseTo(1180, 6);
});

test("totals are those of the traces", () => {
  const { distance, idleShare } = statistics(nedc);
  const day = dailyDriving(weekOf([at(clock(7)), at(clock(8))]));
  expect(day.trips).toBe(2);
  expect(day.drivingTime).toBeCloseTo(2 * 1180, 6);
  expect(day.distance).toBeCloseTo(2 * distance, 6);
  expect(day.idleShare).toBeCloseTo(idleShare, 9);
  expect(dailyDriving(weekOf([]))).toEqual({ trips: 0, drivingTime: 0, distance: 0, idleShare: 0 });
});

test("trips may touch and run past midnight, and must not overlap", () => {
  expect(() => weekOf([at(0, [0]), at(1180, [0])])).not.toThrow();
  expect(() => weekOf([at(clock(23, 50), [6])])).not.toThrow();
  expect(() => weekOf([at(clock(23, 50), [6]), at(clock(0, 5), [0])])).toThrow(/week\.days\[0\]/);
  expect(() => weekOf([at(clock(12), [2]), at(clock(12, 19), [2])])).toThrow(/week\.days\[2\]/);
});

test("trips that overlap are told by their days and times of day", () => {
  expect(() => weekOf([at(clock(23, 50), [6]), at(clock(0, 5), [0])])).toThrow(
    /which starts on Sunday at 23:50 and takes until Monday at 00:10; received its start on Monday at 00:05/,
  );
});

test("faults are listed all at once", () => {
  expect(() => weekOf([at(-1), at(clock(25)), at(0, [7])])).toThrow(
    /trips\[0\][\s\S]*trips\[1\][\s\S]*trips\[2\]/,
  );
});
