import type { When } from "../../src/lookback/evidence.ts";
import { describe, expect, it } from "vitest";
import { dailyDriving } from "../../src/driving/pattern.ts";
import { kindsOf } from "../../src/duty/kinds.ts";
import { readVisitFile } from "../../src/inputs/files.ts";
import { drivenBy, readVisit, visitDay } from "../../src/inputs/visit.ts";
import { litres, miles, quarts } from "../../src/units/literals.ts";
import { faultText } from "../../src/errors.ts";
import { faultsOf } from "./shipped.ts";
import { faultsIn, pathsIn, plainVisit, readWith, van, visitFile } from "./visits.ts";

const DAY = 86400;

describe("a visit", () => {
  const read = readWith({});

  it("counts from the midnight of the last full to noon of the visit's day", () => {
    expect(read.clock).toMatchObject({ date: "2024-08-05", at: 70.5 * DAY });
    expect(read.visit.weekday).toBe(0);
    expect(read.visit.dayOfYear).toBe(217);
    expect(visitDay(read, read.clock.at)).toBe("2024-10-14");
    expect(readWith({ visit: { date: "2024-10-14 09:00", odometer: "62000 mi" } }).clock.at).toBe(
      70.375 * DAY,
    );
  });

  it("knows both clocks, and the use from them", () => {
    expect(read.clock.distance).toBeCloseTo(miles(2000), 6);
    expect(drivenBy(read, read.clock.at)).toBeCloseTo(miles(62000), 6);
    // Nothing is driven overnight: 3 h on Wednesday is where Tuesday evening was.
    expect(drivenBy(read, 9.125 * DAY)).toBeCloseTo(drivenBy(read, 8.9 * DAY), 6);
    expect(Math.abs(drivenBy(read, 35 * DAY) - miles(61000))).toBeLessThan(miles(20));
    const use = read.beliefs.unknowns!["use against the week as told"]!;
    const told = dailyDriving(read.visit.week).distance * 70.5;
    expect(use).toEqual({ law: "lognormal", middle: read.clock.distance / told, spread: 0.05 });
  });

  it("without a build says that an invented one stands in", () => {
    expect(read.own).toEqual({ build: false, fluid: false });
    expect(read.visit.unit.build.name).toContain("van");
    expect(read.assumptions.map(({ path }) => path)).toEqual(
      expect.arrayContaining(["build", "fluid", "shield", "leak"]),
    );
    expect(readVisit({ ...plainVisit, build: van }).own.build).toBe(true);
    expect(faultsOf(() => readVisit(plainVisit)).map(({ path }) => path)).toContain("build");
  });

  it("tells every assumption with its reason", () => {
    for (const { path, says, origin } of readVisitFile(visitFile("three-facts")).assumptions) {
      expect(says, path).toBeTruthy();
      expect(["assumed", "common practice"]).toContain(origin.kind);
      expect(origin.because, path).toBeTruthy();
    }
  });

  it("may leave the leak's place at what is usual there, and say it better", () => {
    expect(read.visit.site).toMatchObject({ place: "supply-line", height: 0.06, dripRadius: 0.004 });
    expect(readWith({ leak: { place: "supply-line", height: "80 mm" } }).visit.site.height).toBe(0.08);
    expect(read.visit.unit.leak).toBeNull();
  });

  it("has no evidence but the last full when none is given, and none at all after a service without a look", () => {
    expect(read.visit.evidence).toEqual([
      { name: "lastFull", kind: "known full", at: 0, error: expect.closeTo(quarts(0.25), 9) as number },
    ]);
    const unseen = readWith({ lastFull: { ...plainVisit.lastFull, checked: "service without a look" } });
    expect(unseen.visit.evidence).toEqual([]);
    expect(unseen.beliefs.unknowns!["lacking when it was last full"]).toMatchObject({
      spread: expect.closeTo(quarts(0.5), 9) as number,
    });
  });

  it("puts bottles of one moment together, in the order of time", () => {
    const { added } = readWith({
      topUps: [
        { on: "2024-09-20", volume: "1 qt" },
        { on: "2024-09-01", volume: "1 L", error: "50 mL", temperature: "10 degC" },
        { on: "2024-09-20", volume: "1 qt" },
      ],
    }).visit;
    expect(added).toHaveLength(2);
    expect(added[0]).toMatchObject({ volume: litres(1), error: 0.05e-3, temperature: 283.15 });
    expect(added[1]!.volume).toBeCloseTo(quarts(2), 9);
    expect(added[1]!.error).toBeCloseTo(quarts(0.2), 9);
  });

  it("of three facts has a date, by the distance", () => {
    const few = readVisitFile(visitFile("three-facts"));
    expect(few.clock.distance).toBeCloseTo(miles(2400), 3);
    expect(few.clock.odometer).toBeNull();
    const days = few.clock.distance / dailyDriving(few.visit.week).distance;
    expect(few.clock.at / DAY).toBeGreaterThan(days - 0.5);
    expect(few.clock.at / DAY).toBeLessThan(days + 1.5);
    expect(few.assumptions.map(({ path }) => path)).toContain("lastFull.date");
    expect(few.visit.undated).toBe(true);
    expect(readWith({}).visit.undated).toBe(false);
  });

  it("by the distance alone: what a date tells keeps its own error, for the doubt of the calendar is the guess's; the odometer is asked in miles", () => {
    const spot = (when: object) => {
      const { visit } = readWith({
        lastFull: { distanceAgo: "2000 mi", checked: "hot dipstick" },
        evidence: [
          { kind: "first spot", error: "1 day", ...when },
          { kind: "first spot", ...when },
        ],
      });
      return visit.evidence.flatMap((item) => (item.kind === "first spot" ? [item.when] : []));
    };
    const [given, usual] = spot({ about: "2024-09-14" });
    const error = ({ from, to, error }: When) => Math.hypot(error, (to - from) / Math.sqrt(12)) / DAY;
    expect(error(given!)).toBeCloseTo(1, 6);
    expect(error(usual!)).toBeCloseTo(5, 6);
    expect(spot({ about: "500 mi ago" })[0]!.of).toBeCloseTo(miles(2000), 3);
  });

  it("takes beliefs by their names, in units", () => {
    const { beliefs } = readWith({
      beliefs: {
        "age of the leak": { law: "lognormal", middle: "30 days", spread: 0.4 },
        "held back under the vehicle": { law: "uniform", low: "0.1 L", high: "0.5 L" },
      },
      causes: { "never filled": 0.5 },
    });
    expect(beliefs.causes).toEqual({ "never filled": 0.5 });
    expect(beliefs.unknowns).toMatchObject({
      "age of the leak": { law: "lognormal", middle: 30 * DAY, spread: 0.4 },
      "held back under the vehicle": { law: "uniform", low: 1e-4, high: 5e-4 },
    });
  });
});

