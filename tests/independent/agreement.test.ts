// The program against the model written once more from the equations (model.ts): the same unit, the same drives.
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { type Trip, type Week } from "../../src/driving/pattern.ts";
import { simulate, type History } from "../../src/history/simulate.ts";
import { readCase } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";
import { type Leak, type Unit } from "../../src/physics/build.ts";
import { independentRun } from "./model.ts";

const shipped = readCase(caseData(join(import.meta.dirname, "../../reference-data/cases/pinhole.json")));
const round = shipped.week.days[0]![0]!;
/** The same drive with every tick cut to at most a second. */
function cut(trip: Trip): Trip {
  const { count, dt, speed, grade, lateral } = trip.ticks;
  const pieces = Array.from({ length: count }, (_, n) => n).flatMap((n) => {
    const k = Math.ceil(dt[n]! - 1e-9),
      before = n > 0 ? speed[n - 1]! : 0;
    return Array.from({ length: k }, (_, j) => [
      dt[n]! / k,
      before + ((speed[n]! - before) * (j + 1)) / k,
      grade[n]!,
      lateral[n]!,
    ]);
  });
  const column = (c: number) => Float64Array.from(pieces, (p) => p[c]!);
  return {
    ...trip,
    ticks: { count: pieces.length, dt: column(0), speed: column(1), grade: column(2), lateral: column(3) },
  };
}
// In ticks of a second the run ends where its last event has lasted, not up to five seconds later.
const inSeconds = cut(round);
const ambient = 284.15;
const quart = 0.946352946e-3;
// Where air or slip is, the default steps are coarser than the tolerances below: a slip is a percent off, a burn seconds.
const steps = { fine: 0.005, finer: 0.001 };

interface Setup {
  readonly unit: Unit;
  /** The trips of each day, Monday first. */
  readonly days: readonly (readonly Trip[])[];
  readonly opens?: number;
  readonly fillShort?: number;
  /** The air of the place [K], where the unit is not in that of the other tests. */
  readonly air?: number;
  /** The program's own steps where left out. */
  readonly steps?: { readonly fine: number; readonly finer: number };
}

const still = (leak: Leak | null, build = shipped.unit.build): Unit => ({
  ...shipped.unit,
  build,
  leak,
  surroundings: { meanTemperature: ambient, yearlySwing: 0 },
});
const hole = (place: Leak["place"], diameter: number, height: number): Leak => ({
  ...shipped.unit.leak!,
  place,
  height,
  lineAbove: 0,
  columnHeight: 0,
  opening: { kind: "hole", diameter, wall: 1e-3 },
});
const column = (value: number, count: number) => Float64Array.from({ length: count }, () => value);
/** The round until `seconds` have passed, to the end of a tick. */
function first(seconds: number, startsAt: number, of = round): Trip {
  let [count, t] = [0, 0];
  while (t < seconds) t += of.ticks.dt[count++]!;
  return { ...of, startsAt, ticks: { ...of.ticks, count } };
}
const lasting = (trip: Trip) => trip.ticks.dt.slice(0, trip.ticks.count).reduce((a, z) => a + z, 0);
/** Speeds one second apart on one grade. */
const plain = (speed: number[], grade: number, startsAt: number): Trip => ({
  ...round,
  startsAt,
  ticks: {
    count: speed.length,
    dt: column(1, speed.length),
    speed: Float64Array.from(speed),
    grade: column(grade, speed.length),
    lateral: column(0, speed.length),
  },
});

