import { describe, expect, it } from "vitest";
import { readCase } from "../../src/inputs/case.ts";
import { changed, faultsOf, faultsWith, type Change } from "./shipped.ts";

const seal = {
  kind: "seal",
  place: "supply-line",
  diameter: "13 mm",
  length: "2.4 mm",
  clearance: "20 um",
  finalClearance: "10 um",
  creepTime: "150 h",
};
const crack = {
  kind: "crack",
  place: "supply-line",
  length: "14 mm",
  partsAtLength: "3 mm",
  partsAfter: "40 h",
  parisExponent: 3,
  wall: "0.9 mm",
  tubeDiameter: "10 mm",
  bendingStress: "60 MPa",
  restGap: "2 um",
};
const topUp = (date: string) => ({ kind: "top-up", date, volume: "1 qt" });
const trip = (at: string) => ({ schedule: "NEDC", days: ["Mon"], at });

// What is wrong with the case, how it was spoilt, and where the one fault must point.
const provoked: readonly (readonly [string, readonly Change[], string])[] = [
  ["pickup above the pan", [["build.sump.pickup.height", "80 mm"]], "build.sump.pickup.height"],
  ["pickup beside the pan", [["build.sump.pickup.x", "0.5 m"]], "build.sump.pickup.x"],
  ["stick beside the pan", [["build.sump.stick.y", "0.5 m"]], "build.sump.stick.y"],
  ["overflow above the pan", [["build.sump.overflow.height", "90 mm"]], "build.sump.overflow.height"],
  ["low mark above full mark", [["build.sump.stick.low", "60 mm"]], "build.sump.stick.low"],
  ["full mark above the pan", [["build.sump.stick.full", "80 mm"]], "build.sump.stick.full"],
  [
    "less gas at the weir than covered",
    [["build.sump.pickup.weirGas", "0.1 %"]],
    "build.sump.pickup.weirGas",
  ],
  ["fill larger than the box can hold", [["build.fill", "13 L"]], "build.fill"],
  ["hold-ups larger than the fill", [["build.holdUp.converter", "9.8 L"]], "build.holdUp"],
  [
    "kiss pressure above base line pressure",
    [["build.clutches.2.spring", "5 kN"]],
    "build.clutches[2].spring",
  ],
  [
    "lock-up spring that nothing overcomes",
    [["build.lockUp.clutch.spring", "30 kN"]],
    "build.lockUp.clutch.spring",
  ],
  ["ring inside out", [["build.clutches.1.inner", "80 mm"]], "build.clutches[1].inner"],
  ["largest pressure below base", [["build.regulator.most", "300 kPa"]], "build.regulator.most"],
  ["locked at standstill", [["build.lockUp.offBelow", "0 km/h"]], "build.lockUp.offBelow"],
  ["locked in the starting gear", [["build.lockUp.fromGear", "1"]], "build.lockUp.fromGear"],
  ["locked in no gear", [["build.lockUp.fromGear", "7"]], "build.lockUp.fromGear"],
  ["lets go above where it locks", [["build.lockUp.offBelow", "70 km/h"]], "build.lockUp.offBelow"],
  ["downshift above upshift", [["build.shiftPlan.down.1", "40 km/h"]], "build.shiftPlan.down[1]"],
  ["one shift too few", [["build.shiftPlan.up", ["20 km/h", "36 km/h", "54 km/h"]]], "build.shiftPlan.up"],
  ["rated speed below idle", [["build.engine.ratedSpeed", "600 rpm"]], "build.engine.ratedSpeed"],
  ["thermostat the wrong way round", [["build.cooler.bypassHot", "50 degC"]], "build.cooler.bypassHot"],
  [
    "air cools more than oil",
    [["build.heat.lubrication.fullCoefficient", "20 W/(m2 K)"]],
    "build.heat.lubrication.fullCoefficient",
  ],
  [
    "front set that cannot be assembled",
    [["build.gearTrain.front.planets", 3]],
    "build.gearTrain.front.planets",
  ],
  [
    "planets between odd and even",
    [
      ["build.gearTrain.front.sun", 41],
      ["build.gearTrain.front.planets", 3],
    ],
    "build.gearTrain.front.ring",
  ],
  [
    "large sun that cannot be assembled",
    [["build.gearTrain.rear.planets", 3]],
    "build.gearTrain.rear.planets",
  ],
  ["suns the wrong way round", [["build.gearTrain.rear.smallSun", 40]], "build.gearTrain.rear.smallSun"],
  ["final ring smaller than its pinion", [["build.gearTrain.final.ring", 10]], "build.gearTrain.final.ring"],
  [
    "reverse that drives forward",
    [["build.reverse", { name: "R", ratio: 3.3, holds: [{ clutch: "reverse clutch", share: 1.6 }] }]],
    "build.reverse.ratio",
  ],
  [
    "viscosity that rises with temperature",
    [["fluid.viscosity.2.kinematic", "50 cSt"]],
    "fluid.viscosity[2].kinematic",
  ],
  [
    "two points at one temperature",
    [["fluid.viscosity.1.temperature", "100 degC"]],
    "fluid.viscosity[2].temperature",
  ],
  ["final clearance smaller than first", [["leak", seal]], "leak.finalClearance"],
  ["fewer drops in the end", [["leak.finalDrops", "0.5 drops/min"]], "leak.finalDrops"],
  ["more drops than a gap can pass", [["leak.finalDrops", "1e12 drops/min"]], "leak.finalDrops"],
  ["crack that shrinks", [["leak", crack]], "leak.partsAtLength"],
  [
    "crack longer than the tube is round",
    [["leak", { ...crack, partsAtLength: "40 mm" }]],
    "leak.partsAtLength",
  ],
  ["tube that is all wall", [["leak", { ...crack, partsAtLength: "20 mm", wall: "5 mm" }]], "leak.wall"],
  [
    "hole above the pan",
    [["leak", { kind: "hole", place: "pan", height: "90 mm", diameter: "1 mm", wall: "1 mm" }]],
    "leak.height",
  ],
  [
    "hole wider than any line",
    [["leak", { kind: "hole", place: "supply-line", diameter: "200 mm", wall: "1 mm" }]],
    "leak.diameter",
  ],
  [
    "hole wider than the pan",
    [["leak", { kind: "hole", place: "pan", height: "5 mm", diameter: "600 mm", wall: "1 mm" }]],
    "leak.diameter",
  ],
  [
    "crack in a tube as wide as a stove pipe",
    [["leak", { ...crack, partsAtLength: "20 mm", tubeDiameter: "120 mm" }]],
    "leak.tubeDiameter",
  ],
  ["leak opens before the start", [["opens", { date: "2024-03-03" }]], "opens.date"],
  ["leak opens after the end", [["opens", { after: "500 days" }]], "opens.after"],
  ["leak opens at a lower odometer", [["opens", { odometer: "59000 mi" }]], "opens.odometer"],
  ["no such day", [["start.date", "2024-02-30"]], "start.date"],
  ["a start that is no date", [["start.date", "Monday"]], "start.date"],
  ["entries out of order", [["entries", [topUp("2024-05-02"), topUp("2024-05-01")]]], "entries[1].date"],
  ["entry before the start", [["entries", [topUp("2024-02-01")]]], "entries[0].date"],
  ["entry after the end", [["entries", [topUp("2026-02-01")]]], "entries[0].date"],
  ["entry on no date", [["entries", [topUp("soon")]]], "entries[0].date"],
  ["more missing than filled", [["fillShort", "12 L"]], "fillShort"],
  ["overlapping trips", [["week.trips", [trip("08:00"), trip("08:10")]]], "week.days[0]"],
  ["a trip at no time of day", [["week.trips", [trip("25:00")]]], "week.trips[0].at"],
];

