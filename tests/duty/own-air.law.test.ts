// Within a trip the loss runs as in the air of that trip's week, whatever was marched meanwhile.
import { describe, expect, it } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { lostAt } from "../../src/duty/happen.ts";
import { marched } from "../../src/duty/marched.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import { spread } from "../../src/duty/week.ts";
import { celsius, daily, days, hole, leaking, plan, van } from "../emerge/van.ts";

const week = daily(nedc);
const [cold, warm] = [celsius(0), celsius(24)].map((air) => prepareLoss(van, week, air)) as [
  Prepared,
  Prepared,
];
const prepared: Prepared = { ...cold, climates: [...cold.climates, ...warm.climates] };

/** What the first trip after the opening has lost by its middle, of a plan that goes on for so many weeks from January into summer. */
function lostByTheMiddle(weeks: number): number {
  const leak = leaking("return-line", hole(0.1e-3));
  const unit = { ...van, leak, surroundings: { meanTemperature: celsius(12), yearlySwing: 12 } };
  const span = days(7 * weeks);
  const asked = plan(unit, week, celsius(12), { span, dayOfYear: 14, opens: { after: days(0.1) } });
  const { march } = marched(prepared, { ...asked, unit });
  spread(march, 0);
  const { time } = prepared.kinds[prepared.occurrences[march.order[0]!]!.kind]!;
  return lostAt(march, 0, 0, 0.5 * time);
}

describe("the week in which a leak opens", () => {
  it("is told the same to the bit by a plan that ends with it and by one that goes on into another season", () => {
    const alone = lostByTheMiddle(1);
    expect(alone).toBeGreaterThan(0);
    expect(lostByTheMiddle(20)).toBe(alone);
  });
});
