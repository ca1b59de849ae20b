import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBuild, readCase } from "../../src/inputs/case.ts";
import { dateOf, planOf } from "../../src/inputs/plan.ts";
import { changed, faultsOf, faultsWith, type Change } from "./shipped.ts";

const paths = (...changes: readonly Change[]) => faultsWith(...changes).map(({ path }) => path);

describe("every fault of a case comes at once", () => {
  it("numbers, shape, contradictions, dates and trips together", () => {
    const many: readonly Change[] = [
      ["build.pump.displacement", 20],
      ["build.regulator.base", "375"],
      ["build.sump.pickup.height", "80 mm"],
      ["build.sump.stick.low", "60 mm"],
      ["build.engine.ratedPower", undefined],
      ["build.vehicle.mass", "150 kW"],
      ["build.regulator.spill", "floor"],
      ["build.gears.0.holds.0", "frnt brake"],
      ["build.colour", "white"],
      ["fluid.viscosity.2.kinematic", "50 cSt"],
      ["leak.drops", "1 mL/min"],
      ["leak.countedAt.temperature", "85"],
      ["surroundings.yearlySwing", "9"],
      ["opens", { date: "2024-03-03" }],
      ["week.trips.3.at", "half past seven"],
      ["seed", 1.5],
    ];
    expect(new Set(paths(...many))).toEqual(
      new Set([
        "build.pump.displacement",
        "build.regulator.base",
        "build.sump.pickup.height",
        "build.sump.stick.low",
        "build.engine.ratedPower",
        "build.vehicle.mass",
        "build.regulator.spill",
        "build.gears[0].holds[0]",
        "build.colour",
        "fluid.viscosity[2].kinematic",
        "leak.drops",
        "leak.countedAt.temperature",
        "surroundings.yearlySwing",
        "opens.date",
        "week.trips[3].at",
        "seed",
      ]),
    );
  });

  it("and each stands in the message on its own line, with what to write instead", () => {
    const message = () => readCase(changed(["build.pump.displacement", 20], ["build.fill", "3 psi"]));
    expect(message).toThrow(
      'build.fill: expected a volume with its unit, above 0, for example "3 qt"; received "3 psi", which is not a volume',
    );
    expect(message).toThrow(
      'build.pump.displacement: expected a displacement per turn with its unit, above 0, for example "20 cm3/rev"; received 20, a number without a unit',
    );
  });

  it("a part that is missing or of another shape is one fault, and the other parts are still looked at", () => {
    expect(paths(["build.sump", undefined], ["build.fill", "3 psi"]).sort()).toEqual([
      "build.fill",
      "build.sump",
    ]);
    expect(paths(["build.sump", "deep"], ["build.engine.ratedSpeed", "600 rpm"]).sort()).toEqual([
      "build.engine.ratedSpeed",
      "build.sump",
    ]);
    expect(paths(["build", "van.json"], ["opens", { date: "2024-03-03" }]).sort()).toEqual([
      "build",
      "opens.date",
    ]);
    expect(paths(["build", undefined])).toEqual(["build"]);
  });

  it.each<[string, Change, string]>([
    ["a negative size", ["build.inlet.bore", "-22 mm"], "build.inlet.bore"],
    ["a clutch of no faces", ["build.clutches.0.faces", 0], "build.clutches[0].faces"],
    ["half a tooth", ["build.gearTrain.front.sun", 41.5], "build.gearTrain.front.sun"],
    ["more than all", ["build.pump.dissolved", "150 %"], "build.pump.dissolved"],
    ["a share with a unit", ["build.pump.mechanical", "0.85 m"], "build.pump.mechanical"],
    ["zero kelvin", ["build.fillTemperature", "0 K"], "build.fillTemperature"],
    ["a leak of no kind", ["leak.kind", "rust"], "leak.kind"],
    ["a schedule of no name", ["week.trips.0.schedule", "race"], "week.trips[0].schedule"],
    ["a day of no name", ["week.trips.0.days", ["Funday"]], "week.trips[0].days"],
    [
      "a fluid of one point",
      ["fluid.viscosity", [{ temperature: "40 degC", kinematic: "35 cSt" }]],
      "fluid.viscosity",
    ],
    ["opens nowhere", ["opens", { place: "pan" }], "opens"],
    ["a round too short", ["week.trips.0.duration", "2 min"], "week.trips[0].duration"],
    ["a gear of no shape", ["build.gears.0", { name: "1", holds: [] }], "build.gears[0]"],
  ])("%s", (_, change, path) => expect(paths(change)).toEqual([path]));

  it.each([null, 7, "case", [], {}, { name: "empty" }])("never anything but a list of faults: %j", (json) => {
    expect(faultsOf(() => readCase(json)).length).toBeGreaterThan(0);
    expect(faultsOf(() => readBuild(json)).length).toBeGreaterThan(0);
  });

  it("whatever one place of a case holds", () => {
    const places = Object.keys(readCase(changed()).origins).map((path) =>
      path.replaceAll(/\[(\d+)\]/g, ".$1"),
    );
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.jsonValue({ maxDepth: 1 }), (path, value) => {
        faultsWith([path, value]); // faultsOf lets any other error through
      }),
      { numRuns: 100 },
    );
  });
});