function both({ unit: given, days, opens = 0, fillShort = 0, air = ambient, steps }: Setup) {
  const unit = { ...given, surroundings: { meanTemperature: air, yearlySwing: 0 } };
  const week: Week = { days: Array.from({ length: 7 }, (_, d) => days[d] ?? []) };
  const midnights: { mass: number; energy: number }[] = [];
  const plan = {
    unit,
    week,
    weekday: 0,
    dayOfYear: 63,
    topUps: [],
    span: days.length * 86400,
    fillShort,
    ...steps,
  };
  const history = simulate({ ...plan, opens: { after: opens } }, (_, state) => {
    midnights.push({ mass: state.mass, energy: state.energy });
    return true;
  });
  const trips = days.flatMap((day, d) =>
    day.map((trip) => ({ ...trip, startsAt: d * 86400 + trip.startsAt })),
  );
  const over = history.endedBy === "no drive" ? { until: history.end.clock } : { parkedUntil: plan.span };
  const mine = independentRun(unit, trips, { opens, ambient: air, fillShort, ...over });
  const at = (t: number) => mine.samples.find((s) => s.t >= t - 1e-6) ?? mine.samples.at(-1)!;
  const temperature = ({ mass, energy }: { mass: number; energy: number }) => {
    const q = (1.695 * mass) / Math.sqrt(unit.fluid.density15 / 999.0),
      l = (q * 1685) / 1.695 + unit.build.heat.metal;
    return 273.15 + (2 * energy) / (l + Math.sqrt(l * l + 4 * q * energy));
  };
  return {
    history,
    mine,
    at,
    midnights: (history.endedBy === "no drive" ? [] : midnights).map((s) => ({
      mass: s.mass,
      temperature: temperature(s),
    })),
  };
}

const within = (what: string, got: number, wanted: number, by: number) =>
  expect(Math.abs(got - wanted), `${what}: program ${got}, equations ${wanted}`).toBeLessThanOrEqual(by);
const eventOf = (history: History, name: string, clutch?: string) =>
  history.events.find((e) => e.name === name && (clutch === undefined || e.clutch === clutch))?.clock;
const pairs: readonly (readonly [string, string])[] = [
  ["level below the low mark", "levelLow"],
  ["pan overfull", "overfull"],
  ["first gulp of air", "firstGulp"],
  ["first flare", "firstFlare"],
  ["cooler flow below half", "coolerHalf"],
  ["lock-up slipping", "lockupSlip"],
  ["line pressure below demand", "pressureLow"],
  ["first sustained slip", "firstSlip"],
  ["fluid too hot", "tooHot"],
  ["vehicle falls behind", "fallsBehind"],
  ["no drive", "noDrive"],
];

function compareAll({ history, mine, at, midnights }: ReturnType<typeof both>) {
  for (const row of history.trips)
    within(`lost by ${row.clock}`, row.lost, at(row.clock).lost, 1e-3 * at(row.clock).lost);
  midnights.forEach((s, d) => {
    const wanted = at((d + 1) * 86400);
    within(`temperature at midnight ${d + 1}`, s.temperature, wanted.temperature, 0.5);
    within(
      `mass at midnight ${d + 1}`,
      wanted.mass + wanted.lost - s.mass,
      wanted.lost,
      1e-3 * wanted.lost + 1e-9,
    );
  });
  for (const about of history.closeUps)
    for (const look of about.looks) {
      if (look.clock <= mine.samples.at(-1)!.t)
        within(`temperature at ${look.clock}`, look.temperature, at(look.clock).temperature, 0.5);
    }
  for (const [name, key] of pairs) {
    const got = eventOf(history, name),
      wanted = mine.events[key];
    if (got !== undefined || wanted !== undefined) within(name, got ?? NaN, wanted ?? NaN, 2);
  }
  for (const { name } of history.clutches)
    for (const D of [0.1, 0.5, 1]) {
      const got = eventOf(history, `damage ${D}`, name),
        wanted = mine.events[`damage ${D} ${name}`];
      if (got !== undefined || wanted !== undefined)
        within(`damage ${D} of the ${name}`, got ?? NaN, wanted ?? NaN, 2);
    }
  const heat = [...mine.slipEnergy.slice(0, -1), ...mine.shiftEnergy].reduce((sum, q) => sum + q, 0);
  history.clutches.forEach((k, n) => {
    within(
      `slip energy of the ${k.name}`,
      k.slipEnergy,
      mine.slipEnergy[n],
      Math.max(0.01 * mine.slipEnergy[n], 1e-3 * heat),
    );
    within(
      `shift energy of the ${k.name}`,
      k.shiftEnergy,
      mine.shiftEnergy[n],
      Math.max(0.01 * mine.shiftEnergy[n], 1e-3 * heat),
    );
  });
}
const up = (by: number, to: number) =>
  Array.from({ length: Math.ceil(to / by) }, (_, n) => Math.min(to, (n + 1) * by));

