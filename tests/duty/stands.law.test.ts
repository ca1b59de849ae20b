// What a stand loses, by averages against the walk trip by trip: a leak under the pan, which loses most while the vehicle stands.
import { beforeAll, describe, expect, it } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { clock, weekOf, workdays } from "../../src/driving/pattern.ts";
import { dutyHistory } from "../../src/duty/history.ts";
import { prepareDuty } from "../../src/duty/prepare.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { simulate, type Plan } from "../../src/history/simulate.ts";
import { celsius, days, hole, hours, leaking, plan, van } from "../emerge/van.ts";

/** Workdays end with a long round, Saturdays with the short cycle: a night's stand begins hot after one and lukewarm after the other. */
const week = weekOf([
  { trace: nedc, startsAt: clock(7), days: [...workdays, 5] },
  {
    trace: parcelRound(3, { hardness: 1, hilliness: 0.5, duration: 2400 }),
    startsAt: clock(9),
    days: workdays,
  },
]);
const air = celsius(-5);
let prepared: Prepared;
beforeAll(() => {
  prepared = prepareDuty(plan(van, week, air).unit, week)!;
}, 120_000);

const leak = leaking("pan", hole(0.25e-3), { height: 0.005 });
const asked = (more: Partial<Plan>) => plan({ ...van, leak }, week, air, { span: days(21), ...more });
/** Lost by the midnight after some weeks, averaged over trip-resolved. */
const shares = (one: Plan, after: readonly number[]): number[] => {
  const { lost, handedOver } = dutyHistory(prepared, one);
  expect(handedOver).toBe("nothing");
  return after.map((weeks) => {
    const { hidden, onRoad, onGround } = simulate({ ...one, span: days(7 * weeks) }).end;
    return lost[weeks]! / (hidden + onRoad + onGround);
  });
};

describe("to within a hundredth a week's stands lose by averages what they lose trip by trip", () => {
  it("whatever trip each of them follows", () => {
    const told = shares(asked({ opens: { after: days(1) + hours(8) } }), [1, 2, 3]);
    for (const share of told) expect(Math.abs(share - 1)).toBeLessThan(0.01);
  });

  it("also where the leak opens after the last trip of a week", () => {
    const told = shares(asked({ opens: { after: days(6) + hours(12) } }), [2, 3]);
    for (const share of told) expect(Math.abs(share - 1)).toBeLessThan(0.01);
  });
});
