// What a look back says of moments, miles and places: no finer than it is known, and in no file's words.
import { readFileSync, readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { agesOf, datesOf, odometersOf, waitsOf } from "../../demos/look-back/moments.ts";
import { placeWords } from "../../demos/look-back/place-words.ts";
import { assumptionTable, evidenceTable } from "../../demos/look-back/tables.ts";
import type { Telling } from "../../demos/look-back/told.ts";
import { saidIn } from "../../demos/report/said.ts";
import type { Cell } from "../../demos/report/table.ts";
import { readVisitFile } from "../../src/inputs/files.ts";
import { wayOf } from "../../src/lookback/along.ts";
import { readVisit } from "../../src/inputs/visit.ts";

const folder = "reference-data/visits";
const visits = readdirSync(folder).filter((name) => name.endsWith(".json"));
const hour = 3600;
const spread = (middle: number, low: number, high: number) => ({
  middle,
  half: [low, high] as const,
  nineTenths: [low, high] as const,
});

describe("a moment", () => {
  const byTheHour = readVisitFile(`${folder}/fitting-let-go.json`);
  const byTheDay = readVisitFile(`${folder}/three-facts.json`);

  test("has no time of day where the visit itself was told by its day, however narrow the answer", () => {
    const { at } = byTheDay.clock;
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: at / 2, noNaN: true }),
        fc.double({ min: 0, max: 24 * hour, noNaN: true }),
        (ago, wide) => {
          const when = spread(at - ago, at - ago - wide, at - ago);
          for (const text of Object.values(datesOf(byTheDay, [when])[0]!)) expect(text).not.toContain(":");
          expect(Object.values(agesOf(byTheDay, when)).join()).not.toContain("hour");
        },
      ),
    );
  });

  test("is told to the quarter of an hour, or to the hour where three of them are not known", () => {
    const { at } = byTheHour.clock;
    const told = (wide: number) =>
      datesOf(byTheHour, [spread(at - 2.03 * hour, at - 2.03 * hour - wide, at - 2 * hour)])[0]!;
    expect(told(0.9 * hour).middle).toMatch(/17:(00|15|30|45)$|18:00$/);
    expect(told(4 * hour).middle).toMatch(/ 18:00$/);
    expect(told(4 * hour).from).toMatch(/:00$/);
    expect(told(40 * hour).middle).not.toContain(":");
  });

  test("by the odometer is whole miles or kilometres, and tens or hundreds of them where the answer is so wide", () => {
    const { at } = byTheHour.clock;
    const day = 24 * hour;
    const told = (days: number, system: "US" | "SI") =>
      odometersOf(
        byTheHour,
        [spread(at - 7 * day, at - (7 + days) * day, at - (7 - days) * day)],
        system,
      )[0]!;
    for (const system of ["US", "SI"] as const)
      for (const days of [0, 0.01, 0.5, 2, 6])
        expect(`${Object.values(told(days, system)).join()}`).not.toContain(".");
    expect(told(6, "US").middle).toMatch(/^\d+00 mi$/);
  });

  test("by the odometer is one reading where both ends are no further apart than an odometer is read to", () => {
    // Two trips of a working day lie before the visit at 20:00: what it drives in the last of them, mile by mile.
    const { at, odometer, distance } = byTheHour.clock;
    const way = wayOf(byTheHour.visit);
    const miles = (clock: number) => (odometer! + distance * way(clock)) / 1609.344;
    const on = (mile: number) => {
      let [low, high] = [at - 24 * hour, at];
      for (let i = 0; i < 50; i++) {
        const middle = 0.5 * (low + high);
        if (miles(middle) < mile) low = middle;
        else high = middle;
      }
      return high;
    };
    const end = miles(at);
    const told = (wide: number, system: "US" | "SI") =>
      odometersOf(byTheHour, [spread(on(end - 4), on(end - 4 - wide), on(end - 4))], system)[0]!.nineTenths;
    for (const wide of [0, 0.3, 0.9]) {
      expect(told(wide, "US")).toMatch(/^at \d+ mi$/);
      expect(told(wide, "SI")).toMatch(/^at \d+ km$/);
    }
    expect(told(3, "US")).toMatch(/^\d+ to \d+ mi$/);
    expect(told(3, "SI")).toMatch(/^\d+ to \d+ km$/);
  });

  test("after the opening is minutes in a trip and weeks in a seep", () => {
    const [trip, hardly, seep] = [
      spread(70, 20, 200),
      spread(10, 5, 20),
      spread(40 * 86400, 20 * 86400, 90 * 86400),
    ];
    expect(waitsOf([trip, null, hardly, seep])).toEqual([
      "1 min (0 to 3)",
      null,
      "under 1 min",
      "6 weeks (3 to 13)",
    ]);
  });
});

