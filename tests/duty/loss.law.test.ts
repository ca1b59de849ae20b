// When so much was lost, and how much was lost by then: one is the other read backwards, in trips and stands, over top-ups, and at both ends.
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { clock, weekOf, workdays } from "../../src/driving/pattern.ts";
import { dutyLoss } from "../../src/duty/loss.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import type { Leak } from "../../src/physics/build.ts";
import { celsius, days, gap, hole, hours, leaking, plan, steelCrack, van } from "../emerge/van.ts";

const WEEK = days(7);
const air = celsius(5);
const round = parcelRound(3, { hardness: 1, hilliness: 0.5, duration: 2400 });
/** Two trips a day, the last round of the week over the midnight with which a week from Saturday begins; from Saturday noon on it stands. */
const week = weekOf([
  { trace: nedc, startsAt: clock(7), days: [0, 1, 2, 3, 4, 5] },
  { trace: round, startsAt: clock(16), days: workdays.slice(0, 4) },
  { trace: round, startsAt: clock(23, 40), days: [4] },
]);
const column = { lineAbove: 1.5e-4, columnHeight: 0.2 };
const leaks: Readonly<Record<string, Leak>> = {
  "a weep under the pan": leaking("pan", hole(0.25e-3), { height: 0.005 }),
  "a hole at the pan's side": leaking("pan", hole(0.4e-3), { height: 0.05 }),
  "a hole under a column": leaking("supply-line", hole(0.15e-3), column),
  "a stream": leaking("supply-line", hole(1.2e-3), column),
  "a gap": leaking("return-line", gap(20e-6)),
  "a crack that parts": leaking("supply-line", steelCrack(6e-3, hours(9)), column),
};
const SPAN = days(28);
let prepared: Prepared;
beforeAll(() => {
  prepared = prepareLoss(plan(van, week, air).unit, week, air);
}, 120_000);

const follow = (leak: Leak | null, more: Parameters<typeof plan>[3] = {}) =>
  dutyLoss(prepared, plan({ ...van, leak }, week, air, { span: SPAN, ...more }));

/** A stand is searched to a hundredth of a second; losses of some kg are rounded. */
const NEAR = 0.01;
const ROUNDING = 1e-11;

const courses = fc.record({
  leak: fc.constantFrom(...Object.values(leaks)),
  weekday: fc.integer({ min: 0, max: 6 }),
  opens: fc.double({ min: -days(5), max: days(25), noNaN: true }),
  topUps: fc.array(
    fc.record({
      at: fc.double({ min: 0, max: SPAN - 1, noNaN: true }),
      volume: fc.double({ min: 0.1e-3, max: 1.5e-3, noNaN: true }),
      temperature: fc.constant(celsius(20)),
    }),
    { maxLength: 2 },
  ),
});
const followed = ({
  leak,
  weekday,
  opens,
  topUps,
}: typeof courses extends fc.Arbitrary<infer T> ? T : never) =>
  follow(leak, { weekday, opens: { after: opens }, topUps });

describe("the moment by which so much was lost", () => {
  test("is the first one, to a hundredth of a second", () => {
    let [asked, topped] = [0, 0];
    fc.assert(
      fc.property(courses, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (course, share) => {
        const { lostBy, lostWhen } = followed(course);
        const all = lostBy(SPAN);
        if (!(all > 1e-6)) return;
        asked++;
        if (course.topUps.length > 0) topped++;
        const at = lostWhen(share * all);
        expect(at).toBeGreaterThanOrEqual(Math.max(0, course.opens));
        expect(at).toBeLessThanOrEqual(SPAN);
        expect(lostBy(at + 1e-6)).toBeGreaterThan(share * all - ROUNDING);
        expect(lostBy(at - NEAR - 1e-6)).toBeLessThan(share * all + ROUNDING);
      }),
      { numRuns: 400 },
    );
    expect(asked).toBeGreaterThan(200);
    expect(topped).toBeGreaterThan(50);
  });

  test("is not after the moment at which it was found lost", () => {
    fc.assert(
      fc.property(courses, fc.double({ min: 0, max: SPAN, noNaN: true }), (course, clock) => {
        const { lostBy, lostWhen } = followed(course);
        expect(lostWhen(lostBy(clock))).toBeLessThan(clock + NEAR + 1e-6);
      }),
      { numRuns: 400 },
    );
  });

  test("in a trip is exact", () => {
    const { lostBy, lostWhen } = follow(leaks["a gap"]!);
    for (const start of [hours(7), days(1) + hours(16), days(15) + hours(7)])
      for (const into of [60, 600, 1170])
        expect(Math.abs(lostWhen(lostBy(start + into)) - start - into)).toBeLessThan(1e-4);
  });

  test("is second 0 of nothing, and never of anything where nothing leaks, or before it leaks, or of more than is lost by the end", () => {
    for (const leak of Object.values(leaks)) {
      const { lostBy, lostWhen } = follow(leak);
      const all = lostBy(SPAN);
      expect(lostWhen(0)).toBe(0);
      expect(lostWhen(all * (1 - 1e-9))).toBeLessThanOrEqual(SPAN);
      expect(lostWhen(all * (1 + 1e-9))).toBe(Infinity);
      // Nothing more is told after the end of the march.
      expect(lostBy(SPAN + days(3))).toBe(all);
      expect(follow(leak, { opens: { after: SPAN + days(1) } }).lostWhen(1e-6)).toBe(Infinity);
    }
    expect(follow(null).lostWhen(0)).toBe(0);
    expect(follow(null).lostWhen(1e-6)).toBe(Infinity);
  });

  test("of more than there is to be lost waits for what is added", () => {
    const leak = leaking("supply-line", hole(0.2e-3), column);
    const dry = follow(leak);
    const most = dry.lostBy(SPAN);
    expect(dry.lostBy(2 * WEEK)).toBe(most);
    expect(dry.lostWhen(most)).toBeLessThan(2 * WEEK);
    expect(dry.lostWhen(most + 0.1)).toBe(Infinity);
    const topUps = [{ at: days(16), volume: 1e-3, temperature: celsius(20) }];
    const { lostBy, lostWhen } = follow(leak, { topUps });
    const at = lostWhen(most + 0.1);
    expect(at).toBeGreaterThanOrEqual(2 * WEEK);
    expect(at).toBeLessThan(SPAN);
    expect(lostBy(at + 1e-6)).toBeGreaterThan(most + 0.1 - ROUNDING);
    expect(lostBy(at - NEAR - 1e-6)).toBeLessThan(most + 0.1 + ROUNDING);
  });
});