describe("program and equations agree", () => {
  test("a sound unit warms up, stopped after four times", () => {
    const days = [200, 600, 1200, 1800].map((n) => [first(n, 86370 - lasting(first(n, 0)))]);
    compareAll(both({ unit: still(null), days }));
  });
  test("a pan leak over two rounds and a night", () => {
    compareAll(
      both({ unit: still(hole("pan", 0.4e-3, 0.01)), days: [[first(300, 27000)], [first(300, 27000)]] }),
    );
  });
  test("a line leak over two rounds and a night with a column above the hole", () => {
    const leak = { ...hole("supply-line", 0.4e-3, 0.03), lineAbove: 0.15e-3, columnHeight: 0.2 };
    compareAll(both({ unit: still(leak), days: [[first(300, 27000)], [first(300, 27000)]] }));
  });
  test.each<[string, Leak]>([
    [
      "a pit in the return line, widening in the night too",
      {
        ...hole("return-line", 0, 0.03),
        opening: {
          kind: "pit",
          diameter: 0.5e-3,
          after: 86400,
          exponent: 0.523,
          wall: 0.7e-3,
          bore: 0.55e-3,
        },
      },
    ],
    [
      "a round pit in the return line, its mouth cut by the wall",
      {
        ...hole("return-line", 0, 0.03),
        opening: {
          kind: "pit",
          diameter: 0.5e-3,
          after: 86400,
          exponent: 0.523,
          wall: 0.7e-3,
          bore: 0.55e-3,
          aspect: 1.2,
        },
      },
    ],
    [
      "a supply line rubbed through",
      {
        ...hole("supply-line", 0, 0.03),
        opening: {
          kind: "rub",
          tubeRadius: 4e-3,
          wall: 0.9e-3,
          contact: 1.5e-3,
          depthInHundredHours: 0.3e-3,
        },
      },
    ],
    [
      "a gap in the pan's rail, wetted in turns and on grades",
      {
        ...hole("pan-seam", 0, 0.056),
        x: 0.02,
        y: 0.01,
        opening: { kind: "slot", length: 20e-3, gap: 0.4e-3, depth: 5e-3 },
      },
    ],
    [
      "a fitting whose seal creeps within the hour",
      {
        ...hole("supply-line", 0, 0.03),
        lineAbove: 0.1e-3,
        columnHeight: 0.15,
        opening: {
          kind: "seal",
          diameter: 13e-3,
          length: 2.4e-3,
          eccentricity: 0.5,
          clearance: 20e-6,
          finalClearance: 60e-6,
          creepTime: 600,
        },
      },
    ],
    [
      "a crack on its way to parting, held open by pressure and bending",
      {
        ...hole("supply-line", 0, 0.03),
        lineAbove: 0.1e-3,
        columnHeight: 0.15,
        opening: {
          kind: "crack",
          halfLength: 2e-3,
          partsAt: 7e-3,
          partsAfter: 700,
          parisExponent: 3,
          wall: 0.9e-3,
          tubeRadius: 4.55e-3,
          modulus: 69e9,
          poisson: 0.33,
          bendingStress: 60e6,
          restGap: 20e-6,
        },
      },
    ],
    [
      "past the front seal, which the converter feeds",
      {
        ...hole("shaft-seal", 0, 0.03),
        fedBy: "converter-outlet",
        opening: {
          kind: "seal",
          diameter: 45e-3,
          length: 1e-3,
          eccentricity: 1,
          clearance: 12e-6,
          finalClearance: 25e-6,
          creepTime: 3600,
        },
      },
    ],
    [
      "past the output seal, which lubrication feeds",
      {
        ...hole("shaft-seal", 0, 0.02),
        fedBy: "lubrication",
        opening: { kind: "slot", length: 12e-3, gap: 0.1e-3, depth: 1e-3 },
      },
    ],
  ])("%s", (_, leak) => {
    // No drain-back: what stands in the pan at night is what a drive finds, and rail and seals are not under it.
    const holdUp = { ...shipped.unit.build.holdUp, converterDrains: 0, passagesDrain: 0 };
    // What a swing wets of the rail is two parts in a thousand off at the default steps.
    const more = leak.place === "pan-seam" ? { steps } : {};
    const run = both({
      ...more,
      unit: still(leak, { ...shipped.unit.build, holdUp }),
      days: [[first(300, 27000)], [first(300, 27000)]],
    });
    expect(run.mine.samples.at(-1)!.lost).toBeGreaterThan(5e-4);
    compareAll(run);
  });
  test("the taxi in its rank and on a fare, past a shaft's seal and through a pit", () => {
    const taxi = readCase(caseData(join(import.meta.dirname, "../../reference-data/cases/taxi-pit.json")));
    const shift = taxi.week.days[0]![0]!;
    const pit = {
      kind: "pit",
      diameter: 0.5e-3,
      after: 86400,
      exponent: 0.523,
      wall: 0.7e-3,
      bore: 6e-3,
    } as const;
    const leaks: Leak[] = [
      { ...hole("shaft-seal", 0.4e-3, 0.03), fedBy: "converter-outlet" },
      { ...hole("shaft-seal", 0.4e-3, 0.03), fedBy: "lubrication" },
      { ...hole("supply-line", 0.4e-3, 0.01), opening: pit },
    ];
    for (const leak of leaks) {
      const unit = { ...taxi.unit, leak, surroundings: { meanTemperature: ambient, yearlySwing: 0 } };
      compareAll(both({ unit, days: [[first(240, 27000, shift)], [first(200, 27000, shift)]] }));
    }
  }, 120_000);
  test("a clutch of half its area slips in good fluid", () => {
    const clutches = shipped.unit.build.clutches.map((k, n) =>
      n === 1 ? { ...k, pistonArea: 0.4 * k.pistonArea, spring: 0.4 * k.spring } : k,
    );
    const build = { ...shipped.unit.build, clutches, ratedTurbineTorque: 150 };
    const speed = [0, 0, 0, ...up(1, 16), ...column(16, 30), ...up(1, 16).map((v) => 16 - v), 0];
    compareAll(both({ unit: still(null, build), days: [[plain(speed, 0.03, 27000)]], steps }));
  });
  test("a 3 mm hole in the supply line empties the unit until it burns", () => {
    const opens = 27002 + lasting(first(600, 0, inSeconds)),
      trip = first(800, 27000, inSeconds);
    compareAll(both({ unit: still(hole("supply-line", 3e-3, 0.09)), days: [[trip]], opens, steps }));
  }, 120_000);
  test("at -40 degC fluid creeps through the clutch circuit, the line sags at first, and the unit drives", () => {
    const run = both({ unit: still(null), days: [[first(300, 27000)]], air: 233.15, steps });
    expect(run.mine.events["firstSlip"]).toBeUndefined();
    compareAll(run);
  });
  test("5 litres too many stand over the pan's top", () => {
    const run = both({ unit: still(null), days: [[first(250, 27000)]], fillShort: -5e-3 });
    expect(run.mine.events["overfull"]).toBeGreaterThan(0);
    compareAll(run);
  });
  test("2.5 quarts short: gulps on the round", () => {
    compareAll(both({ unit: still(null), days: [[first(250, 27000)]], fillShort: 2.5 * quart, steps }));
  });
});
