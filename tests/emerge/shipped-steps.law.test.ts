// The cases as they are shipped: up to the first burnt clutch, half the steps move no event by a second.
import { expect, test } from "vitest";
import { simulate, type History } from "../../src/history/simulate.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { shipped } from "./van.ts";

/**
 * Seconds allowed where more than a step decides: a lining chars to a tenth in several slips, by the temperatures to which each of them
 * came; what a controller has learned about a fill comes to its limit with one shift or with the next, some minutes on.
 */
const allowed: Readonly<Record<string, number>> = { "damage 0.1": 2, "learned fill at its limit": 300 };

test.each(["pinhole", "parting-crack"])("of %s", (name) => {
  const plan = planOf(shipped(name));
  const usual = simulate(plan);
  const halved = simulate({ ...plan, fine: 0.025, finer: 0.01 });
  const quartered = simulate({ ...plan, fine: 0.0125, finer: 0.005 });
  const burnt = usual.events.findIndex((event) => event.name === "damage 1");
  expect(burnt).toBeGreaterThan(7);
  // A controller learns from the moments of single shifts: once that has come to its limit, shifts differ, and with them what follows.
  let hangsOnLessons = 0;
  for (const { name: what, clutch, running } of usual.events.slice(0, burnt + 1)) {
    const movedIn = ({ events }: History) => {
      const again = events.find((event) => event.name === what && event.clutch === clutch);
      return Math.abs((again?.running ?? Infinity) - running);
    };
    // The pinhole's slip twelve seconds before its first sustained one lasts 1.00 s, as long as it must: it counts with these steps and not with those. That event alone may agree with quartered steps instead.
    const tied = name === "pinhole" && what === "first sustained slip";
    const moved = tied ? Math.min(movedIn(halved), movedIn(quartered)) : movedIn(halved);
    expect(moved, what).toBeLessThan(Math.max(allowed[what] ?? 1, hangsOnLessons));
    if (what === "learned fill at its limit") hangsOnLessons = 5;
  }
});
