// What a look back says of moments, miles and places: no finer than it is known, and in no file's words.
import { readFileSync, readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { agesOf, datesOf, odometerOf, waitOf } from "../../demos/look-back/moments.ts";
import { placeWords } from "../../demos/look-back/place-words.ts";
import { assumptionTable, evidenceTable } from "../../demos/look-back/tables.ts";
import type { Telling } from "../../demos/look-back/told.ts";
import { saidIn } from "../../demos/report/said.ts";
import type { Cell } from "../../demos/report/table.ts";
import { readVisitFile } from "../../src/inputs/files.ts";
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
          const { middle, from, to, between } = datesOf(byTheDay, when);
          for (const text of [middle, from, to, between]) expect(text).not.toContain(":");
          expect(Object.values(agesOf(byTheDay, when)).join()).not.toContain("hour");
        },
      ),
    );
  });

  test("is told to the quarter of an hour, or to the hour where three of them are not known", () => {
    const { at } = byTheHour.clock;
    const told = (wide: number) =>
      datesOf(byTheHour, spread(at - 2.03 * hour, at - 2.03 * hour - wide, at - 2 * hour));
    expect(told(0.9 * hour).middle).toMatch(/17:(00|15|30|45)$|18:00$/);
    expect(told(4 * hour).middle).toMatch(/ 18:00$/);
    expect(told(4 * hour).from).toMatch(/:00$/);
    expect(told(40 * hour).middle).not.toContain(":");
  });

  test("by the odometer is whole miles or kilometres, and tens or hundreds of them where the answer is so wide", () => {
    const { at } = byTheHour.clock;
    const day = 24 * hour;
    const told = (days: number, system: "US" | "SI") =>
      odometerOf(byTheHour, spread(at - 7 * day, at - (7 + days) * day, at - (7 - days) * day), system);
    for (const system of ["US", "SI"] as const)
      for (const days of [0, 0.01, 0.5, 2, 6])
        expect(`${Object.values(told(days, system)).join()}`).not.toContain(".");
    expect(told(6, "US").middle).toMatch(/^\d+00 mi$/);
  });

  test("after the opening is minutes in a trip and weeks in a seep", () => {
    expect(waitOf(spread(70, 20, 200))).toBe("1 min (0 to 3)");
    expect(waitOf(spread(10, 5, 20))).toBe("under 1 min");
    expect(waitOf(spread(40 * 86400, 20 * 86400, 90 * 86400))).toBe("6 weeks (3 to 13)");
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
