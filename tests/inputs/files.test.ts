import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { faultText } from "../../src/errors.ts";
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
    expect(faultsOf(() => readCaseFile(at("gone.json")))).toMatchObject([{ path: "case" }]);
    expect(faultsOf(() => readVisitFile(at("gone.json")))).toMatchObject([{ path: "the visit's file" }]);
    writeFileSync(at("list.json"), "[]");
    expect(faultsOf(() => readCaseFile(at("list.json"))).length).toBeGreaterThan(0);
  });
});

describe("a file that is no JSON says in which line and column, what stands there as it is written, and what should", () => {
  it.each<[string, string]>([
    [
      '{\n  "build": "van.json"\n  "leak": null\n}',
      'line 3, column 3: expected a comma or } after the value before; received "leak": null',
    ],
    [
      '\uFEFF{\n  "name": "van",\n}\n',
      'line 3, column 1: expected a name in double quotes (") after the comma, or no comma; received }',
    ],
    ["{ 'name': 1 }", `line 1, column 3: expected a name in double quotes ("), or }; received 'name': 1 }`],
    ['{ "name" "van" }', 'line 1, column 10: expected a colon after the name; received "van" }'],
    [
      '{ "name": \u201cvan\u201d }',
      'line 1, column 11: expected a value: text in double quotes ("), a number such as 0.5, true, false, null, [ or {; received \u201cvan\u201d }',
    ],
    [
      '{ "about": "one\ntwo" }',
      'line 1, column 16: expected the closing " of the text, in the same line; received the end of the line',
    ],
    [
      '{ "file": "c:\\drive.csv" }',
      'line 1, column 14: expected an escape such as \\n, or \\\\ for \\ itself; received \\drive.csv" }',
    ],
    ["[1, 2", "line 1, column 6: expected a comma or ] after the value before; received the end of the file"],
    ["{} {}", "line 1, column 4: expected nothing more after the value; received {}"],
  ])("%j", (text, said) => {
    writeFileSync(at("torn.json"), text);
    for (const read of [readCaseFile, readVisitFile])
      expect(faultsOf(() => read(at("torn.json"))).map(faultText)).toEqual([`${at("torn.json")} ${said}`]);
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
