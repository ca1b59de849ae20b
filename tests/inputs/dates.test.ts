import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dateSeconds, lastSecond } from "../../src/inputs/dates.ts";
import { visitDay } from "../../src/inputs/visit.ts";
import { faultsOf, faultsWith } from "./shipped.ts";
import { faultsIn, plainVisit, readWith } from "./visits.ts";

const two = (number: number) => String(number).padStart(2, "0");

describe("a date is read only as the calendar has it", () => {
  // Gregorian calendar: thirty days in the fourth, sixth, ninth and eleventh month, 28 in the second and 29 in leap years.
  const longest = (year: number, month: number) => {
    if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
    return [4, 6, 9, 11].includes(month) ? 30 : 31;
  };

  it("every month from 00 to 99 and day from 00 to 99: read where the calendar has it, else none", () => {
    const numbers = fc.tuple(fc.integer({ min: 1000, max: 9999 }), fc.nat(99), fc.nat(99));
    fc.assert(
      fc.property(numbers, ([year, month, day]) => {
        const has = month >= 1 && month <= 12 && day >= 1 && day <= longest(year, month);
        const text = `${year}-${two(month)}-${two(day)}`;
        expect(!Number.isNaN(dateSeconds(text)), text).toBe(has);
        expect(!Number.isNaN(lastSecond(text)), text).toBe(has);
      }),
      { numRuns: 2000, examples: [[[2024, 13, 1]], [[2024, 0, 1]], [[2024, 2, 29]], [[2023, 2, 29]]] },
    );
  });

  it("a year of the first century is refused, not taken for one of the twentieth", () => {
    expect(dateSeconds("0024-10-14")).toBeNaN();
  });

  const { lastFull, visit } = plainVisit;
  it.each([
    ["visit.date", { visit: { ...visit, date: "2024-13-14" } }],
    ["lastFull.date", { lastFull: { ...lastFull, date: "2024-00-05" } }],
    ["topUps[0].on", { topUps: [{ on: "2024-13-01", volume: "1 qt" }] }],
    ["evidence[0].about", { evidence: [{ kind: "first spot", about: "2024-13-01" }] }],
    [
      "evidence[0].between[1]",
      { evidence: [{ kind: "first spot", between: ["2024-09-01", "2024-13-01 10:00"] }] },
    ],
  ])("%s of a visit: refused where it stands, with an example", (path, more) => {
    const [fault, ...others] = faultsIn(more);
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ path, given: expect.stringMatching(/2024-(13|00)-/) as string });
    expect(fault!.expected).toMatch(/date|calendar/);
    expect(fault!.example).toContain('"2024-');
  });

  it("of a case likewise", () => {
    const towed = { mass: "1 t", frontalArea: "3 m2", dragCoefficient: 0.8, days: ["Sat"] };
    expect(faultsWith(["start.date", "2024-13-04"]).map(({ path }) => path)).toEqual(["start.date"]);
    expect(faultsWith(["opens", { date: "2024-13-04" }]).map(({ path }) => path)).toEqual(["opens.date"]);
    for (const one of ["from", "until"])
      expect(faultsWith(["towed", { ...towed, [one]: "2024-00-04" }]).map(({ path }) => path)).toContain(
        `towed.${one}`,
      );
    const [fault] = faultsWith([
      "entries",
      [{ kind: "top-up", date: "2024-13-05", volume: "1 L", temperature: "15 degC" }],
    ]);
    expect(fault).toMatchObject({ path: "entries[0].date", given: '"2024-13-05"' });
    expect(fault!.example).toContain("2024-03-04");
  });

  it("visitDay refuses a clock without a date, and a moment that no calendar reaches", () => {
    const { clock } = readWith({});
    expect(faultsOf(() => visitDay({ clock: { ...clock, date: "2024-13-05" } }, 0))).toMatchObject([
      { path: "clock.date", given: '"2024-13-05"' },
    ]);
    for (const at of [Number.NaN, Infinity, 1e16])
      expect(faultsOf(() => visitDay({ clock }, at))).toMatchObject([{ path: "at", given: String(at) }]);
  });
});
