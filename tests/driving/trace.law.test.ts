import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isCoded } from "../../src/errors.ts";
import {
  accelerationAt,
  longestBeyond,
  shareBeyond,
  standingSamples,
  statistics,
  stretchesBeyond,
} from "../../src/driving/statistics.ts";
import { ticks } from "../../src/driving/ticks.ts";
import { traceFrom } from "../../src/driving/trace-from.ts";

/** Rows a second or so apart, with stops, grades and bends. */
const trace = fc
  .array(
    fc.record({
      dt: fc.double({ min: 0.05, max: 4, noNaN: true }),
      speed: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 40, noNaN: true })),
      grade: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
      lateral: fc.double({ min: -4, max: 4, noNaN: true }),
    }),
    { minLength: 2, maxLength: 60 },
  )
  .map((rows) => {
    let now = 0;
    return traceFrom({
      name: "any",
      time: rows.map(({ dt }) => (now += dt)),
      speed: rows.map(({ speed }) => speed),
      grade: rows.map(({ grade }) => grade),
      lateral: rows.map(({ lateral }) => lateral),
    });
  });
const step = fc.double({ min: 0.1, max: 3, noNaN: true });

describe("ticks", () => {
  test("keep time and distance, are never longer than the step, or five of it at a steady speed, and end on every time of the trace", () => {
    fc.assert(
      fc.property(trace, step, (t, longest) => {
        const cut = ticks(t, longest);
        const ends = [t.time[0]];
        let before = t.speed[0];
        let distance = 0;
        for (let i = 0; i < cut.count; i++) {
          expect(cut.dt[i]).toBeGreaterThan(0);
          // Between two times of one speed nothing changes after three ticks: gears and lock-up have followed, no event of seconds can hide.
          const steady = i >= 3 && cut.speed[i] === before && cut.speed[i] === cut.speed[i - 3];
          expect(cut.dt[i]).toBeLessThanOrEqual((steady ? 5 : 1) * longest * (1 + 1.1e-6)); // a millionth is the cutter's slack
          ends.push(ends[i] + cut.dt[i]);
          distance += 0.5 * (before + cut.speed[i]) * cut.dt[i];
          before = cut.speed[i];
        }
        expect(distance).toBeCloseTo(statistics(t).distance, 6);
        for (const time of t.time)
          expect(Math.min(...ends.map((end) => Math.abs(end - time)))).toBeLessThan(1e-9);
      }),
    );
  });

  test("carry the grade and the bend of the piece that they lie in", () => {
    const t = traceFrom({
      name: "two",
      time: [0, 2, 3.5],
      speed: [0, 4, 4],
      grade: [0.05, -0.02, 9e-9],
      lateral: [0, 2, 0],
    });
    const cut = ticks(t);
    expect([...cut.dt]).toEqual([1, 1, 0.75, 0.75]);
    expect([...cut.speed]).toEqual([2, 4, 4, 4]);
    expect([...cut.grade]).toEqual([0.05, 0.05, -0.02, -0.02]);
    expect([...cut.lateral]).toEqual([0, 0, 2, 2]);
    expect(() => ticks(t, 0)).toThrow(/step/);
  });
});