describe("a recorded drive of a case", () => {
  const csv = "time [s],speed [m/s]\n20,4\n21,8\n21,10\n33,16\n34,0";
  const trip = { schedule: "own", days: ["Mon"], at: "08:00", name: "round", csv };
  const mends = { mergeRepeats: true, bridgeGaps: "15 s", leadIn: "1 m/s2" };

  it("is mended as far as its trip asks, and the case tells what was done", () => {
    const read = readCase(changed(["week.trips", [{ ...trip, ...mends }]]));
    const { dt } = read.week.days[0]![0]!.ticks;
    expect(dt.reduce((sum, each) => sum + each, 0)).toBeCloseTo(4 + 14, 9);
    expect(read.remarks).toEqual([
      "round: line 3: 2 rows at 21 s became one, their mean",
      "round: line 5: 12 s without a row were bridged by a straight line from 9.00 to 16.0 m/s",
      "round: line 2: it begins at 4.00 m/s: 4.00 s and 8.00 m from standstill stand before it",
    ]);
    expect(readCase(changed()).remarks).toEqual([]);
  });

  it("that is not to be mended is refused with the words that would ask for it", () => {
    expect(faultsWith(["week.trips", [trip]]).map(({ path, expected }) => [path, expected])).toEqual([
      [
        "round line 4, time",
        "a time after line 3 (rows of one time are made one where mergeRepeats is asked for)",
      ],
      [
        "round line 5, time",
        "at most 5 s after line 4 while the vehicle moves (longer gaps are bridged where bridgeGaps is asked for)",
      ],
    ]);
  });

  it.each<[string, unknown, string]>([
    ["mergeRepeats", "yes", "true or false"],
    ["bridgeGaps", 20, 'a time with its unit, above 0, for example "20 s"'],
    ["leadIn", "0 m/s2", 'an acceleration with its unit, above 0, for example "1 m/s2"'],
  ])("refuses %s: %j in one fault", (key, value, said) => {
    const faults = faultsWith(["week.trips", [{ ...trip, ...mends, [key]: value }]]);
    expect(faults.map(({ path }) => path)).toEqual([`week.trips[0].${key}`]);
    expect(
      faults[0]!.expected + (faults[0]!.example === "" ? "" : `, for example ${faults[0]!.example}`),
    ).toBe(said);
  });
});

