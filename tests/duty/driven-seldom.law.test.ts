// A vehicle that is driven more seldom than its week says stands for longer between its trips: what leaks at rest leaks by the calendar.
import { expect, test } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { clock, weekOf } from "../../src/driving/pattern.ts";
import { dutyLoss } from "../../src/duty/loss.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import { simulate, type Plan } from "../../src/history/simulate.ts";
import { celsius, days, hole, leaking, van } from "../emerge/van.ts";

const everyDay = weekOf([{ trace: nedc, startsAt: clock(8), days: [0, 1, 2, 3, 4, 5, 6] }]);
const onceAWeek = weekOf([{ trace: nedc, startsAt: clock(8), days: [0] }]);
const unit = {
  ...van,
  leak: leaking("pan", hole(1.2e-4), { height: 0 }),
  surroundings: { meanTemperature: celsius(15), yearlySwing: 0 },
};
const plan = (week: Plan["week"], span: number): Plan => ({
  unit,
  week,
  weekday: 0,
  dayOfYear: 100,
  opens: { after: 0 },
  topUps: [],
  span,
});

// The week of seven trips at a seventh of its use, against the week of one trip: by averages too, and walked trip by trip, from which averages of such stands differ by a seventh.
test("seven trips in seven weeks lose what they lose where a week has one of them", () => {
  const prepared = prepareLoss(unit, everyDay, celsius(15));
  const seldom = dutyLoss(prepared, { ...plan(everyDay, days(7)), weekLasts: days(49) }).lostBy(days(7));
  const own = prepareLoss(unit, onceAWeek, celsius(15));
  expect(seldom / dutyLoss(own, plan(onceAWeek, days(49))).lostBy(days(49))).toBeCloseTo(1, 1);
  const { end } = simulate(plan(onceAWeek, days(49)));
  const walked = end.hidden + end.onRoad + end.onGround;
  expect(walked).toBeGreaterThan(0.02);
  expect(Math.abs(seldom / walked - 1)).toBeLessThan(1 / 7);
  const often = dutyLoss(prepared, plan(everyDay, days(7))).lostBy(days(7));
  expect(seldom).toBeGreaterThan(4 * often);
});
