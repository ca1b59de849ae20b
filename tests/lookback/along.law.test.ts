// Driving by the clock: trips bring their running and their metres while they last, also the one that runs over the edge of the visit's week.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { weekOf, type Week } from "../../src/driving/pattern.ts";
import { drivenBack, milesOf, runningOf, wayBack, wayOf, wayUntil } from "../../src/lookback/along.ts";
import { hours, trace } from "../emerge/van.ts";

const DAY = 86400;
const WEEK = 7 * DAY;
/** The engine idles so long before each trip's first gear [s], as in every history. */
const IDLE = 2;

interface Drive {
  readonly weekday: number;
  readonly startsAt: number;
  readonly minutes: number;
  readonly speed: number;
}

const weekFrom = (drives: readonly Drive[]): Week =>
  weekOf(
    drives.map(({ weekday, startsAt, minutes, speed }, i) => ({
      trace: trace(`drive ${i}`, [
        [0, 0],
        [5, speed],
        [10, speed],
        [15, 0],
        [60 * minutes, 0],
      ]),
      startsAt,
      days: [weekday],
    })),
    60,
  );

/** One drive each on some days, at any hour and for up to six hours: over midnight, and over the edge of whichever week the visit's weekday gives. */
const drive = (weekday: number) =>
  fc.record({
    weekday: fc.constant(weekday),
    startsAt: fc.integer({ min: 6 * 3600, max: DAY - 600 }),
    minutes: fc.integer({ min: 5, max: 360 }),
    speed: fc.integer({ min: 1, max: 10 }),
  });
const drives = fc
  .subarray([0, 1, 2, 3, 4, 5, 6], { minLength: 1 })
  .chain((days) => fc.tuple(...days.map(drive)));
const visits = fc
  .record({
    drives,
    weekday: fc.integer({ min: 0, max: 6 }),
    at: fc.double({ min: 0.3 * WEEK, max: 20 * WEEK, noNaN: true }),
  })
  .map(({ drives, weekday, at }) => ({
    week: weekFrom(drives),
    weekday,
    at,
    whole: drives.reduce((sum, { minutes }) => sum + 60 * minutes + IDLE, 0),
  }));
const clocks = fc.double({ min: -30 * WEEK, max: 30 * WEEK, noNaN: true });

/** Sums of some 1e6 s are rounded [s]. */
const ROUNDING = 1e-6;

/** Starts an hour before the visit's week is over, and takes two. */
const overTheEdge = {
  week: weekFrom([{ weekday: 3, startsAt: 23 * 3600, minutes: 120, speed: 8 }]),
  weekday: 4,
};

describe("running by the clock", () => {
  test("goes on over the edge of the visit's week", () => {
    const running = runningOf(overTheEdge);
    expect(running(0)).toBe(0);
    // 7202 s from Thursday at 23:00: half of it by midnight, the rest within the next hour.
    expect(running(hours(1)) - running(-hours(1))).toBeCloseTo(7200, 6);
    expect(running(hours(0.5))).toBeCloseTo(1800, 6);
    expect(running(-hours(0.5))).toBeCloseTo(-1800, 6);
    expect(running(hours(3))).toBeCloseTo(3602, 6);
    expect(running(WEEK - hours(1))).toBeCloseTo(3602, 6);
  });

  test("brings a week's driving every week, wherever in the week that is begun, and nothing at second 0", () => {
    fc.assert(
      fc.property(visits, clocks, ({ week, weekday, whole }, clock) => {
        const running = runningOf({ week, weekday });
        expect(running(0)).toBe(0);
        expect(Math.abs(running(clock + WEEK) - running(clock) - whole)).toBeLessThan(ROUNDING);
      }),
    );
  });

  test("never goes back, and never runs faster than the clock but for the idling where trip follows on trip", () => {
    fc.assert(
      fc.property(
        visits,
        clocks,
        fc.double({ min: 0, max: 3 * DAY, noNaN: true }),
        ({ week, weekday }, clock, more) => {
          const running = runningOf({ week, weekday });
          const ran = running(clock + more) - running(clock);
          expect(ran).toBeGreaterThan(-ROUNDING);
          expect(ran).toBeLessThan(more * (1 + IDLE / 300) + ROUNDING);
        },
      ),
    );
  });

  test("does not jump at the edge of any week", () => {
    fc.assert(
      fc.property(visits, fc.integer({ min: -30, max: 30 }), ({ week, weekday }, weeks) => {
        const running = runningOf({ week, weekday });
        expect(Math.abs(running(weeks * WEEK + 1e-3) - running(weeks * WEEK - 1e-3))).toBeLessThan(3e-3);
      }),
    );
  });
});

