// The two fidelities on one drawn week: four of its five cases, on which every event agrees. The whole account, with the cases on
// which a trip's critical loss lies within a few grams of what is lost and the averages miss it, is `npm run agree`.
import { beforeAll, describe, expect, it, test } from "vitest";
import { dutyHistory } from "../../src/duty/history.ts";
import { prepareDuty } from "../../src/duty/prepare.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { simulate } from "../../src/history/simulate.ts";
import { drawWeek } from "./cases.ts";

const SEED = 12;
const WITHIN = 0.01;
const AGREE = [0, 1, 2, 4];
const drawn = drawWeek(SEED, 5);
const { week, air } = drawn;
const cases = AGREE.map((i) => drawn.cases[i]!);
let prepared: Prepared;
beforeAll(() => {
  prepared = prepareDuty(cases[0]!.plan.unit, week, undefined, air)!;
}, 60_000);

const hours = (seconds: number) => `${(seconds / 3600).toFixed(3)} h`;

describe("events agree within 1 % of the running hours", () => {
  test.each(cases)("$name", { timeout: 60_000 }, ({ name, plan }) => {
    const averaged = dutyHistory(prepared, plan);
    const apart: string[] = [];
    let shared = 0;
    for (const event of simulate(plan).events) {
      const other = averaged.events.find((same) => same.name === event.name && same.clutch === event.clutch);
      if (other === undefined) continue;
      shared++;
      if (Math.abs(other.running - event.running) > WITHIN * event.running)
        apart.push(
          `${name}, ${event.name} ${event.clutch ?? ""}: ${hours(event.running)}, averaged ${hours(other.running)}`,
        );
    }
    expect(apart).toEqual([]);
    expect(shared).toBeGreaterThan(6);
  });
});

it("a prepared week is plain data: sent and come back it gives the same histories", () => {
  const copy = structuredClone(prepared);
  for (const { plan } of cases) expect(dutyHistory(copy, plan)).toEqual(dutyHistory(prepared, plan));
});
