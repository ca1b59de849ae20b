import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { dailyDriving } from "../../src/driving/pattern.ts";
import { readCaseFile, readVisitFile, saveText } from "../../src/inputs/files.ts";
import { caseFile, changed, faultsOf } from "./shipped.ts";

const folder = mkdtempSync(join(tmpdir(), "case-"));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string) => join(folder, name);

describe("case files", () => {
  it.each(["slow-seep", "parting-crack", "pinhole"])("%s reads", (name) => {
    const read = readCaseFile(caseFile(name));
    expect(read.unit.leak).not.toBeNull();
    expect(read.week.days.flat()).toHaveLength(11);
    expect(JSON.parse(readFileSync(caseFile(name), "utf8"))).toMatchObject({
      about: expect.stringMatching(/^Invented/) as string,
    });
  });

  it.each(["taxi-pit", "taxi-shaft-seal"])("%s reads, with the taxi's own week", (name) => {
    const read = readCaseFile(caseFile(name));
    expect(read.unit.leak).not.toBeNull();
    expect(read.unit.build.gears).toHaveLength(4);
    expect(read.week.days.map((trips) => trips.length)).toEqual([3, 3, 3, 3, 3, 3, 0]);
    const day = dailyDriving(read.week);
    expect(day.drivingTime / 3600).toBeGreaterThan(9);
    expect(day.idleShare).toBeGreaterThan(0.4);
  });

  it("name their build and drives by files of their own", () => {
    const { build, ...rest } = changed() as { build: unknown; week: unknown };
    const trip = { schedule: "own", days: "workdays", at: "08:00", file: "drive.csv" };
    saveText(at("van.json"), JSON.stringify(build));
    saveText(at("drive.csv"), "time [s],speed [mph]\n0,0\n1,10\n2,0");
    saveText(at("case.json"), JSON.stringify({ ...rest, build: "van.json", week: { trips: [trip] } }));
    const read = readCaseFile(at("case.json"));
    expect(read.week.days.map((trips) => trips.length)).toEqual([1, 1, 1, 1, 1, 0, 0]);
    rmSync(at("drive.csv"));
    expect(faultsOf(() => readCaseFile(at("case.json")))).toMatchObject([{ path: "week.trips[0].file" }]);
  });

  it("that are missing or no JSON are faults too", () => {
    writeFileSync(at("torn.json"), '{ "name": ');
    expect(faultsOf(() => readCaseFile(at("torn.json")))).toMatchObject([{ path: "case" }]);
    expect(faultsOf(() => readCaseFile(at("gone.json")))).toMatchObject([{ path: "case" }]);
    for (const name of ["torn.json", "gone.json"])
      expect(faultsOf(() => readVisitFile(at(name)))).toMatchObject([{ path: "the visit's file" }]);
    writeFileSync(at("comma.json"), '\uFEFF{\n  "name": "van",\n}\n');
    expect(faultsOf(() => readVisitFile(at("comma.json")))[0]!.given).toMatch(/^"}" at line 3, column 1 \(/);
    expect(faultsOf(() => readVisitFile(at("torn.json")))[0]!.given).toMatch(
      /^the end at line 1, column 11 \(/,
    );
    writeFileSync(at("list.json"), "[]");
    expect(faultsOf(() => readCaseFile(at("list.json"))).length).toBeGreaterThan(0);
  });
});

describe("in a browser", () => {
  it("only the file reader needs Node", () => {
    const rooms = ["inputs", "units", "sources"].map((room) => join(import.meta.dirname, "../../src", room));
    const needing = rooms.flatMap((room) =>
      readdirSync(room).filter((name) => /from "node:/.test(readFileSync(join(room, name), "utf8"))),
    );
    expect(needing).toEqual(["files.ts"]);
  });
});

describe("saving", () => {
  it("replaces the old text as a whole and leaves nothing beside it", () => {
    saveText(at("note.txt"), "first");
    saveText(at("note.txt"), "second");
    expect(readFileSync(at("note.txt"), "utf8")).toBe("second");
    expect(readdirSync(folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });

  it("that fails leaves the old text and nothing else", () => {
    saveText(at("note.txt"), "old");
    expect(() => saveText(join(at("note.txt"), "below-a-file"), "new")).toThrow();
    expect(() => saveText(dirname(at("note.txt")), "over a folder")).toThrow();
    expect(readFileSync(at("note.txt"), "utf8")).toBe("old");
    expect(readdirSync(folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });
});