describe("a number with its origin", () => {
  const origin = { kind: "assumed", source: "workshop", because: "measured with a rule" };

  it("and the plain text give the same build", () => {
    const plain = readCase(changed(["build.pump.displacement", "21 cm3/rev"]));
    const full = readCase(
      changed([
        "build.pump.displacement",
        { value: "21 cm3/rev", origin, range: ["20 cm3/rev", "22 cm3/rev"] },
      ]),
    );
    expect(full.unit).toEqual(plain.unit);
    expect(full.origins["build.pump.displacement"]).toEqual({
      text: "21 cm3/rev",
      value: 2.1e-5,
      unit: "m^3",
      whole: false,
      origin,
      range: [2e-5, 2.2e-5],
    });
    expect(plain.origins["build.pump.displacement"]).toMatchObject({
      value: 2.1e-5,
      unit: "m^3",
      whole: false,
      origin: null,
      range: null,
    });
  });

  it.each<[string, object]>([
    ["a kind that is none", { value: "21 cm3", origin: { kind: "guessed", source: "workshop" } }],
    ["no source", { value: "21 cm3", origin: { kind: "assumed" } }],
    ["a range the wrong way round", { value: "21 cm3", range: ["22 cm3", "20 cm3"] }],
    ["a range beside the value", { value: "21 cm3", range: ["22 cm3", "24 cm3"] }],
    ["a range of one end", { value: "21 cm3", range: ["20 cm3"] }],
    ["a range without units", { value: "21 cm3", range: ["20 cm3", 22] }],
    ["a key that is not known", { value: "21 cm3", note: "new" }],
  ])("is refused with %s", (_, leaf) => {
    expect(paths(["build.pump.displacement", leaf])).toEqual(["build.pump.displacement"]);
  });
});

describe("round trips", () => {
  it("a number survives in any of its units", () => {
    const scales = [
      ["kPa", 1e-3],
      ["bar", 1e-5],
      ["MPa", 1e-6],
      ["Pa", 1],
    ] as const;
    fc.assert(
      fc.property(
        fc.double({ min: 3e5, max: 1.8e6, noNaN: true }),
        fc.constantFrom(...scales),
        (pa, [unit, scale]) => {
          const { build } = readBuild(
            (changed(["build.regulator.base", `${pa * scale} ${unit}`]) as { build: unknown }).build,
          );
          expect(Math.abs(build.regulator.base / pa - 1)).toBeLessThan(1e-14);
        },
      ),
      { numRuns: 30 },
    );
  });

  it("what was read can be written in SI and read again", () => {
    const first = readCase(changed());
    const rewritten = Object.entries(first.origins)
      .filter(([path]) => path.startsWith("build.pump.") || path.startsWith("build.cooler."))
      .map(([path, { value, text }]): Change => {
        const unit = /temperature|Cold$|Hot$/.test(path) ? "K" : siUnit(text);
        return [path.replaceAll(/\[(\d+)\]/g, ".$1"), unit === "" ? value : `${value} ${unit}`];
      });
    expect(rewritten.length).toBeGreaterThan(10);
    expect(readCase(changed(...rewritten)).unit).toEqual(first.unit);
  });

  it("top-ups of one moment are one, and days are counted from Monday and New Year", () => {
    const entry = { kind: "top-up", date: "2024-03-05", volume: "1 L", temperature: "15 degC" };
    const warm = { ...entry, volume: "2 L", temperature: "95 degC" };
    const plan = planOf(readCase(changed(["entries", [entry, warm]], ["fillShort", "1 L"])));
    expect(plan.topUps).toMatchObject([{ at: 86400 }]);
    // Two parts of hot fluid, a little lighter, and one of cold, by heat: a little under two thirds of the way.
    expect(plan.topUps[0]!.temperature).toBeGreaterThan(288.15 + 0.65 * 80);
    expect(plan.topUps[0]!.temperature).toBeLessThan(288.15 + 0.68 * 80);
    expect(plan.topUps[0]!.volume).toBeCloseTo(3e-3, 5);
    expect([plan.weekday, plan.dayOfYear, plan.fillShort]).toEqual([0, 63, 1e-3]);
    expect(planOf(readCase(changed(["opens", { odometer: "60100 mi" }]))).opens).toEqual({
      distance: expect.closeTo(160934.4, 6) as number,
    });
    expect(dateOf(readCase(changed()), 90000)).toBe("2024-03-05 01:00");
  });

  it("the same seed gives the same rounds, another seed others", () => {
    const free = { schedule: "parcel round", days: ["Mon"], at: "08:00" };
    const week = (seed: number) => readCase(changed(["week.trips", [free]], ["seed", seed])).week;
    expect(week(3)).toEqual(week(3));
    expect(week(3)).not.toEqual(week(4));
  });
});

function siUnit(text: string): string {
  if (/1\/m3/.test(text)) return "m^-3";
  if (/rev|cm3/.test(text)) return "m3";
  if (/Pa/.test(text)) return "Pa";
  return /mm/.test(text) ? "m" : "";
}