/** The second trip begins in the second in which the first has driven its schedule; the idling before its first gear makes that 2 s longer. */
const tripOnTrip = {
  week: weekFrom([
    { weekday: 3, startsAt: 23 * 3600, minutes: 60, speed: 8 },
    { weekday: 4, startsAt: 0, minutes: 60, speed: 8 },
  ]),
  weekday: 4,
};

test("a trip that follows on another begins when that is over, and both bring all of theirs", () => {
  const running = runningOf(tripOnTrip);
  expect(running(0) - running(-hours(1))).toBeCloseTo(3602, 6);
  expect(running(hours(2))).toBeCloseTo(3602, 6);
  const back = drivenBack({ ...tripOnTrip, at: WEEK + hours(2) });
  expect(back(WEEK / 4)).toBeCloseTo(WEEK + 1801, 3);
  expect(back((WEEK * 3) / 4)).toBeCloseTo(WEEK - 1800, 3);
});

describe("the way", () => {
  test("rises from nothing at second 0 to all at the visit, and never goes back", () => {
    fc.assert(
      fc.property(visits, clocks, fc.double({ min: 0, max: WEEK, noNaN: true }), (visit, clock, more) => {
        const way = wayOf(visit);
        expect(way(0)).toBe(0);
        expect(way(visit.at)).toBe(1);
        expect(way(clock + more) - way(clock)).toBeGreaterThan(-1e-9);
      }),
    );
  });
});

describe("the moment by which a share of the way is driven", () => {
  /** A nanometre of a way of a few hundred kilometres, and sums of so many seconds [s]. */
  const SAME = 1e-9;

  test("is the first one, exactly", () => {
    fc.assert(
      fc.property(visits, fc.double({ min: 0, max: 1, noNaN: true }), (visit, share) => {
        const [way, back] = [wayOf(visit), wayBack(visit)];
        if (!(way(visit.at) === 1)) return;
        const at = back(share);
        expect(at).toBeLessThanOrEqual(visit.at + ROUNDING);
        expect(Math.abs(way(at) - share)).toBeLessThan(SAME);
        // It moves then: a tenth of a second earlier less was driven.
        expect(way(at - 0.1)).toBeLessThan(share - 1e-12);
      }),
      { numRuns: 400 },
    );
  });

  test("is not after the moment at which it was found driven", () => {
    fc.assert(
      fc.property(visits, fc.double({ min: 0, max: 1, noNaN: true }), (visit, part) => {
        const clock = part * visit.at;
        expect(wayBack(visit)(wayOf(visit)(clock))).toBeLessThan(clock + ROUNDING);
      }),
      { numRuns: 400 },
    );
  });

  test("is the end of the last trip for all of it, and the end of the one before second 0 for none of it", () => {
    const back = wayBack({ ...overTheEdge, at: WEEK + hours(12) });
    expect(back(1)).toBeCloseTo(WEEK + 3602, 6);
    // Second 0 lies in a trip.
    expect(back(0)).toBeCloseTo(0, 6);
    const [weekday, minutes] = [1, 30];
    const week = weekFrom([{ weekday, startsAt: hours(8), minutes, speed: 10 }]);
    const later = wayBack({ week, weekday: 0, at: 2 * WEEK });
    expect(later(1)).toBeCloseTo(WEEK + DAY + hours(8.5) + IDLE, 6);
    expect(later(0.5)).toBeCloseTo(DAY + hours(8.5) + IDLE, 6);
    expect(later(0)).toBeCloseTo(-6 * DAY + hours(8.5) + IDLE, 6);
  });

  test("goes by the clock where nothing is driven", () => {
    const visit = { week: weekFrom([]), weekday: 0, at: 3 * DAY };
    expect(wayBack(visit)(0.25)).toBe(0.75 * DAY);
    expect(wayOf(visit)(0.75 * DAY)).toBe(0.25);
  });
});

