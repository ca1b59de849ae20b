// What a leak loses around a week's midnight and in long stands, by averages against the walk trip by trip.
import { describe, expect, test } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { clock, weekOf, type Week } from "../../src/driving/pattern.ts";
import { marched } from "../../src/duty/marched.ts";
import { lostAtMidnights } from "../../src/duty/midnights.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import { simulate, type Plan } from "../../src/history/simulate.ts";
import type { Leak } from "../../src/physics/build.ts";
import { celsius, days, hole, leaking, plan, van } from "../emerge/van.ts";

const lostBy = (one: Plan, span: number): number => {
  const { hidden, onRoad, onGround } = simulate({ ...one, span }).end;
  return hidden + onRoad + onGround;
};
/** Lost by the second midnight between weeks, averaged; and the plan that did. */
function averaged(week: Week, air: number, leak: Leak, opens: Plan["opens"]) {
  const asked = plan({ ...van, leak }, week, air, { span: days(14), opens });
  const prepared = prepareLoss(van, week, air);
  return { asked, lost: lostAtMidnights(marched(prepared, asked).march, 2) };
}

describe("averages against the walk", () => {
  test.each([
    ["20 minutes", clock(23)],
    ["two hours", clock(21, 30)],
  ])("a midnight %s after a trip: to within a seventh of what a hot pan lost since", (_, at) => {
    const round = parcelRound(3, { hardness: 1, hilliness: 0.5, duration: 2400 });
    const week = weekOf([
      { trace: round, startsAt: at, days: [6] },
      { trace: nedc, startsAt: clock(12), days: [3] },
    ]);
    const leak = leaking("pan", hole(0.25e-3), { height: 0.005 });
    const { asked, lost } = averaged(week, celsius(-5), leak, { after: days(6) + clock(20) });
    const before = lostBy(asked, days(6) + at + round.time[round.time.length - 1]! + 3);
    const walked = lostBy(asked, days(7));
    expect(Math.abs(lost[1]! - walked)).toBeLessThan(0.15 * (walked - before));
  });

  test.each([5, 30, 50, 55])("a week's stand over a hole %s mm high: to within a hundredth", (mm) => {
    const week = weekOf([{ trace: nedc, startsAt: clock(7), days: [2] }]);
    const leak = leaking("pan", hole(0.16e-3), { height: mm * 1e-3 });
    const { asked, lost } = averaged(week, celsius(12), leak, { after: 0 });
    const walked = lostBy(asked, days(14));
    expect(Math.abs(lost[2]! / walked - 1)).toBeLessThan(0.01);
  });

  test("a leak that opens after midnight in the week's last trip leaks through the rest of that trip", () => {
    const week = weekOf([
      { trace: nedc, startsAt: clock(23, 50), days: [6] },
      { trace: nedc, startsAt: clock(7), days: [2] },
    ]);
    const opens = days(7) + 200;
    const { asked, lost } = averaged(week, celsius(12), leaking("supply-line", hole(0.16e-3)), {
      after: opens,
    });
    expect(lost[1]).toBe(0);
    // The walk ends with the trip that is on its way at its end: what the trip of the second midnight loses after it is taken off.
    const after = lostBy({ ...asked, opens: { after: days(14) } }, days(14));
    const walked = lostBy(asked, days(14)) - after;
    expect(Math.abs(lost[2]! / walked - 1)).toBeLessThan(0.01);
  });
});
