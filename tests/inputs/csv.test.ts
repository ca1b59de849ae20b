import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { statistics } from "../../src/driving/statistics.ts";
import { readTrace, traceFromCsv } from "../../src/inputs/csv.ts";
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
    [
      "a title, tabs, commas in the names",
      "Urban schedule\t\nTest Time, secs\tTarget Speed, mph\n0\t0\n1\t10\n",
    ],
    ["commas in quoted names", '"Test Time, secs","Target Speed, mph"\n0,0\n1,10'],
    ["secs", "Time (secs),Speed (mph)\n0,0\n1,10"],
    ["a name that is a unit", "seconds,speed_mph\n0,0\n1,10"],
    ["an elapsed time", "Total elapsed time [s];vel (km/h)\n0;0\n1;16,09344"],
    ["units in words", "Time in s;Speed in mph\n0;0\n1;10"],
    ["miles an hour as a fraction", "time [s],speed [mi/h]\n0,0\n1,10"],
    ["km.h-1", "time [s],speed [km.h-1]\n0,0\n1,16.09344"],
    ["names that end in a unit", "cycSecs,cycMps,cycGrade\n0,0,0\n1,4.4704,0"],
    [
      "other speeds and times",
      "time of day,time [s],speed limit [mph],speed [mph],engine speed [rpm],gear,phase\n7:00,0,30,0,700,1,1\n7:01,1,30,10,900,1,1",
    ],
    ["blanks", "# by hand\ntime [s]  speed [mph]\n  0   0\n  1  10\n"],
    ["blanks, two words a name", "Test Time, secs   Target Speed, mph\n0 0\n1 10"],
    ["a header as a remark", "# time_s speed_mph\n0 0\n1 10\n"],
    ["units on a line of their own", "Title of it\r\ntime;speed\r\n[s];[mph]\r\n0;0\r\n1;10,0\r\n\r\n"],
    ["quoted cells", '"time [s]","speed [mph]"\n"0","0"\n"1","10"'],
  ])("%s", (_, text) => {
    const trace = traceFromCsv("drive.csv", text);
    expect([...trace.time]).toEqual([0, 1]);
    expect(trace.speed[1]).toBeCloseTo(4.4704, 10);
    expect([...trace.grade]).toEqual([0, 0]);
  });

  it("two columns without a header, in units that are told; and says so", () => {
    const options = { units: { time: "min", speed: "km/h" } };
    const { trace, remarks } = readTrace("drive.csv", "0 0\n0.05 36\n", options);
    expect([...trace.time]).toEqual([0, 3]);
    expect(trace.speed[1]).toBeCloseTo(10, 12);
    expect(remarks.join()).toMatch(/no line names the columns.*time \[min\].*speed \[km\/h\]/);
    expect(faults("0 0\n1 36\n")[0]!.expected).toMatch(/units of time and speed are told by option/);
  });

  it("tells what was passed over and taken for granted, and nothing else", () => {
    expect(readTrace("drive.csv", "time [s],speed [mph]\n0,0\n1,10").remarks).toEqual([]);
    // Either would tip the surface in the pan: nobody should think that it did.
    expect(
      readTrace("drive.csv", "time [s],speed [mph],lat acc [m/s2],grade angle [rad]\n0,0,0,0\n1,10,3,0.05")
        .remarks,
    ).toEqual(['passed over: the columns "lat acc [m/s2]", "grade angle [rad]"']);
    expect(readTrace("drive.csv", "A drive\ncycSecs,cycMps\n0,1\n1,2").remarks).toEqual([
      "lines before line 2 are a title and were passed over",
      'time was taken from the column "cycSecs"',
      'speed was taken from the column "cycMps"',
      expect.stringMatching(/^it begins at 1\.00 m\/s, but a trip starts from standstill/) as string,
    ]);
  });

  it("mends what it is asked to, and says where", () => {
    const text = ["time [s],speed [m/s]", "20,4", "21,8", "21,10", "# tunnel", "33,16", "34,0"].join("\n");
    expect(faults(text).map(({ path }) => path)).toEqual([
      "drive.csv line 4, time",
      "drive.csv line 6, time",
    ]);
    const { trace, remarks } = readTrace("drive.csv", text, {
      mend: { mergeRepeats: true, bridgeGaps: 15, leadIn: 1 },
    });
    expect([...trace.time]).toEqual([16, 17, 18, 19, 20, 21, 25, 29, 33, 34]);
    [0, 1, 2, 3, 4, 9, 9 + 7 / 3, 9 + 14 / 3, 16, 0].forEach((v, i) =>
      expect(trace.speed[i]).toBeCloseTo(v, 12),
    );
    expect(remarks).toEqual([
      "line 3: 2 rows at 21 s became one, their mean",
      "line 6: 12 s without a row were bridged by a straight line from 9.00 to 16.0 m/s",
      "line 2: it begins at 4.00 m/s: 4.00 s and 8.00 m from standstill stand before it",
    ]);
    // What is longer than was allowed is still refused, by its line.
    const short = { mend: { mergeRepeats: true, bridgeGaps: 10 } };
    expect(faultsOf(() => readTrace("drive.csv", text, short)).map(({ path }) => path)).toEqual([
      "drive.csv line 6, time",
    ]);
    expect(() => readTrace("drive.csv", text, { mend: { leadIn: 0 } })).toThrow(/leadIn/);
  });

  it("mending leaves a whole drive as it is, and only adds distance to a rolling one", () => {
    const speed = fc.integer({ min: 0, max: 400 }).map((tenths) => tenths / 10);
    const rows = fc.array(speed, { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(rows, fc.double({ min: 0.2, max: 4, noNaN: true }), (speeds, leadIn) => {
        const text = ["time [s],speed [m/s]", ...speeds.map((v, i) => `${i},${v}`)].join("\n");
        const plain = traceFromCsv("drive.csv", text);
        const { trace } = readTrace("drive.csv", text, {
          mend: { mergeRepeats: true, bridgeGaps: 60, leadIn },
        });
        expect([...trace.speed.slice(-speeds.length)]).toEqual([...plain.speed]);
        const [led, own] = [statistics(trace), statistics(plain)];
        expect(led.startSpeed).toBe(0);
        expect(led.distance).toBeCloseTo(own.distance + own.startSpeed ** 2 / (2 * leadIn), 6);
      }),
    );
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
      "at most 5 s after line 7 while the vehicle moves (longer gaps are bridged where bridgeGaps is asked for)",
    );
  });

  it.each<[string, string, RegExp]>([
    ["no unit", "time,speed\n0,0\n1,10", /unit of time/],
    ["an unknown unit", "time [s],speed [furlong/h]\n0,0\n1,10", /unit of speed: m\/s/],
    ["no speed", "time [s],revs\n0,0\n1,10", /one column named speed/],
    ["two speeds", "time [s],speed [mph],speed [km/h]\n0,0,0\n1,10,16", /one column named speed/],
    ["commas in names that no quotes hold", "Test Time, secs,Target Speed, mph\n0,0\n1,10", /in quotes/],
    ["a speed limit alone", "time [s],speed limit [mph]\n0,30\n1,30", /one column named speed/],
    [
      "speeds of two kinds",
      "time [s],target speed [mph],actual speed [mph]\n0,0,0\n1,10,9",
      /one column named speed/,
    ],
    ["clock times", "time [hh:mm:ss],speed [mph]\n00:00:00,0\n00:00:01,10", /unit of time/],
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
