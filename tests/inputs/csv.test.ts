import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { traceFromCsv } from "../../src/inputs/csv.ts";
import { readCase } from "../../src/inputs/case.ts";
import { changed, faultsOf } from "./shipped.ts";

const faults = (text: string, units = {}) => faultsOf(() => traceFromCsv("drive.csv", text, units));

describe("a user's drive as CSV", () => {
  it.each<[string, string]>([
    ["units in brackets", "time [s],speed [mph]\n0,0\n1,10\n"],
    ["units in round brackets, capitals, spaces", " Time (s) , Speed (MPH) \r\n0, 0\r\n1, 10\r\n"],
    ["units as endings", "time_s,speed_mph\n0,0\n1,10"],
    ["semicolons", "time [s];speed [mph]\n0;0\n1;10"],
    ["decimal commas between semicolons", "time [s];speed [mph]\n0,0;0\n1;10,0"],
    ["tabs, another column, a byte order mark", "\uFEFFtime [s]\tnote\tspeed [mph]\n0\tstart\t0\n1\t\t10"],
    ["blank lines and remarks", "time [s],speed [mph]\n\n0,0\n# launch\n1,10\n\n"],
    ["kilometres an hour", "t_s,v_kmh\n0,0\n1,16.09344"],
    ["quoted cells", '"time [s]","speed [mph]"\n"0","0"\n"1","10"'],
  ])("%s", (_, text) => {
    const trace = traceFromCsv("drive.csv", text);
    expect([...trace.time]).toEqual([0, 1]);
    expect(trace.speed[1]).toBeCloseTo(4.4704, 10);
    expect([...trace.grade]).toEqual([0, 0]);
  });

  it("units by option where the header has none", () => {
    const trace = traceFromCsv("drive.csv", "time,speed,grade,lateral\n0,0,0,0\n1,36,0.06,0.1", {
      time: "s",
      speed: "km/h",
      lateral: "g",
    });
    expect(trace.speed[1]).toBeCloseTo(10, 12);
    expect(trace.grade[1]).toBe(0.06);
    expect(trace.lateral[1]).toBeCloseTo(0.980665, 12);
  });

  it("grades in percent", () => {
    expect(traceFromCsv("drive.csv", "time [s],speed [m/s],grade [%]\n0,0,6\n1,1,6").grade[0]).toBeCloseTo(
      0.06,
      15,
    );
  });

  it("a file that is wrong on every line says so twenty times and how often it is", () => {
    const text = `time [s],speed [mph]\n${Array.from({ length: 100 }, (_, i) => `${i},fast`).join("\n")}`;
    expect(faults(text)).toHaveLength(100);
    expect(() => traceFromCsv("drive.csv", text)).toThrow(
      /^(?:drive\.csv line \d+, speed: expected a number, for example 12\.5; received "fast"\n){20}and 80 more, the last at drive\.csv line 101, speed$/,
    );
  });

  it("lists every wrong line by its number in the file", () => {
    const text = [
      "time [s],speed [mph]",
      "-1,0",
      "1,0",
      "2,ten",
      "",
      "3,20",
      "3,21",
      "12,25",
      "13,-4",
      "14",
    ].join("\n");
    expect(faults(text).map(({ path, given }) => [path, given])).toEqual([
      ["drive.csv line 2, time", "-1"],
      ["drive.csv line 4, speed", '"ten"'],
      ["drive.csv line 10, speed", "nothing"],
      ["drive.csv line 7, time", "3"],
      ["drive.csv line 8, time", "9"],
      ["drive.csv line 9, speed", expect.stringMatching(/^-1\.78/) as string],
    ]);
    expect(faults(text).map(({ expected }) => expected)).toContain(
      "at most 5 s after line 7 while the vehicle moves",
    );
  });

  it.each<[string, string, RegExp]>([
    ["no unit", "time,speed\n0,0\n1,10", /unit of time/],
    ["an unknown unit", "time [s],speed [furlong/h]\n0,0\n1,10", /unit of speed: m\/s/],
    ["no speed", "time [s],revs\n0,0\n1,10", /one column named speed/],
    ["two speeds", "time [s],speed [mph],speed [km/h]\n0,0,0\n1,10,16", /one column named speed/],
    ["nothing at all", "", /one column named time/],
    ["one row", "time [s],speed [mph]\n0,0", /two rows or more/],
  ])("refuses %s", (_, text, expected) => {
    expect(
      faults(text)
        .map((fault) => fault.expected)
        .join("\n"),
    ).toMatch(expected);
    expect(faults(text).every(({ path }) => path.startsWith("drive.csv"))).toBe(true);
  });

  it("refuses a speed of no road vehicle, as it was written and with what is accepted", () => {
    const [fault, ...more] = faults("time [s],speed [mph]\n0,0\n1,400\n2,313");
    expect(more).toEqual([]);
    expect(fault!.path).toBe("drive.csv line 3, speed");
    expect(fault!.given).toBe('178.816 m/s, written "400" under "speed [mph]"');
    expect(fault!.expected).toMatch(/313 mph/);
  });

  it("gives back the numbers that were written", () => {
    const row = fc.double({ min: 0, max: 60, noNaN: true });
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 30 }), (speeds) => {
        const text = ["time [s],speed [m/s]", ...speeds.map((v, i) => `${i},${v}`)].join("\n");
        expect([...traceFromCsv("drive.csv", text).speed]).toEqual(speeds);
      }),
    );
  });

  it("as a trip of a case, with its faults among the others", () => {
    const trip = (csv: string) => ({ schedule: "own", days: ["Mon"], at: "08:00", name: "drive.csv", csv });
    const good = readCase(changed(["week.trips", [trip("time [s],speed [mph]\n0,0\n1,10\n2,0")]]));
    expect(good.week.days[0]![0]!.name).toBe("drive.csv");
    const bad = faultsOf(() =>
      readCase(changed(["week.trips", [trip("time [s],speed [mph]\n0,zero\n1,10")]], ["build.fill", 11])),
    );
    expect(bad.map(({ path }) => path).sort()).toEqual(["build.fill", "drive.csv line 2, speed"]);
  });
});
