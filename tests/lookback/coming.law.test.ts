// Leaks that may come: how long a look could find them before they have done harm. One short round every other day, so that a test takes seconds.
import { beforeAll, describe, expect, test } from "vitest";
import { readVisit } from "../../src/inputs/visit.ts";
import { prepareDuty } from "../../src/duty/prepare.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { airOf } from "../../src/lookback/air.ts";
import { comingLeaks, delaysUntilHarm, type ComingLeak } from "../../src/lookback/coming.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { plainVisit, van } from "../inputs/visits.ts";

let visit: Visit;
let prepared: Prepared;
let leaks: readonly ComingLeak[];
beforeAll(() => {
  const trips = [
    { schedule: "parcel round", days: ["Mon", "Wed", "Fri"], at: "07:30", seed: 1, duration: "10 min" },
  ];
  const surroundings = { meanTemperature: "15 degC", yearlySwing: "0 K" };
  const { use: _, ...told } = plainVisit;
  ({ visit } = readVisit({ ...told, week: { trips }, surroundings }, van));
  prepared = prepareDuty(visit.unit, visit.week, undefined, airOf(visit))!;
  leaks = comingLeaks(visit, prepared, { seed: 5, draws: 80 });
}, 120_000);

const options = (diameter: number) => {
  const unknowns = {
    "diameter of the hole": { law: "log-uniform", low: diameter, high: diameter * 1.0001 },
  } as const;
  const laws = { steady: 1, creeping: 0, cracking: 0, rusting: 0 };
  return { seed: 5, draws: 8, beliefs: { unknowns, laws } };
};
const steady = (diameter: number) => comingLeaks(visit, prepared, options(diameter));
const middle = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1]!;

describe("leaks that may come", () => {
  test("the same seed draws the same leaks, and as many of each way of growing as it is believed", () => {
    expect(comingLeaks(visit, prepared, { seed: 5, draws: 80 })).toEqual(leaks);
    for (const law of ["steady", "creeping", "cracking", "rusting"])
      expect(leaks.filter((leak) => leak.law === law)).toHaveLength(20);
    expect(comingLeaks(visit, prepared, { seed: 6, draws: 80 })).not.toEqual(leaks);
  });

  test("who looks more closely finds a leak sooner, and none later than its harm", () => {
    for (const { findable, harmed } of leaks) {
      expect(findable["look underneath"]).toBeLessThanOrEqual(findable["walk round"]);
      expect(findable["shield taken off"]).toBeLessThanOrEqual(findable["look underneath"]);
      for (const found of Object.values(findable)) {
        expect(found).toBeGreaterThanOrEqual(0);
        if (found < Infinity) expect(found).toBeLessThanOrEqual(harmed);
      }
    }
  });

  test("with a hole of half the width it is driven four to sixteen times as far before harm", () => {
    const [wide, narrow] = [steady(0.3e-3), steady(0.15e-3)].map((some) =>
      middle(some.map(({ harmed }) => harmed)),
    );
    // Four times less by its area, up to sixteen by its thickness of fluid; both are harmed at some like loss.
    expect(narrow! / wide!).toBeGreaterThan(3.5);
    expect(narrow! / wide!).toBeLessThan(16);
  });

  test("a hole of 0.6 mm, which runs from the start and empties it within a week, can be found within its first trip", () => {
    const trip = prepared.kinds[0]!.pieceDistances.at(-1)!;
    for (const { findable, harmed } of steady(0.6e-3)) {
      expect(findable["shield taken off"]).toBeLessThanOrEqual(trip);
      expect(harmed).toBeGreaterThan(trip);
    }
  });

  test("a hole that empties it within a trip does its harm on the way of one trip, however the week is used", () => {
    const trip = prepared.kinds[0]!.pieceDistances.at(-1)!;
    for (const weekday of [0, 3])
      for (const { harmed } of comingLeaks({ ...visit, weekday }, prepared, options(6e-3)))
        expect(harmed).toBeLessThanOrEqual(1.000001 * trip);
  });

  test("a delay is never below nothing, and endless just where no harm comes", () => {
    expect(leaks.filter(({ harmed }) => harmed < Infinity).length).toBeGreaterThan(20);
    for (const look of ["walk round", "shield taken off"] as const)
      delaysUntilHarm(leaks, look).forEach((delay, i) => {
        expect(delay).toBeGreaterThanOrEqual(0);
        expect(delay < Infinity).toBe(leaks[i]!.harmed < Infinity);
      });
  });

  test("behind a shield nothing is seen from below before it runs over", () => {
    const shielded = comingLeaks({ ...visit, shield: true }, prepared, { seed: 5, draws: 80 });
    const later = shielded.filter(
      ({ findable }) => findable["look underneath"] > findable["shield taken off"],
    );
    expect(later.length).toBeGreaterThan(shielded.length / 2);
  });

  test("no draw and no time are refused", () => {
    expect(() => comingLeaks(visit, prepared, { seed: 1, draws: 0 })).toThrow(/draws/);
    expect(() => comingLeaks(visit, prepared, { seed: 1, lasts: 0 })).toThrow(/lasts/);
  });
});
