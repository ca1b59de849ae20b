import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { dailyDriving } from "../../src/driving/pattern.ts";
import type { Evidence } from "../../src/lookback/evidence.ts";
import { miles, psi, quarts } from "../../src/units/literals.ts";
import { evidenceExamples, exampleText, topUpExample } from "../../src/inputs/visit-examples.ts";
import { evidenceSchema } from "../../src/inputs/visit-evidence-schema.ts";
import { referenceData } from "./shipped.ts";
import { faultsIn, itemRead, pathsIn, readWith } from "./visits.ts";

const HOUR = 3600;
const DAY = 86400;
const whole = 70.5 * DAY;

/** Faults of evidence, none where it is right. */
const failing = (evidence: readonly unknown[]) => {
  try {
    readWith({ evidence });
    return [];
  } catch {
    return faultsIn({ evidence });
  }
};

describe("moments on either clock", () => {
  const looked = (on: unknown) =>
    itemRead("looked", { kind: "looked", on, how: "walk round", seen: false }).at;

  it("dates count from the last full; only a day is its noon", () => {
    expect(looked("2024-08-15")).toBe(10.5 * DAY);
    expect(looked("2024-08-15 06:00")).toBe(10.25 * DAY);
  });
  it("odometer readings lie on the straight line between the two that are known", () => {
    expect(looked("61000 mi")).toBeCloseTo(whole / 2, 3);
    expect(looked("62000 mi")).toBeCloseTo(whole, 3);
  });
  it("so long and so far ago", () => {
    expect(looked("2 weeks ago")).toBe(whole - 14 * DAY);
    expect(looked("500 mi ago")).toBeCloseTo(0.75 * whole, 3);
  });
  it("yesterday is the day before the visit, today the visit's", () => {
    expect(looked("yesterday")).toBe(whole - DAY);
    expect(looked("Today")).toBe(whole);
  });
  it.each(["in autumn", "", 61000, null, "500 mi later", "3 weeks"])("%j is none", (on) =>
    expect(pathsIn({ evidence: [{ kind: "looked", on, how: "walk round", seen: true }] })).toEqual([
      "evidence[0].on",
    ]),
  );
});

describe("when something came", () => {
  const spot = (told: object) => itemRead("first spot", { kind: "first spot", ...told }).when;

  it("about a day spreads by the error, the given or five days", () => {
    const { from, to, error } = spot({ about: "2024-09-14", error: "3 days" });
    expect(0.5 * (from + to)).toBe(40.5 * DAY);
    expect(Math.hypot(error, (to - from) / Math.sqrt(12))).toBeCloseTo(3 * DAY, 3);
    const usual = spot({ about: "2024-09-14" });
    expect(Math.hypot(usual.error, (usual.to - usual.from) / Math.sqrt(12))).toBeCloseTo(5 * DAY, 3);
  });
  it("about an odometer reading in the middle is no closer than weeks of driving are alike, near the visit as close as it is read", () => {
    const spread = (told: object) => {
      const { from, to, error, of } = spot(told);
      expect(of).toBeCloseTo(miles(2000), 3);
      return Math.hypot(error, (to - from) / Math.sqrt(12)) / miles(1);
    };
    // A third of a week (2000 mi in 70.5 days: 198.6 mi a week) times the root of a quarter of 10.07 weeks less the day of the trips: 66.2·√(2.518 - 0.143) = 102 mi.
    expect(spread({ about: "61000 mi" })).toBeCloseTo(102, 0);
    // Within the day nothing but the reading counts; so far ago from memory adds 15 %: √(1 + 1.5²).
    expect(spread({ about: "61990 mi" })).toBeCloseTo(1, 2);
    expect(spread({ about: "10 mi ago" })).toBeCloseTo(1.8, 1);
    // An error of time is that of the miles driven in it: three days of 28.37 mi.
    expect(spread({ about: "61000 mi", error: "3 days" })).toBeCloseTo(85.1, 1);
  });
  it("who tells the time of day, or how many hours ago, knows it to an hour; an error that is given stands", () => {
    const visit = { date: "2024-10-14 20:00", odometer: "62000 mi" };
    const told = (more: object) => {
      const { evidence } = readWith({ visit, evidence: [{ kind: "first spot", ...more }] }).visit;
      const { when } = evidence[1] as Extract<Evidence, { kind: "first spot" }>;
      return {
        at: 0.5 * (when.from + when.to),
        spread: Math.hypot(when.error, (when.to - when.from) / Math.sqrt(12)),
      };
    };
    const clock = told({ about: "2024-10-14 17:45" });
    expect(clock.at).toBeCloseTo(70 * DAY + 17.75 * HOUR, 3);
    expect(clock.spread).toBeCloseTo(HOUR, 3);
    const ago = told({ about: "3 h ago" });
    expect(ago.at).toBeCloseTo(70 * DAY + 17 * HOUR, 3);
    expect(ago.spread).toBeCloseTo(HOUR, 3);
    expect(told({ about: "2024-10-14 17:45", error: "20 min" }).spread).toBeCloseTo(HOUR / 3, 3);
    const between = itemRead("first spot", {
      kind: "first spot",
      between: ["2024-10-01 12:00", "2024-10-01 17:00"],
    });
    expect(between.when.error).toBe(1800);
    // Only a day, whatever the visit: days from memory.
    expect(told({ about: "2024-10-12" }).spread).toBeCloseTo(5 * DAY, 3);
    expect(told({ about: "3 days ago" }).spread).toBeCloseTo(5 * DAY, 3);
  });
  it("between two odometer readings is told in their miles", () => {
    const { from, to, of } = spot({ between: ["61000 mi", "61500 mi"] });
    expect([from, to, of].map((metres) => metres! / miles(1))).toEqual(
      [1000, 1500, 2000].map((m) => expect.closeTo(m, 6) as number),
    );
  });
  it("between, before, after and not by then", () => {
    expect(spot({ between: ["2024-09-01", "61500 mi"] })).toMatchObject({
      from: 27.5 * DAY,
      to: expect.closeTo(0.75 * whole, 3) as number,
    });
    expect(spot({ before: "2024-09-14" })).toMatchObject({ from: -Infinity, to: 40.5 * DAY });
    expect(spot({ after: "2024-09-14" })).toMatchObject({ from: 40.5 * DAY, to: whole });
    expect(spot({ notSeenBy: "2024-09-14" })).toMatchObject({ from: 40.5 * DAY, to: Infinity });
  });
});