describe("statistics", () => {
  test("of a trace of one row are refused: it has no time", () => {
    const row = Float64Array.of(0);
    const one = { name: "one", time: row, speed: row, grade: row, lateral: row };
    for (const asked of [
      () => statistics(one),
      () => shareBeyond(one, 0),
      () => stretchesBeyond(one, 0),
      () => accelerationAt(one, 0.5),
      () => standingSamples(one),
    ])
      expect(asked).toThrow(/trace.time: expected two moments or more; received 1/);
  });

  test("roots of mean squares are no less than means, and percentiles rise from the smallest to the largest", () => {
    fc.assert(
      fc.property(trace, (t) => {
        const all = statistics(t);
        expect(all.rmsSpeed).toBeGreaterThanOrEqual(all.meanSpeed * (1 - 1e-12));
        expect(all.rmsSpeed).toBeLessThanOrEqual(all.maxSpeed * (1 + 1e-12));
        expect(all.startSpeed).toBe(t.speed[0]);
        expect(all.relativePositiveAcceleration).toBeLessThanOrEqual(
          Math.max(0, all.maxAcceleration) + 1e-12,
        );
        const at = [0, 0.2, 0.5, 0.8, 1].map((share) => accelerationAt(t, share));
        expect(at[0]).toBe(all.minAcceleration);
        expect(at[4]).toBe(all.maxAcceleration);
        for (let i = 1; i < at.length; i++) expect(at[i]).toBeGreaterThanOrEqual(at[i - 1]!);
        expect(1 - shareBeyond(t, Math.max(0, at[3]!))).toBeGreaterThanOrEqual(0.8 - 1e-9);
      }),
    );
  });

  test("a steady start is 20 m/s in 10 s: 20/√3 root mean square, and a relative acceleration of 2", () => {
    const launch = traceFrom({ name: "launch", time: [0, 5, 10], speed: [0, 10, 20] });
    expect(statistics(launch).rmsSpeed).toBeCloseTo(20 / Math.sqrt(3), 12);
    expect(statistics(launch).relativePositiveAcceleration).toBeCloseTo(2, 12);
    expect(standingSamples(launch, 0.5)).toEqual({ samples: 21, standing: 1 });
  });

  test("are bounded by the rows, and do not depend on how finely a trace is written", () => {
    fc.assert(
      fc.property(trace, (t) => {
        const whole = statistics(t);
        expect(whole.meanSpeed).toBeLessThanOrEqual(whole.maxSpeed + 1e-12);
        expect(whole.meanMovingSpeed).toBeGreaterThanOrEqual(whole.meanSpeed - 1e-12);
        const cut = ticks(t, 0.25);
        let now = t.time[0];
        const fine = {
          ...t,
          time: Float64Array.from([now, ...Array.from(cut.dt, (dt) => (now += dt))]),
          speed: Float64Array.from([t.speed[0], ...cut.speed]),
          grade: Float64Array.from([...cut.grade, 0]),
          lateral: Float64Array.from([...cut.lateral, 0]),
        };
        const again = statistics(fine);
        expect(again.distance).toBeCloseTo(whole.distance, 6);
        expect(again.climb).toBeCloseTo(whole.climb, 6);
        expect(again.idleShare).toBeCloseTo(whole.idleShare, 9);
        expect(again.stops).toBe(whole.stops);
        // A threshold just off every acceleration, so that rounding cannot decide.
        expect(shareBeyond(fine, 0.98701)).toBeCloseTo(shareBeyond(t, 0.98701), 9);
        expect(longestBeyond(fine, -0.98701)).toBeCloseTo(longestBeyond(t, -0.98701), 6);
      }),
    );
  });

  test("count both ways: launching, braking and neither make the whole", () => {
    fc.assert(
      fc.property(trace, fc.double({ min: 0.001, max: 3, noNaN: true }), (t, a) => {
        expect(shareBeyond(t, a) + shareBeyond(t, -a)).toBeLessThanOrEqual(1 + 1e-12);
        expect(shareBeyond(t, a)).toBeLessThanOrEqual(shareBeyond(t, a / 2));
        expect(longestBeyond(t, a)).toBeLessThanOrEqual(shareBeyond(t, a) * statistics(t).duration + 1e-9);
      }),
    );
    expect(() => shareBeyond(traceFrom({ name: "x", time: [0, 1], speed: [0, 0] }), NaN)).toThrow(
      /threshold/,
    );
  });
});

describe("columns of a user", () => {
  const faultsOf = (columns: Parameters<typeof traceFrom>[0]) => {
    try {
      traceFrom(columns);
    } catch (error) {
      if (isCoded(error) && error.code === "bad-trace") return error.faults.map(({ path }) => path);
      throw error;
    }
    return [];
  };

  test("are taken when sound, with grade and bends left out as zero", () => {
    const t = traceFrom({ name: "mine", time: [0, 1, 2], speed: [0, 1, 0] });
    expect([...t.grade, ...t.lateral]).toEqual([0, 0, 0, 0, 0, 0]);
  });

  test("are refused with every fault named at once", () => {
    expect(
      faultsOf({
        name: "mine",
        time: [0, 1, 1, NaN, 4, 20],
        speed: [0, -1, 2, 3, 4, Infinity],
        grade: [0, 0, 0, 0.5, 0, 0],
        lateral: [0, 0, 0, 0, -12, 0],
      }),
    ).toEqual([
      "mine.time[2]",
      "mine.time[3]",
      "mine.time[4]",
      "mine.time[5]",
      "mine.speed[1]",
      "mine.speed[5]",
      "mine.grade[3]",
      "mine.lateral[4]",
    ]);
    expect(faultsOf({ name: "mine", time: [0], speed: [0, 1] })).toEqual(["mine.time", "mine.speed"]);
  });

  test("may leave a gap while the vehicle stands, not while it moves", () => {
    expect(faultsOf({ name: "mine", time: [0, 300], speed: [0, 0] })).toEqual([]);
    expect(faultsOf({ name: "mine", time: [0, 6], speed: [0, 1] })).toEqual(["mine.time[1]"]);
  });

  test("wrong in every row are all there, and told twenty times with the number of those left out", () => {
    const wrong = {
      name: "mine",
      time: Array.from({ length: 200 }, (_, i) => i),
      speed: new Array<number>(200).fill(-1),
    };
    expect(faultsOf(wrong)).toHaveLength(200);
    expect(() => traceFrom(wrong)).toThrow(
      /^(?:mine\.speed.*\n){20}and 180 more, the last at mine\.speed\[199\]$/,
    );
  });
});