describe("an impossible case is an error that points at its place", () => {
  it("a set with two suns alone has four gears, held in its own way", () => {
    const faults = faultsWith(["build.gearTrain.front", undefined]).map(({ path }) => path);
    expect(faults).toContain("build.gears[4].name");
    expect(faults).toContain("build.gears[0].holds"); // the set in front is gone, so its brake holds nothing
    expect(faults).toContain("build.reverse.holds");
  });

  it.each(provoked)("%s", (_, changes, path) => {
    const faults = faultsWith(...changes);
    expect(faults.map((fault) => fault.path)).toEqual([path]);
    expect(faults[0]!.expected).not.toBe("");
    expect(faults[0]!.given).not.toBe("");
  });

  it("clutch that carries no gear", () => {
    const spare = (changed() as { build: { clutches: object[] } }).build.clutches[0];
    const [fault, ...more] = faultsWith(["build.clutches.7", { ...spare, name: "spare clutch" }]);
    expect(more).toEqual([]);
    expect(fault).toMatchObject({
      path: "build.clutches[7].name",
      given: '"spare clutch", which no gear names',
    });
  });

  it("gear that names an unknown clutch", () => {
    const faults = faultsWith(["build.gears.3.holds.2", "direct cluch"]);
    expect(faults).toMatchObject([{ path: "build.gears[3].holds[2]", given: '"direct cluch"' }]);
    expect(faults[0]!.expected).toContain("direct clutch");
  });

  it("two clutches or two gears with one name, and a gear the train does not have", () => {
    expect(faultsWith(["build.clutches.1.name", "front brake"]).map(({ path }) => path)).toContain(
      "build.clutches[1].name",
    );
    expect(faultsWith(["build.gears.1.name", "1"]).map(({ path }) => path)).toContain("build.gears[1].name");
    expect(faultsWith(["build.gears.4.name", "6"]).map(({ path }) => path)).toContain("build.gears[4].name");
    const otherWay = ["front clutch", "forward clutch", "band brake"];
    expect(faultsWith(["build.gears.1.holds", otherWay])).toMatchObject([
      { path: "build.gears[1].holds", given: otherWay.join(", ") },
    ]);
  });

  it("a lock-up speed of zero", () => {
    const paths = faultsWith(["build.lockUp.onAbove", "0 mph"]).map(({ path }) => path);
    expect(paths).toContain("build.lockUp.onAbove");
  });
});