describe("items in the trade's words", () => {
  it("quarts missing and added, with an error from practice unless one is given", () => {
    const missing = itemRead("fluid missing", { kind: "fluid missing", volume: "3 qt", error: "0.25 qt" });
    expect(missing).toMatchObject({
      at: whole,
      volume: expect.closeTo(quarts(3), 12) as number,
      error: expect.closeTo(quarts(0.25), 12) as number,
    });
    const added = itemRead("fluid missing", { kind: "added until it ran", volume: "3 qt" });
    expect(added.error).toBeCloseTo(quarts(0.15), 12);
  });
  it("whose measure it was, of what was measured and of what was poured in", () => {
    const item = { volume: "3 qt", by: "the shop's jug" };
    expect(itemRead("fluid missing", { kind: "added until it ran", ...item }).by).toBe("the shop's jug");
    expect(itemRead("fluid drained", { kind: "fluid drained", ...item }).by).toBe("the shop's jug");
    expect(itemRead("fluid missing", { kind: "fluid missing", volume: "3 qt" }).by).toBeUndefined();
    const { visit, assumptions } = readWith({
      topUps: [
        { on: "2024-09-01", volume: "1 qt", by: "the neighbour" },
        { on: "2024-09-01", volume: "1 qt" },
      ],
    });
    expect(visit.added.map(({ by }) => by)).toEqual(["the neighbour", "who topped it up"]);
    expect(assumptions.map(({ path }) => path)).toContain("topUps[1].by");
  });
  it("what a drain does not reach is the build's own unless told", () => {
    const { stays, staysError } = itemRead("fluid drained", { kind: "fluid drained", volume: "4 qt" });
    expect(stays).toBeCloseTo(4.6e-3, 9);
    expect(staysError).toBeCloseTo(0.46e-3, 9);
    expect(pathsIn({ evidence: [{ kind: "fluid drained", volume: "10 L", stays: "6 L" }] })).toEqual([
      "evidence[0].volume",
    ]);
  });
  it("a dipstick in words, as a number, and dry", () => {
    const stick = (reads: unknown) => ({ kind: "dipstick", temperature: "180 degF", reads });
    expect(itemRead("dipstick", stick("below the low mark")).position).toBeLessThan(0);
    expect(itemRead("dipstick", stick(0.4))).toMatchObject({
      position: 0.4,
      temperature: expect.closeTo(355.37, 2) as number,
    });
    expect(itemRead("off the dipstick", stick("dry")).error).toBeGreaterThan(0);
  });
  it("drops, hot or parked, with the counter's own drop if it was caught", () => {
    const drops = { kind: "drops", count: 40, time: "1 min", engine: "off" };
    expect(itemRead("drops", drops)).toEqual({
      name: "evidence[0]",
      kind: "drops",
      at: whole,
      count: 40,
      time: 60,
      moment: "parked",
    });
    expect(itemRead("drops", { ...drops, engine: "idling hot", dropVolume: "45 uL" })).toMatchObject({
      moment: "idling hot",
      dropVolume: expect.closeTo(45e-9, 15) as number,
    });
    expect(
      pathsIn({
        evidence: [
          { ...drops, dropVolume: "2 mL" },
          { ...drops, count: -1 },
        ],
      }),
    ).toEqual(["evidence[0].dropVolume", "evidence[1].count"]);
  });
  it("symptoms are events", () => {
    const felt = (what: string) =>
      itemRead("first symptom", { kind: "first symptom", what, about: "2024-09-14" }).symptom;
    expect(["slow into gear", "slow into gear, hot", "flare", "slips", "does not move"].map(felt)).toEqual([
      "slow engagement, cold",
      "slow engagement, hot",
      "first flare",
      "first sustained slip",
      "no drive",
    ]);
    expect(itemRead("not felt", { kind: "not felt", what: "flare" })).toMatchObject({
      symptom: "first flare",
      until: whole,
    });
  });
  it("readings in the bay and of the controller", () => {
    expect(itemRead("line pressure", { kind: "line pressure", pressure: "65 psi" })).toMatchObject({
      pressure: expect.closeTo(psi(65), 3) as number,
      error: expect.closeTo(psi(65) * 0.03, 0) as number,
    });
    expect(itemRead("cooler flow", { kind: "cooler flow", flow: "4 L/min" }).error).toBeCloseTo(
      0.28e-3 / 60,
      9,
    );
    expect(itemRead("learned trim", { kind: "learned trim", pressure: "50 kPa" })).toMatchObject({
      pressure: 50e3,
      error: 10e3,
    });
    expect(
      itemRead("learned fill", { kind: "learned fill", clutch: "direct clutch", time: "60 ms" }),
    ).toMatchObject({ clutch: "direct clutch", time: 0.06 });
    expect(itemRead("sediment", { kind: "sediment", amount: "dark flakes" }).amount).toBe("dark flakes");
    expect(itemRead("fluid in the coolant", { kind: "fluid in the coolant", found: false }).found).toBe(
      false,
    );
  });
  it("a teardown, lining and tint within what can be", () => {
    const opened = { kind: "teardown", clutch: "direct clutch", burnt: true };
    expect(itemRead("teardown", { ...opened, lining: "0.3 mm", steelTint: "full blue" })).toMatchObject({
      lining: 3e-4,
      steelTint: "full blue",
    });
    expect(pathsIn({ evidence: [{ ...opened, lining: "3 mm", steelTint: "pink" }] })).toEqual([
      "evidence[0].lining",
      "evidence[0].steelTint",
    ]);
  });
  it("full again by a check, and nothing from a service without a look", () => {
    expect(
      itemRead("known full", { kind: "known full", on: "2024-09-01", checked: "overflow plug" }).error,
    ).toBeCloseTo(quarts(0.15), 9);
    expect(
      readWith({ evidence: [{ kind: "known full", on: "2024-09-01", checked: "service without a look" }] })
        .visit.evidence,
    ).toHaveLength(1);
  });
});

