// A vehicle that is driven more seldom than its week says stands for longer between its trips: what leaks at rest leaks by the calendar.
import { expect, test } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { clock, tripTime, weekOf } from "../../src/driving/pattern.ts";
import { dutyLoss } from "../../src/duty/loss.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import { simulate, type Plan } from "../../src/history/simulate.ts";
import { celsius, days, hole, hours, leaking, van } from "../emerge/van.ts";

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

/** When the seven trips end, on the plan's clock and on that of the week with one of them [s]. */
const ended = (trip: number, apart: number) =>
  days(trip * apart) + hours(8) + tripTime(everyDay.days[0]![0]!);

// From the end of the first trip to that of the last: the stand before the first is of any length.
test("seven trips in seven weeks lose what they lose where a week has one of them, by averages and walked, to a fiftieth", () => {
  const prepared = prepareLoss(unit, everyDay, celsius(15));
  const seldom = dutyLoss(prepared, { ...plan(everyDay, days(7)), weekLasts: days(49) });
  const lost = seldom.lostBy(ended(6, 1)) - seldom.lostBy(ended(0, 1));
  const own = dutyLoss(prepareLoss(unit, onceAWeek, celsius(15)), plan(onceAWeek, days(49)));
  const averaged = own.lostBy(ended(6, 7)) - own.lostBy(ended(0, 7));
  const { trips } = simulate(plan(onceAWeek, days(49)));
  const walked = trips.at(-1)!.lost - trips[0]!.lost;
  expect(walked).toBeGreaterThan(0.05);
  expect(Math.abs(averaged / walked - 1)).toBeLessThan(1 / 50);
  expect(Math.abs(lost / walked - 1)).toBeLessThan(1 / 50);
  // The same week walked, standing for longer between its trips.
  const { trips: seven } = simulate({ ...plan(everyDay, days(7)), weekLasts: days(49) });
  expect(seven).toHaveLength(7);
  expect(Math.abs((seven[6]!.lost - seven[0]!.lost) / walked - 1)).toBeLessThan(1 / 500);
  // With stands as long as the week tells them a sixth of it would be lost.
  const often = dutyLoss(prepared, plan(everyDay, days(7)));
  expect(lost).toBeGreaterThan(5 * (often.lostBy(ended(6, 1)) - often.lostBy(ended(0, 1))));
});