describe("two events beside each other are never told in the other order than their numbers have", () => {
  const read = readVisitFile(`${folder}/fitting-let-go.json`);
  const { at } = read.clock;

  test("of two within a day, the surer one cannot come before a less sure one that came before it", () => {
    const [first, second] = [at - 2.45 * hour, at - 2.3 * hour];
    const wide = spread(first, first - 5 * hour, first + 2 * hour);
    const sure = spread(second, second - 0.5 * hour, second + 0.5 * hour);
    // To the hour and to the quarter, as each is known by itself, the first would come after the second.
    expect([wide, sure].map((one) => datesOf(read, [one])[0]!.middle)).toEqual([
      "2024-07-12 18:00",
      "2024-07-12 17:45",
    ]);
    expect(datesOf(read, [wide, sure]).map((dates) => dates!.middle)).toEqual([
      "2024-07-12 17:30",
      "2024-07-12 17:45",
    ]);
  });

  const moment = fc.tuple(
    fc.double({ min: 1, max: 8 * 24 * hour, noNaN: true }),
    fc.double({ min: 60, max: 60 * 24 * hour, noNaN: true }),
  );
  test("by the odometer, and in their waits, whatever their widths", () => {
    const units: Readonly<Record<string, number>> = { min: 60, h: hour, day: 24 * hour, week: 7 * 24 * hour };
    fc.assert(
      fc.property(fc.array(moment, { minLength: 2, maxLength: 6 }), (moments) => {
        const rising = moments.sort(([a], [b]) => b - a);
        const spreads = rising.map(([ago, wide]) =>
          spread(at - ago, Math.max(0, at - ago - wide), Math.min(at, at - ago + wide)),
        );
        const miles = odometersOf(read, spreads, "US").map((driven) => parseInt(driven!.middle));
        const waits = waitsOf(rising.reverse().map(([ago, wide]) => spread(ago, ago, ago + wide))).map(
          (text) => {
            const [number, unit] = text!.replace("under ", "0.5").replace("0.51", "0.5").split(" ");
            return Number(number) * units[unit!.replace(/s$/, "")]!;
          },
        );
        for (const told of [miles, waits])
          for (let i = 1; i < told.length; i++) expect(told[i]).toBeGreaterThanOrEqual(told[i - 1]!);
      }),
      { numRuns: 40 },
    );
  });
});

describe("what a look back rests on", () => {
  const text = (cell: Cell) =>
    typeof cell === "string" ? cell : `${saidIn(cell, "US")} ${saidIn(cell, "SI")}`;
  // A name in two cases without a space, an index, or words joined by a dot: as a file writes, and nobody speaks.
  const fromAFile = /[a-z][A-Z]|\[\d+\]|[a-z]\.[a-z]/;

  test.each(visits)("of %s stands in a workshop's words", (name) => {
    const telling = { read: readVisitFile(`${folder}/${name}`) } as Telling;
    for (const { rows } of [evidenceTable(telling), assumptionTable(telling)])
      for (const row of rows) for (const cell of row) expect(text(cell)).not.toMatch(fromAFile);
  });

  test.each([
    ["1 day", "2024-10-20, right to 1 day"],
    ["6 h", "2024-10-20 12:00, right to 6 h"],
  ])("a moment right to %s is told in the same measure", (error, told) => {
    const evidence = [{ kind: "first symptom", what: "does not move", about: "2024-10-20", error }];
    const facts = JSON.parse(readFileSync(`${folder}/three-facts.json`, "utf8")) as object;
    const build = JSON.parse(readFileSync("reference-data/parcel-van/build.json", "utf8")) as unknown;
    const telling = { read: readVisit({ ...facts, evidence }, build) } as Telling;
    const said = evidenceTable(telling).rows.map((row) => row.map(text).join(" "));
    expect(said.join("\n")).toContain(told);
  });

  test("so do places that have no words of their own yet", () => {
    const { visit } = readVisitFile(`${folder}/three-facts.json`);
    expect(placeWords("evidence[1].dropVolume", { visit })).toBe("drops: size of a drop");
    for (const path of ["evidence[7].someThing", "topUps[0].by", "lastFull.someThing", "leak"])
      expect(placeWords(path, { visit })).not.toMatch(fromAFile);
  });
});