describe("the written guide to the items", () => {
  const about = readFileSync(join(referenceData, "visits/about.md"), "utf8");
  const kinds = evidenceSchema.options.map(({ entries }) => ({
    kind: entries.kind.literal,
    fields: Object.keys(entries).filter((field) => field !== "kind"),
  }));
  const rowOf = (kind: string) => about.split("\n").find((line) => line.startsWith(`| \`${kind}\` |`)) ?? "";

  it.each(kinds)(
    "$kind: has a row with every field, and its example is read as it stands there",
    ({ kind, fields }) => {
      const row = rowOf(kind);
      for (const field of fields) expect(row, field).toContain(`\`${field}\``);
      const example = /\| `(\{.*\})` \|$/.exec(row)?.[1] ?? "";
      expect(example).toBe(exampleText(evidenceExamples[kind]));
      const item = JSON.parse(example) as { kind: string };
      expect(item.kind).toBe(kind);
      expect(() => readWith({ evidence: [item] })).not.toThrow();
    },
  );

  it.each(kinds)("$kind: whoever writes it otherwise is shown that same example", ({ kind }) => {
    const faults = faultsIn({ evidence: [{ ...evidenceExamples[kind], colour: "red" }] });
    expect(faults).toMatchObject([
      { path: "evidence[0].colour", example: exampleText(evidenceExamples[kind]) },
    ]);
    // With nothing but its kind, every fault names an example that can be typed as it stands.
    for (const { path, example } of failing([{ kind }])) expect(example, path).not.toBe("");
  });

  it("what was added stands there too, is read, and is shown to whoever writes it otherwise", () => {
    expect(about).toContain(`\`${exampleText(topUpExample)}\``);
    expect(() => readWith({ topUps: [topUpExample] })).not.toThrow();
    expect(faultsIn({ topUps: [{ ...topUpExample, colour: "red" }] })).toMatchObject([
      { path: "topUps[0].colour", example: exampleText(topUpExample) },
    ]);
  });

  it("a drain and refill is read as it stands there: what went in less what came out", () => {
    const section = about.slice(about.indexOf("## A drain and refill"));
    const items = [...section.matchAll(/`(\{.*?\})`/g)].map(([, item]) => JSON.parse(item!) as object);
    const [missing, topUp, full] = items;
    expect(items).toHaveLength(3);
    const read = readWith({ topUps: [topUp], evidence: [missing, full] }).visit;
    // 6.2 qt in, 4 qt out, each right to 0.2 qt.
    expect(read.evidence[1]).toMatchObject({
      kind: "fluid missing",
      volume: expect.closeTo(quarts(6.2 - 4), 9) as number,
      error: expect.closeTo(quarts(Math.hypot(0.2, 0.2)), 5) as number,
    });
    expect(read.added).toHaveLength(1);
    expect(read.added[0]!.volume).toBeCloseTo(quarts(6.2 - 4), 9);
    // The level that was right is that after the top-up, of the same moment.
    expect(read.evidence[2]).toMatchObject({ kind: "known full", at: read.added[0]!.at });
  });

  it.each([
    ["a kind that is none", { kind: "smell" }],
    ["no kind", { volume: "3 qt" }],
    ["no object", "3 qt missing"],
  ])("%s: shown an item all the same", (_, item) => {
    const [fault] = failing([item]);
    expect(fault!.example).toBe(exampleText(evidenceExamples["fluid missing"]));
  });

  it("a word that is none of the kind's own is answered with those that are, and an item", () => {
    const [fault] = faultsIn({ evidence: [{ kind: "looked", how: "squinted", seen: false }] });
    expect(fault!.path).toBe("evidence[0].how");
    for (const word of ["walk round", "look underneath", "shield taken off"])
      expect(fault!.expected).toContain(word);
    expect(fault!.example).toBe(exampleText(evidenceExamples.looked));
  });
});

