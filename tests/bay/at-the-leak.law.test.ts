// Drops are counted from the leak's own drip point, and a leak looks worse the more it runs.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atTheLeak } from "../../src/bay/at-the-leak.ts";
import { readCaseFile } from "../../src/inputs/files.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { surfaceTension } from "../../src/physics/fluid/surface-tension.ts";
import { dropVolume, flowFromDrops } from "../../src/physics/leak/drop.ts";
import { degC, hours, millilitres } from "../../src/units/literals.ts";
import { caseFile } from "../inputs/shipped.ts";

const units = ["slow-seep", "parting-crack", "pinhole"].map((name) => readCaseFile(caseFile(name)).unit);
const order = ["dry", "weep", "drip", "stream", "spray"];
const ages = fc.double({ min: 0, max: hours(500), noNaN: true });
const temperatures = fc.double({ min: degC(-30), max: degC(150), noNaN: true });
const flows = fc.double({ min: 0, max: 2e-4, noNaN: true });

describe.each(units)("the leak of $leak.opening.kind", (unit) => {
  it("drips as often as its flow makes drops of its own size", () => {
    const temperature = degC(85);
    const { density15 } = unit.fluid;
    const drop = dropVolume(
      unit.leak!.dripRadius,
      surfaceTension(temperature),
      density(density15, temperature),
    );
    const { drops, looks } = atTheLeak(unit, { age: hours(1), temperature, flow: flowFromDrops(40, drop) });
    expect(drops).toBeCloseTo(40, 9);
    expect(looks).toBe("drip");
  });

  it("is dry without flow, before it opens and when there is none", () => {
    const running = { age: 10, temperature: degC(85), flow: 0 };
    expect(atTheLeak(unit, running)).toEqual({ drops: 0, looks: "dry", outside: [] });
    expect(atTheLeak(unit, { ...running, age: -1, flow: 1e-6 }).looks).toBe("dry");
    expect(atTheLeak({ ...unit, leak: null }, { ...running, flow: 1e-6 })).toEqual({
      drops: 0,
      looks: "dry",
      outside: [],
    });
  });

  it("never looks better, nor drips less, with more flow", () => {
    fc.assert(
      fc.property(ages, temperatures, flows, flows, (age, temperature, one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        const [a, b] = [less, more].map((flow) => atTheLeak(unit, { age, temperature, flow }));
        expect(b!.drops).toBeGreaterThanOrEqual(a!.drops);
        expect(Number.isFinite(b!.drops)).toBe(true);
        expect(order.indexOf(b!.looks)).toBeGreaterThanOrEqual(order.indexOf(a!.looks));
      }),
    );
  });
});

it("weeps, drips, streams and sprays in that order as the same pinhole passes more", () => {
  const [, , pinhole] = units;
  const looks = [0.0001, 1, 2500, 40000].map(
    (perMinute) =>
      atTheLeak(pinhole!, { age: 0, temperature: degC(85), flow: millilitres(perMinute * 0.04) / 60 }).looks,
  );
  expect(looks).toEqual(["weep", "drip", "stream", "spray"]);
});

describe("laws that counting takes outside their range", () => {
  const [seep, , pinhole] = units;
  const told = (unit: typeof seep, celsius: number) =>
    atTheLeak(unit!, { age: hours(1), temperature: degC(celsius), flow: 1e-9 }).outside.join("\n");

  it("none at a tip of the measured widths in warm fluid", () => {
    expect(told(seep, 85)).toBe("");
  });

  it("a tip wider than drops were measured from", () => {
    expect(told(pinhole, 85)).toMatch(
      /^drop that falls from a wetted tip used at .* = 1\.2\d+ \(holds from 0\.3 to 1\.2\)$/,
    );
  });

  it("a frost: surface tension, and jets of thick fluid", () => {
    expect(told(seep, -10)).toMatch(/surface tension of lubricating oil used at temperature = 263\.1/);
    expect(told(seep, -10)).toMatch(
      /dripping to jetting used at Ohnesorge number = [\d.]+ \(holds from 0 to 0\.1\)/,
    );
  });
});