describe("more driving than a vehicle's use", () => {
  // The dates are 70 days apart. A mean day of 373 mi (600 km) is the bound of what is usual, 2147 mi (24 h at 40 m/s) of what is possible.
  const after = (far: number) => ({ visit: { ...plainVisit.visit, odometer: `${60000 + far} mi` } });
  const asked = (more: object) =>
    readWith(more)
      .assumptions.filter(({ says }) => says.includes("mistyped"))
      .map(({ path }) => path);

  it("is read, and asked about", () => {
    expect(asked(after(25000))).toEqual([]);
    expect(asked(after(32000))).toEqual(["visit.odometer"]);
    const { date, checked } = plainVisit.lastFull;
    expect(asked({ lastFull: { date, checked, distanceAgo: "32000 mi" } })).toEqual(["lastFull.distanceAgo"]);
  });

  it("is refused where no vehicle can do it", () => {
    expect(asked(after(140_000))).toEqual(["visit.odometer"]);
    expect(faultsIn(after(160_000))).toMatchObject([{ path: "visit.odometer" }]);
    expect(faultsIn(after(160_000))[0]!.given).toContain("160000 mi");
  });

  it("a long drive between two days is neither", () => {
    const lastFull = { ...plainVisit.lastFull, date: "2024-10-13" };
    expect(asked({ lastFull, visit: { date: "2024-10-14", odometer: "60700 mi" } })).toEqual([]);
  });
});