describe("driven back from the visit", () => {
  test("finds the moment within the trip that runs over the edge", () => {
    const back = drivenBack({ ...overTheEdge, at: WEEK + hours(12) });
    // From Thursday at 23:00 for 7202 s: an eighth of them, half and seven eighths before its end.
    expect(back(WEEK / 8)).toBeCloseTo(WEEK + 3602 - 900.25, 3);
    expect(back(WEEK / 2)).toBeCloseTo(WEEK + 1, 3);
    expect(back((WEEK * 7) / 8)).toBeCloseTo(WEEK - 3600 + 900.25, 3);
  });

  test("is what was driven until the visit, in any week and before second 0", () => {
    fc.assert(
      fc.property(visits, fc.double({ min: 0, max: 30 * WEEK, noNaN: true }), (visit, age) => {
        const running = runningOf(visit);
        const from = drivenBack(visit)(age);
        expect(Math.abs(running(visit.at) - running(from) - (age / WEEK) * visit.whole)).toBeLessThan(
          ROUNDING,
        );
      }),
    );
  });

  test("lies further back for more driving, and always in a trip", () => {
    fc.assert(
      fc.property(
        visits,
        fc.double({ min: 1, max: 30 * WEEK, noNaN: true }),
        fc.double({ min: 0, max: WEEK, noNaN: true }),
        (visit, age, more) => {
          const [running, back] = [runningOf(visit), drivenBack(visit)];
          const from = back(age);
          expect(back(age + more)).toBeLessThanOrEqual(from + ROUNDING);
          expect(running(from + 0.1) - running(from - 0.1)).toBeGreaterThan(0.05);
        },
      ),
    );
  });
});

describe("a vehicle that stood from a moment on", () => {
  /** Two trips a day, from Monday on; the visit is on Friday at noon. */
  const visit = {
    week: weekFrom(
      [0, 1, 2, 3, 4, 5, 6].flatMap((weekday) =>
        [7, 17].map((hour) => ({ weekday, startsAt: hours(hour), minutes: 30, speed: 15 })),
      ),
    ),
    weekday: 0,
    at: 4 * DAY + hours(12),
  };
  const way = wayOf(visit);
  const ways = { way, wayBack: wayBack(visit) };
  const stood = 2 * DAY + hours(7) + 300;

  test("has all of its way behind it then, and gathers none while it stands", () => {
    const until = wayUntil(way, stood);
    expect(until(stood)).toBe(1);
    expect(until(visit.at)).toBe(1);
    expect(until(hours(12))).toBeCloseTo(way(hours(12)) / way(stood), 12);
    for (const clock of [0, hours(12), stood, visit.at])
      expect(wayUntil(way, Infinity)(clock)).toBe(way(clock));
  });

  test("is told by the miles as that part of the way to the visit; one that drove in keeps its moments", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: visit.at, noNaN: true }), (clock) => {
        const miles = milesOf(ways, stood, visit.at, clock);
        expect(miles).toBeGreaterThanOrEqual(Math.min(clock, stood));
        expect(miles).toBeLessThanOrEqual(visit.at);
        expect(Math.abs(way(miles) - wayUntil(way, stood)(clock))).toBeLessThan(1e-9);
        expect(milesOf(ways, Infinity, visit.at, clock)).toBe(clock);
      }),
    );
  });
});
