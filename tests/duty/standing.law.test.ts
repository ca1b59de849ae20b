// What has leaked by a moment of a stand, by averages: also after a week's last trip, whose stand is booked with the next week's first one.
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { clock, tripTime, weekOf, workdays } from "../../src/driving/pattern.ts";
import { dutyLoss } from "../../src/duty/loss.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { idleFirst } from "../../src/history/plan.ts";
import { simulate } from "../../src/history/simulate.ts";
import { celsius, days, hole, hours, leaking, plan, van } from "../emerge/van.ts";

const DAY = 86400;
const WEEK = 7 * DAY;
const air = celsius(5);
const round = parcelRound(3, { hardness: 1, hilliness: 0.5, duration: 2400 });
/** The last trip of a week that begins on Monday is Saturday's; one that begins on Thursday or Saturday ends with a round that runs over midnight. */
const week = weekOf([
  { trace: nedc, startsAt: clock(7), days: [0, 1, 2, 3, 4, 5] },
  { trace: round, startsAt: clock(16), days: workdays },
]);
const late = weekOf([
  { trace: nedc, startsAt: clock(7), days: workdays },
  { trace: round, startsAt: clock(23, 40), days: [2, 4] },
]);
const leaks = {
  "under the pan": leaking("pan", hole(0.25e-3), { height: 0.005 }),
  "in a line with a column over it": leaking("supply-line", hole(0.15e-3), {
    lineAbove: 1.5e-4,
    columnHeight: 0.2,
  }),
};
let prepared: Prepared;
let preparedLate: Prepared;
beforeAll(() => {
  prepared = prepareLoss(plan(van, week, air).unit, week, air);
  preparedLate = prepareLoss(plan(van, late, air).unit, late, air);
}, 120_000);

describe("in the stand after a week's last trip averages and the walk tell the same, to a fiftieth of what the stand loses", () => {
  const saturday = hours(7) + idleFirst + tripTime(week.days[5]![0]!);
  test.each(
    Object.entries(leaks).flatMap(([name, leak]) =>
      [1, 2].map(
        (weeks) =>
          [
            `${name}, ${weeks === 1 ? "at the end of the march" : "the next week marched too"}`,
            leak,
            weeks,
          ] as const,
      ),
    ),
  )("a hole %s", (_, leak, weeks) => {
    const ended = days(5) + saturday;
    const asked = plan({ ...van, leak }, week, air, { span: days(7 * weeks) });
    const { lostBy } = dutyLoss(prepared, asked);
    const walked = (at: number) => {
      const { hidden, onRoad, onGround } = simulate({ ...asked, span: at }).end;
      return hidden + onRoad + onGround;
    };
    const midnight = walked(WEEK) - walked(ended);
    expect(midnight).toBeGreaterThan(0.01);
    for (const after of [0.5, 1, 2, 4, 8, 16, 32]) {
      const at = ended + hours(after);
      const gone = lostBy(at) - lostBy(ended);
      expect(Math.abs(gone - (walked(at) - walked(ended))) / midnight).toBeLessThan(1 / 50);
    }
    expect(Math.abs((lostBy(WEEK) - lostBy(ended)) / midnight - 1)).toBeLessThan(1 / 50);
  });
});

test("what is lost by a moment never falls and never jumps, at no edge of a trip or a week, wherever the week begins and the leak opens", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.values(leaks)),
      fc.boolean(),
      fc.integer({ min: 0, max: 6 }),
      fc.double({ min: -days(3), max: days(20), noNaN: true }),
      (leak, overMidnight, weekday, opens) => {
        const [driven, over] = overMidnight ? [late, preparedLate] : [week, prepared];
        const { lostBy } = dutyLoss(
          over,
          plan({ ...van, leak }, driven, air, { weekday, opens: { after: opens }, span: days(21) }),
        );
        const edges = over.occurrences.flatMap(({ kind, startsAt }) =>
          [startsAt, startsAt + over.kinds[kind]!.time].map(
            (at) => (((at - weekday * DAY) % WEEK) + WEEK) % WEEK,
          ),
        );
        const moments = [0, 1, 2]
          .flatMap((n) => [0, ...edges].map((edge) => n * WEEK + edge))
          .concat(3 * WEEK, Math.max(0, opens));
        // A leak of these loses less than 1e-4 kg/s: 2e-7 kg in the 2 ms about an edge.
        for (const at of moments) expect(lostBy(at + 1e-3) - lostBy(at - 1e-3)).toBeLessThan(2e-7);
        let before = 0;
        for (let at = 0; at < days(22); at += hours(0.7)) {
          const lost = lostBy(at);
          expect(lost).toBeGreaterThan(before - 1e-12);
          before = lost;
        }
        expect(before).toBeGreaterThan(0);
      },
    ),
    { numRuns: 40 },
  );
});