describe("what is possible is no error", () => {
  it.each<[string, Change]>([
    ["hardly any fluid", ["fillShort", "10.4 L"]],
    ["overfilled", ["fillShort", "-1 qt"]],
    ["no leak", ["leak", null]],
    [
      "a leak as wide as the pan is long",
      ["leak", { kind: "hole", place: "pan", diameter: "400 mm", wall: "1 mm" }],
    ],
    ["no trips at all", ["week", { trips: [] }]],
    ["a pump that slips all it displaces", ["build.pump.slip", 1e-4]],
    [
      "another arrangement of gears",
      [
        "build.reverse",
        {
          name: "back",
          ratio: -3.3,
          holds: [
            { clutch: "reverse clutch", share: 1.6 },
            { clutch: "low-reverse brake", share: 4.9 },
          ],
        },
      ],
    ],
    [
      "a stiff fluid with two points",
      [
        "fluid.viscosity",
        [
          { temperature: "40 degC", kinematic: "460 cSt" },
          { temperature: "100 degC", kinematic: "30 cSt" },
        ],
      ],
    ],
    ["a constant climate", ["surroundings", { meanTemperature: "-10 degC", yearlySwing: "0 K" }]],
    ["opens at an odometer", ["opens", { odometer: "60100 mi" }]],
  ])("%s", (_, change) => {
    expect(faultsOf(() => readCase(changed(change)))).toEqual([]);
  });
});