describe("the shipped visits", () => {
  it.each(["seep-behind-a-shield", "fitting-let-go", "low-from-the-start", "three-facts"])(
    "%s is invented and says so, reads, and has few kinds of trips",
    (name) => {
      const read = readVisitFile(visitFile(name));
      expect(read.about).toMatch(/^Invented/);
      expect(kindsOf(read.visit.week).kinds.length).toBeLessThanOrEqual(4);
      expect(read.visit.evidence.length).toBeGreaterThan(1);
      expect(read.clock.at).toBeGreaterThan(20 * DAY);
    },
  );
});

describe("a week from the use alone", () => {
  it.each([
    ["town", 50],
    ["town", 200],
    ["mixed", 200],
    ["highway", 500],
    ["town", 500],
    ["mixed", 900],
  ] as const)("%s, %i miles a week: few kinds of trips, and about that far", (roads, far) => {
    const { week } = readWith({ use: { roads, distancePerWeek: `${far} mi` } }).visit;
    const kinds = kindsOf(week).kinds.length;
    expect(kinds).toBeGreaterThanOrEqual(2);
    expect(kinds).toBeLessThanOrEqual(4);
    const ratio = (7 * dailyDriving(week).distance) / miles(far);
    expect(ratio).toBeGreaterThan(0.8);
    expect(ratio).toBeLessThan(1.25);
  });

  it("by hours a day", () => {
    const { week } = readWith({ use: { roads: "town", hoursPerDay: "1.2 h" } }).visit;
    expect(dailyDriving(week).drivingTime / 3600).toBeCloseTo(1.2, 1);
  });
});

