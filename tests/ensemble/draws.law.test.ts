// Draws: of what, within what, the same for a seed, the first ones always the same.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { members, variable } from "../../src/ensemble/members.ts";
import { fullDepth } from "../../src/ensemble/filled.ts";
import { scrambledHalton } from "../../src/ensemble/sequence.ts";
import { uncertain, valueAt, withRanges } from "../../src/ensemble/uncertain.ts";
import { caseData } from "../../src/inputs/files.ts";
import { caseFile, faultsOf } from "../inputs/shipped.ts";
import { few, quickLeak } from "./van.ts";

const demo = caseData(caseFile("demo"));

describe("what is uncertain", () => {
  const all = uncertain(demo);
  it("is every number with a range, in SI, with who says so", () => {
    expect(all.length).toBeGreaterThan(80);
    expect(all.find(({ path }) => path === "build.pump.slip")).toMatchObject({
      unit: "",
      value: 5e-8,
      low: 2e-8,
      high: 2e-7,
      logarithmic: false, // a decade, no more
      origin: { kind: "assumed" },
    });
    expect(all.find(({ path }) => path === "build.damage.charFactor")?.logarithmic).toBe(true);
    expect(all.find(({ path }) => path === "build.fill")).toMatchObject({
      unit: "m^3",
      low: 0.0095,
      high: 0.012,
    });
    expect(all.find(({ path }) => path === "leak.finalDrops")?.unit).toBe("drops/min");
    for (const { low, value, high } of all) expect(low <= value && value <= high && low < high).toBe(true);
  });

  it("can be added to, narrowed, taken away and limited to a part", () => {
    const ranges = {
      "build.pump.dissolved": [0.4, 0.6],
      "build.fill": null,
      "build.inlet.bore": ["20 mm", "24 mm"],
    } as const;
    const changed = uncertain(demo, {
      ranges,
      only: ["build.pump", "build.fill", "build.inlet"].slice(0, 1),
    });
    expect(changed.map(({ path }) => path)).toEqual(
      all.map(({ path }) => path).filter((path) => path.startsWith("build.pump.")),
    );
    expect(changed.find(({ path }) => path === "build.pump.dissolved")).toMatchObject({
      low: 0.4,
      high: 0.6,
    });
    const paths = uncertain(demo, { ranges }).map(({ path }) => path);
    expect(paths).toContain("build.inlet.bore");
    expect(paths).not.toContain("build.fill");
  });

  it("is refused, all at once, where there is no number or the value lies outside", () => {
    const paths = (ranges: Record<string, readonly [unknown, unknown]>) =>
      faultsOf(() => uncertain(demo, { ranges })).map(({ path }) => path);
    expect(paths({ "build.pump": [0, 1], "build.nothing": [0, 1] })).toEqual(["build.pump", "build.nothing"]);
    expect(paths({ "build.pump.dissolved": [0.6, 0.8] })).toEqual(["build.pump.dissolved"]);
    expect(faultsOf(() => uncertain(demo, { only: ["weather"] }))[0]?.path).toBe("weather");
  });

  it("leaves the data as it was given", () => {
    const before = JSON.stringify(demo);
    withRanges(demo, { "build.pump.dissolved": null, "build.clutches[0].friction.base": [0.105, 0.115] });
    expect(JSON.stringify(demo)).toBe(before);
  });
});

describe("a share of a range", () => {
  const input = { path: "", unit: "", value: 1, origin: null, whole: false, logarithmic: false };
  it("stays within it, grows with the share, and is a whole number where only those are possible", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-9, max: 1e9, noNaN: true }),
        fc.double({ min: 1.001, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1 - 2 ** -53, noNaN: true }),
        fc.boolean(),
        (low, ratio, u, logarithmic) => {
          const range = { ...input, low, high: low * ratio, logarithmic };
          const value = valueAt(range, u);
          expect(value >= range.low && value <= range.high).toBe(true);
          expect(valueAt(range, u / 2)).toBeLessThanOrEqual(value);
        },
      ),
    );
    const faces = { ...input, low: 6, high: 8, whole: true };
    expect([0, 0.34, 0.67, 1 - 2 ** -53].map((u) => valueAt(faces, u))).toEqual([6, 7, 8, 8]);
    expect(valueAt({ ...input, low: 0.1, high: 10, logarithmic: true }, 0.5)).toBeCloseTo(1, 12);
  });
});

describe("the sequence", () => {
  it("puts one of every p points into each p-th of coordinate p, and stays below one", () => {
    const next = scrambledHalton(6, 7);
    const point = new Float64Array(6);
    const found = Array.from({ length: 13 * 11 * 7 }, (_, i) => (next(i, point), [...point]));
    [2, 3, 5, 7, 11, 13].forEach((prime, j) => {
      for (let from = 0; from + prime <= found.length; from += prime) {
        const parts = found
          .slice(from, from + prime)
          .map((coordinates) => Math.floor(coordinates[j]! * prime));
        expect([...parts].sort((a, b) => a - b)).toEqual(Array.from({ length: prime }, (_, k) => k));
      }
    });
    expect(Math.max(...found.flat())).toBeLessThan(1);
  });

  it("has other points for another seed, and the same for more dimensions", () => {
    const at = (dimensions: number, seed: number) => {
      const point = new Float64Array(dimensions);
      scrambledHalton(dimensions, seed)(17, point);
      return [...point];
    };
    expect(at(40, 3).slice(0, 5)).toEqual(at(5, 3));
    expect(at(5, 4)).not.toEqual(at(5, 3));
  });
});

describe("members", () => {
  it("are the same for a seed, and the first of many are the few", () => {
    const many = members(quickLeak, 16, 5, { only: few });
    expect(members(quickLeak, 16, 5, { only: few })).toEqual(many);
    expect(members(quickLeak, 6, 5, { only: few }).members).toEqual(many.members.slice(0, 6));
    expect(members(quickLeak, 6, 6, { only: few }).members).not.toEqual(many.members.slice(0, 6));
  });

  it("lie within the ranges and fill them", () => {
    const { inputs, members: drawn } = members(quickLeak, 25, 1, { only: few });
    inputs.forEach(({ low, high }, i) => {
      const values = drawn.map((member) => member.values[i]!);
      expect(Math.min(...values)).toBeGreaterThanOrEqual(low);
      expect(Math.max(...values)).toBeLessThanOrEqual(high);
      expect(Math.max(...values) - Math.min(...values)).toBeGreaterThan(0.9 * (high - low));
    });
  });

  it("stand at the level of the unit as written, whatever their parts hold; or get their litres when told so", () => {
    const only = ["build.fill", "build.holdUp", "build.sump.pan.free"];
    const level = variable(quickLeak, { only });
    const full = fullDepth(level.asWritten.unit);
    for (const { values } of members(quickLeak, 6, 2, { only }).members) {
      const { unit } = level.at(values)!;
      expect(fullDepth(unit)).toBeCloseTo(full, 4);
      expect(unit.build.fill).not.toBe(level.asWritten.unit.build.fill);
    }
    expect(level.inputs.map(({ path }) => path)).not.toContain("build.fill");
    const litres = members(quickLeak, 6, 2, { only, filledByVolume: true });
    expect(litres.inputs.map(({ path }) => path)).toContain("build.fill");
  });

  it("refuse a number of them that is none", () => {
    for (const n of [-1, 1.5, Number.NaN])
      expect(faultsOf(() => members(quickLeak, n, 1)).map(({ path }) => path)).toEqual(["members"]);
    expect(faultsOf(() => members(quickLeak, 1, -1)).map(({ path }) => path)).toEqual(["seed"]);
  });
});
