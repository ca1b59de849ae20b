// The sentence about the stick says what the check proper would have shown after each trip.
import { describe, expect, test } from "vitest";
import { firstLow } from "../../demos/report/first-low.ts";
import { hotCheck, massAtLowMark } from "../../src/bay/hot-check.ts";
import { newRow } from "../../src/history/record.ts";
import { readCase } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";
import { caseFile } from "../inputs/shipped.ts";

const { unit } = readCase(caseData(caseFile("demo")));
const full = 9.1;

describe("the hot idling check", () => {
  test("shows the low mark at the mass that is said, to a gram", () => {
    const least = massAtLowMark(unit);
    expect(hotCheck(unit, least).position).toBeGreaterThanOrEqual(0);
    expect(hotCheck(unit, least - 1.1e-3).position).toBeLessThan(0);
  });

  test("shows less the less there is", () => {
    const depths = [9, 8, 7, 6, 5].map((mass) => hotCheck(unit, mass).depth);
    for (let i = 1; i < depths.length; i++) expect(depths[i]).toBeLessThan(depths[i - 1]!);
  });
});

describe("the first trip after which it is low", () => {
  const least = massAtLowMark(unit);
  const trips = (...masses: number[]) =>
    masses.map((mass, i) => ({ ...newRow(), clock: 1000 * (i + 1), mass }));

  test("is the one after the last that still left enough", () => {
    const after = firstLow(unit, { trips: trips(full, least + 0.01, least - 0.01, least - 0.5) });
    expect(after?.clock).toBe(3000);
    expect(hotCheck(unit, least + 0.01).position).toBeGreaterThan(0);
    expect(hotCheck(unit, least - 0.01).position).toBeLessThan(0);
  });

  test("is not one that a top-up has mended since", () => {
    const after = firstLow(unit, { trips: trips(full, least - 0.3, full, least - 0.1) });
    expect(after?.clock).toBe(4000);
  });

  test("is none while there is enough, or when it comes after the harm", () => {
    expect(firstLow(unit, { trips: trips(full, full) })).toBeNull();
    expect(firstLow(unit, { trips: trips(full, least - 0.3) }, 1500)).toBeNull();
    expect(firstLow(unit, { trips: [] })).toBeNull();
  });
});