describe("every fault of a visit comes at once", () => {
  it("shape, units, dates, volumes, names and the case's own", () => {
    const faults = faultsIn({
      colour: "white",
      leak: { place: "tail pipe", diameter: "1 mm" },
      surroundings: { meanTemperature: "11", yearlySwing: "9 K" },
      shield: "yes",
      visit: { date: "2024-10-14", odometer: "62000" },
      topUps: [{ on: "2024-09-20", volume: "90 qt" }],
      evidence: [
        { kind: "fluid missing", volume: 3 },
        { kind: "fluid missing", volume: "40 qt" },
        { kind: "drops", count: 4.5, time: "1 min", engine: "idling hot" },
        { kind: "first spot", about: "2024-05-01" },
        { kind: "first spot", about: "2024-09-01", before: "2024-10-01" },
        { kind: "first symptom", what: "flare", between: ["2024-10-01", "2024-09-01"] },
        { kind: "looked", on: "2024-12-24", how: "walk round", seen: false },
        { kind: "teardown", clutch: "fifth wheel", burnt: true },
        { kind: "smell", of: "burnt" },
        { kind: "dipstick", temperature: "180 degF", reads: "somewhere" },
      ],
      beliefs: {
        luck: { law: "normal", middle: 1, spread: 1 },
        "age of the leak": { law: "uniform", low: 1, high: "2 days" },
      },
      causes: { gremlins: 0.5 },
    });
    const paths = new Set(faults.map(({ path }) => path));
    for (const path of [
      "colour",
      "leak.place",
      "leak.diameter",
      "surroundings.meanTemperature",
      "shield",
      "visit.odometer",
      "topUps[0].volume",
      "evidence[0].volume",
      "evidence[1].volume",
      "evidence[2].count",
      "evidence[3].about",
      "evidence[4]",
      "evidence[5].between",
      "evidence[6].on",
      "evidence[7].clutch",
      "evidence[8].kind",
      "evidence[9].reads",
      "beliefs.luck",
      "beliefs.age of the leak.low",
      "causes.gremlins",
    ])
      expect(paths, path).toContain(path);
    for (const { path, expected, given } of faults) {
      expect(expected, path).toBeTruthy();
      expect(given, path).toBeTruthy();
    }
  });

  it("a part of the wrong shape hides no fault of another, nor of its own other fields", () => {
    const { lastFull, visit } = plainVisit;
    const { checked: _, ...unchecked } = lastFull;
    const items = {
      topUps: [{ on: "2024-12-24", volume: "30 qt", by: 3 }],
      evidence: [
        { kind: "looked", on: "2024-07-02", seen: false },
        { kind: "first symptom", what: "hops", between: ["2024-10-01", "2024-09-01"] },
        { kind: "teardown", clutch: "fifth wheel" },
        { kind: "fluid missing", volume: "30 qt", by: 3 },
      ],
      beliefs: { luck: { law: "normal", middle: 1, spread: 1 }, "age of the leak": { law: "odd" } },
      causes: { gremlins: 0.5, "slow leak": "likely" },
    };
    const ofItems = [
      ["topUps[0].by", "topUps[0].volume", "evidence[0].how", "evidence[0].on", "evidence[1].what"],
      ["evidence[2].burnt", "evidence[2].clutch", "evidence[3].by", "evidence[3].volume"],
      ["beliefs.luck", "beliefs.age of the leak.law", "causes.gremlins", "causes.slow leak"],
    ].flat();
    const dated = ["topUps[0].on", "evidence[1].between"];
    const sorted = (paths: readonly string[]) => [...new Set(paths)].sort();
    // With both dates everything is known; with the first alone all but what comes after the visit.
    expect(sorted(pathsIn({ lastFull: unchecked, ...items }))).toEqual(
      sorted(["lastFull.checked", ...ofItems, ...dated]),
    );
    const undated = { lastFull: unchecked, visit: { ...visit, date: "2024-13-14" }, ...items };
    expect(sorted(pathsIn(undated))).toEqual(
      sorted(["lastFull.checked", "visit.date", "evidence[1].between", ...ofItems]),
    );
    expect(sorted(pathsIn({ lastFull: "2024-08-05", visit: { date: "2024-13-14" } }))).toEqual(
      sorted(["lastFull", "visit.date"]),
    );
    expect(sorted(pathsIn({ lastFull: { date: "2024-13-05" }, visit: "today" }))).toEqual(
      sorted(["lastFull.checked", "lastFull.date", "visit"]),
    );
  });

  it("what is missing, of another shape or of another name is told with what is accepted and an example", () => {
    const { lastFull } = plainVisit;
    const { checked: _, ...unchecked } = lastFull;
    const everything = [...faultsOf(() => readVisit({}, van)), ...faultsIn({ lastFull: unchecked })];
    const missing = everything.filter(({ given }) => given === "nothing");
    expect(missing.map(({ path }) => path)).toEqual(
      expect.arrayContaining(["name", "leak", "lastFull", "visit", "evidence", "lastFull.checked"]),
    );
    for (const { path, expected, example } of missing) {
      expect(expected, path).not.toMatch(/may not be missing|Object|Array/);
      expect(example, path).not.toBe("");
    }
    // Each example is taken in the place that it is told for.
    const told = Object.fromEntries(
      missing
        .filter(({ path }) => !path.includes("."))
        .map(({ path, example }) => [path, JSON.parse(example) as unknown]),
    );
    expect(faultsOf(() => readVisit(told, van))).toEqual([]);

    const [checked] = faultsIn({ lastFull: { ...lastFull, checked: "dipstick" } });
    expect(checked!.expected).toContain('"hot dipstick", "overflow plug"');
    expect(pathsIn({ visit: { odometer: "62000 mi" } })).toEqual(["visit.date"]);
    const [stick] = faultsIn({
      evidence: [{ kind: "dipstick", temperature: "180 degF", reads: "1 qt low" }],
    });
    expect(stick!.expected).toMatch(/"below the low mark".*"dry".*0 at the low mark, 1 at the full one/);
    expect(stick!.given).toBe('"1 qt low"');
  });

  it("a word or a name that is hardly spelled otherwise is asked about", () => {
    const asked = (more: object) =>
      faultsIn(more).map(({ given }) => /\(did you mean (.*)\?\)/.exec(given)?.[1]);
    expect(asked({ leak: { place: "suply-line" } })).toEqual(['"supply-line"']);
    expect(asked({ causes: { "slow leek": 1 } })).toEqual(['"slow leak"']);
    expect(asked({ evidence: [{ kind: "fluid mising", volume: "3 qt" }] })).toEqual(['"fluid missing"']);
  });

  it("a place that is none is shown one", () => {
    expect(faultsIn({ leak: { place: "sump" } })).toMatchObject([
      { path: "leak.place", example: '"supply-line"' },
    ]);
  });

  it("an item is named in words too, counted from 1, with its kind and date", () => {
    const drops = { kind: "drops", count: 40, time: "1 min", engine: "off" };
    const missing = { kind: "added until it ran", on: "2024-10-10", volume: "-3 qt" };
    const faults = faultsIn({ evidence: [drops, missing], topUps: [{ on: "2024-09-20", volume: "0 qt" }] });
    expect(faults.map(({ item }) => item)).toEqual([
      "top-up 1, 2024-09-20",
      "item 2, added until it ran, 2024-10-10",
    ]);
    expect(faultText(faults[1]!)).toBe(
      'evidence[1].volume (item 2, added until it ran, 2024-10-10): expected a volume with its unit, above 0, for example "3 qt"; received "-3 qt"',
    );
  });

  it("limits are told in units that people write", () => {
    const stick = { kind: "dipstick", temperature: "700 degF", reads: "dry" };
    expect(faultsIn({ evidence: [stick] })[0]!.expected).toBe(
      "a temperature with its unit, from -45.7 °F (-43.1 °C) to 314 °F (157 °C)",
    );
    expect(faultsIn({ use: { hoursPerDay: "30 h" } })[0]!.expected).toBe(
      "a time with its unit, from 1 min to 20 h",
    );
  });

  it("an odometer that went back is told in words", () => {
    const { lastFull } = plainVisit;
    const back = {
      lastFull: { ...lastFull, odometer: "61000 mi" },
      visit: { date: "2024-10-14", odometer: "60000 mi" },
    };
    expect(faultsIn(back)).toMatchObject([
      { path: "visit.odometer", given: "a reading that is 1000 mi (1609 km) less than at the last full" },
    ]);
  });

  it("a key that is not known is told with those that are, the nearest first", () => {
    const known = (more: object) => faultsIn(more).find(({ given }) => given.includes("which is not known"))!;
    expect(known({ lastful: {} })).toMatchObject({
      path: "lastful",
      given: '"lastful", which is not known: did you mean "lastFull"?',
    });
    // Far from all: no question.
    expect(known({ gearbox: {} }).given).toBe('"gearbox", which is not known');
    expect(known({ lastful: {} }).expected).toMatch(/^one of the keys lastFull, .*evidence/);
    const { lastFull } = plainVisit;
    expect(known({ lastFull: { ...lastFull, odometr: "60000 mi" } }).expected).toMatch(
      /keys odometer, .*distanceAgo/,
    );
    const drops = { kind: "drops", cuont: 40, time: "1 min", engine: "off" };
    expect(known({ evidence: [drops] })).toMatchObject({
      path: "evidence[0].cuont",
      expected: expect.stringMatching(/keys count, .*dropVolume/) as string,
    });
    const belief = { law: "uniform", low: "1 day", hihg: "2 days" };
    expect(known({ beliefs: { "age of the leak": belief } }).expected).toMatch(/keys high, /);
  });

  it("a number is shown as it was written", () => {
    const [fault] = faultsIn({ evidence: [{ kind: "fluid missing", volume: "30 qt" }] });
    expect(fault).toMatchObject({ path: "evidence[0].volume", given: '"30 qt"' });
    const [lining] = faultsIn({
      evidence: [{ kind: "teardown", clutch: "direct clutch", burnt: true, lining: "0.1 in" }],
    });
    expect(lining).toMatchObject({ path: "evidence[0].lining", given: '"0.1 in"' });
  });

  it("numbers without unit are taken as text too, whichever they are", () => {
    const numbers = (write: (number: number) => unknown) =>
      readWith({
        seed: write(7),
        evidence: [{ kind: "drops", count: write(40), time: "1 min", engine: "off" }],
        beliefs: { "age of the leak": { law: "lognormal", middle: "30 days", spread: write(0.4) } },
        causes: { "slow leak": write(0.5) },
      });
    const [asText, asNumber] = [numbers(String), numbers((number) => number)];
    expect(asText.seed).toBe(7);
    expect(asText.visit).toEqual(asNumber.visit);
    expect(asText.beliefs).toEqual(asNumber.beliefs);
    expect(pathsIn({ seed: "seven" })).toEqual(["seed"]);
    expect(pathsIn({ seed: -1 })).toEqual(["seed"]);
  });

  it("dates out of order, in a chosen way each", () => {
    const { lastFull, visit } = plainVisit;
    expect(pathsIn({ visit: { ...visit, date: "2024-08-01" } })).toEqual(["visit.date"]);
    expect(pathsIn({ visit: { ...visit, date: "yesterday" } })).toContain("visit.date");
    expect(pathsIn({ visit: { ...visit, date: 20241014 } })).toContain("visit.date");
    expect(pathsIn({ visit: { ...visit, odometer: "59000 mi" } })).toEqual(["visit.odometer"]);
    expect(pathsIn({ lastFull: { checked: "hot dipstick" } })).toEqual(["lastFull"]);
    expect(pathsIn({ lastFull: { ...lastFull, distanceAgo: "100 mi" } })).toContain("lastFull.distanceAgo");
  });

  it("evidence from before the last full is told with its date", () => {
    const [fault] = faultsIn({
      evidence: [{ kind: "looked", on: "2024-07-01", how: "walk round", seen: false }],
    });
    expect(fault).toMatchObject({ path: "evidence[0].on", given: '"2024-07-01"' });
    expect(fault!.expected).toContain("2024-08-05");
    expect(fault!.example).toContain("2024-10-12");
  });

  it("an odometer reading needs both ends of the odometer", () => {
    const { odometer: _, ...lastFull } = plainVisit.lastFull;
    const { odometer: __, ...visit } = plainVisit.visit;
    const [fault] = faultsIn({
      lastFull,
      visit: visit,
      evidence: [{ kind: "looked", on: "61000 mi", how: "walk round", seen: false }],
    });
    expect(fault).toMatchObject({ path: "evidence[0].on" });
    expect(fault!.given).toContain("odometer");
  });

  it("what is no object, and both a week and a use", () => {
    for (const json of [null, 3, [], "visit"])
      expect(faultsOf(() => readVisit(json, van))).toMatchObject([{ path: "visit" }]);
    expect(pathsIn({ week: { trips: [] } })).toContain("use");
    expect(faultsOf(() => readVisit({}, van)).map(({ path }) => path)).toEqual(
      expect.arrayContaining(["name", "leak", "lastFull", "visit", "evidence"]),
    );
  });
});