describe("records of the on-board computer", () => {
  const code = (item: object) => itemRead("first symptom", { kind: "stored slip code", ...item });

  it("a slip code so far ago is about that moment", () => {
    const { symptom, when } = code({ distanceSinceStored: "500 mi" });
    expect(symptom).toBe("first sustained slip");
    expect(0.5 * (when.from + when.to)).toBeCloseTo(miles(1500), 3);
    expect(when.of).toBeCloseTo(miles(2000), 3);
    expect(code({ storedAt: "61500 mi" }).when).toEqual(when);
    const { from, to } = code({ storedAt: "2024-09-14" }).when;
    expect(0.5 * (from + to)).toBe(40.5 * DAY);
  });
  it("one since the records were cleared lies between that and the visit", () => {
    expect(code({ distanceSinceCleared: "500 mi" }).when).toMatchObject({
      from: expect.closeTo(miles(1500), 3) as number,
      to: expect.closeTo(miles(2000), 3) as number,
      of: expect.closeTo(miles(2000), 3) as number,
    });
  });
  it("warm-ups are counted by the trips of the week", () => {
    const { when } = code({ warmUpsSinceCleared: 20 });
    const trips = dailyDriving(readWith({}).visit.week).trips;
    expect(when.from).toBeCloseTo(whole - (20 / trips) * DAY, 3);
  });
  it("cleared and no code since: it has not slipped", () => {
    const item = { kind: "codes cleared", distance: "500 mi" };
    expect(itemRead("not felt", { ...item, slipCodeSince: false })).toMatchObject({
      symptom: "first sustained slip",
      until: whole,
    });
    expect(itemRead("first symptom", { ...item, slipCodeSince: true }).when.to).toBeCloseTo(miles(2000), 3);
  });
  it("neither or both of distance and warm-ups, and more than was driven", () => {
    expect(pathsIn({ evidence: [{ kind: "codes cleared", slipCodeSince: true }] })).toEqual(["evidence[0]"]);
    expect(
      pathsIn({ evidence: [{ kind: "codes cleared", distance: "1 mi", warmUps: 3, slipCodeSince: true }] }),
    ).toEqual(["evidence[0]"]);
    expect(pathsIn({ evidence: [{ kind: "stored slip code", distanceSinceStored: "9000 mi" }] })).toEqual([
      "evidence[0].distanceSinceStored",
    ]);
  });
});
