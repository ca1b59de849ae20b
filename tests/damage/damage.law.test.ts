import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  arrheniusRate,
  doublingFactor,
  energyOfDoubling,
  rampEquivalent,
} from "../../src/physics/damage/arrhenius.ts";
import { capacityLeft, damageIndex } from "../../src/physics/damage/damage-index.ts";
import { glazeRate, scissionRate, scissions } from "../../src/physics/damage/glaze.ts";
import { iecAgeing, ieeeAgeing, ieeeLife } from "../../src/physics/damage/insulation.ts";
import { minerSum } from "../../src/physics/damage/miner.ts";
import { charAfter, charRate, charYield, halfLife } from "../../src/physics/damage/pyrolysis.ts";
import { hollomonJaffe, temperingTime } from "../../src/physics/damage/tempering.ts";
import {
  listTemperature,
  temperatureOfTint,
  temperColour,
  tintNumber,
  tints,
  tintTimeRatio,
} from "../../src/physics/damage/tint.ts";
import { archardDepth, energyToWear, wearDepth, wearPerEnergy } from "../../src/physics/damage/wear.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("rates", () => {
  it("rise with temperature, are nothing near absolute zero, and stay finite", () =>
    fc.assert(
      fc.property(number(0.001, 3000), (T) => {
        for (const rate of [charRate, glazeRate, scissionRate, ieeeAgeing]) {
          expect(Number.isFinite(rate(T))).toBe(true);
          expect(rate(T * 1.001)).toBeGreaterThanOrEqual(rate(T));
        }
        expect(Number.isFinite(ieeeLife(T))).toBe(true);
      }),
    ));

  it("double over the step for which the activation energy was found, and only there", () =>
    fc.assert(
      fc.property(number(280, 600), number(2, 30), (T, step) => {
        const E = energyOfDoubling(T, step);
        expect(arrheniusRate(1, E, T + step) / arrheniusRate(1, E, T)).toBeCloseTo(2, 8);
        expect(arrheniusRate(1, E, T + 2 * step) / arrheniusRate(1, E, T)).toBeLessThan(
          doublingFactor(2 * step, step),
        );
      }),
    ));

  it("sum along a ramp to what small steps sum to", () => {
    let sum = 0;
    for (let i = 0; i < 1e5; i++) sum += doublingFactor((i + 0.5) * 1e-3, 10) * 1e-3;
    expect(rampEquivalent(100, 1, 10) / sum).toBeCloseTo(1, 7);
    expect(rampEquivalent(0, 1, 10)).toBe(0);
  });

  it("char in seconds where glaze takes hours, and leave more char when slow", () => {
    expect(halfLife(charRate(623))).toBeLessThan(10);
    expect(1 / glazeRate(473)).toBeGreaterThan(3600);
    expect(charYield(523)).toBeGreaterThan(charYield(623));
    expect(charYield(523)).toBeLessThan(0.35);
    expect(scissions(1000, 200)).toBeCloseTo(0.004, 12);
    expect(iecAgeing(98 + 273.15)).toBe(1);
  });

  it("refuse zero kelvin", () => {
    for (const rate of [charRate, glazeRate, ieeeLife, ieeeAgeing, iecAgeing])
      for (const T of [0, -1, NaN]) expect(() => rate(T)).toThrow("temperature");
  });
});

describe("damage", () => {
  const share = number(0, 1);

  it("chars towards 1 and never past, in one step as in two", () =>
    fc.assert(
      fc.property(share, number(0, 5), number(0, 100), share, (char, rate, time, part) => {
        const once = charAfter(char, rate, time);
        expect(once).toBeGreaterThanOrEqual(char);
        expect(once).toBeLessThanOrEqual(1);
        expect(charAfter(charAfter(char, rate, time * part), rate, time * (1 - part))).toBeCloseTo(once, 9);
      }),
    ));

  it("wears by energy as by load and distance when friction links them", () =>
    fc.assert(
      fc.property(
        number(1e-16, 1e-13),
        number(0.05, 0.2),
        number(1e4, 2e6),
        number(1e-3, 1e6),
        (k, mu, p, s) => {
          const area = 0.05;
          const energy = mu * p * area * s;
          const depth = archardDepth(k, p, s);
          expect(wearDepth(energy, area, wearPerEnergy(k, mu)) / depth).toBeCloseTo(1, 9);
          expect((energyToWear(depth, wearPerEnergy(k, mu)) * area) / energy).toBeCloseTo(1, 9);
        },
      ),
    ));

  it("adds up in any order, and twice the time is twice the damage", () =>
    fc.assert(
      fc.property(fc.array(fc.record({ time: number(0, 100), life: number(1, 1e4) })), (stretches) => {
        const D = minerSum(stretches);
        expect(minerSum([...stretches].reverse())).toBeCloseTo(D, 9);
        expect(minerSum(stretches.map(({ time, life }) => ({ time: 2 * time, life })))).toBeCloseTo(2 * D, 9);
        expect(D).toBeGreaterThanOrEqual(0);
      }),
    ));

  it("leaves capacity between all and nothing, less with every kind of harm", () =>
    fc.assert(
      fc.property(share, share, number(0, 1e-3), share, (glaze, char, wear, loss) => {
        const left = capacityLeft(glaze, char, wear, 5e-4, loss);
        expect(left).toBeGreaterThanOrEqual(0);
        expect(left).toBeLessThanOrEqual(1);
        expect(capacityLeft(glaze / 2, char / 2, wear / 2, 5e-4, loss)).toBeGreaterThanOrEqual(left);
        expect(capacityLeft(0, 0, 0, 5e-4, loss)).toBe(1);
        expect(capacityLeft(glaze, 1, wear, 5e-4, loss)).toBe(0);
        expect(capacityLeft(glaze, char, 5e-4, 5e-4, loss)).toBe(0);
      }),
    ));

  it("has an index of 0 as new and 1 when rated torque is just not carried any more", () =>
    fc.assert(
      fc.property(number(1.01, 5), share, (margin, left) => {
        expect(damageIndex(1, margin)).toBe(0);
        expect(damageIndex(1 / margin, margin)).toBeCloseTo(1, 12);
        expect(damageIndex(left, margin)).toBeGreaterThanOrEqual(
          damageIndex(Math.min(1, left + 0.1), margin),
        );
        expect(damageIndex(left, margin) > 1 + 1e-9).toBe(left * margin < 1 - 1e-9 * (margin - 1) - 1e-15);
      }),
    ));

  it("cannot reach 1 by glaze alone when a good margin is left", () => {
    expect(damageIndex(capacityLeft(1, 0, 0, 5e-4, 0.4), 2)).toBeLessThan(1);
  });

  it("refuses what no lining has", () => {
    expect(() => capacityLeft(0, 0, 0, 0, 0.4)).toThrow("lining");
    expect(() => capacityLeft(NaN, 0, 0, 5e-4, 0.4)).toThrow("glaze");
    expect(() => damageIndex(1, 1)).toThrow("margin");
    expect(() => damageIndex(1.1, 2)).toThrow("left");
    expect(() => wearDepth(1, 0, 1e-14)).toThrow("area");
    expect(() => minerSum([{ time: 1, life: 0 }])).toThrow("life");
    expect(() => charAfter(1.5, 1, 1)).toThrow("char");
  });
});

describe("heat tint", () => {
  it("never goes back in the row of colours with heat or time", () =>
    fc.assert(
      fc.property(
        number(280, 700),
        number(1, 1e6),
        number(0, 100),
        number(1, 1000),
        (T, seconds, warmer, longer) => {
          expect(tintNumber(T + warmer, seconds)).toBeGreaterThanOrEqual(tintNumber(T, seconds));
          expect(tintNumber(T, seconds * longer)).toBeGreaterThanOrEqual(tintNumber(T, seconds));
        },
      ),
    ));

  it("gives back, both ways, the colour of each temperature", () => {
    for (const { name, temperature } of tints) {
      expect(temperColour(temperature + 1e-6, 300)).toBe(name);
      const span = temperatureOfTint(name, { shortest: 300, longest: 300 });
      expect(span?.likely).toBeCloseTo(temperature, 9);
      expect((span?.high ?? 0) - (span?.low ?? 0)).toBeCloseTo(30, 9);
    }
    expect(temperatureOfTint("pink", { shortest: 1, longest: 1 })).toBeUndefined();
  });

  it("tells heat within tens of kelvin but says next to nothing of time", () => {
    const span = temperatureOfTint("full blue", { shortest: 10, longest: 36000 });
    expect((span?.high ?? 0) - (span?.low ?? 0)).toBeLessThan(220);
    expect(tintTimeRatio(573.15, 523.15, 2)).toBeLessThan(2);
    expect(tintTimeRatio(573.15, 523.15, 20)).toBeGreaterThan(300);
    // Held for hours a straw temperature turns brown or beyond, as shop lore says of 400 degF.
    expect(tintNumber(477.6, 100 * 3600)).toBeGreaterThan(tintNumber(477.6, 300));
    expect(listTemperature(500, 300)).toBe(500);
  });

  it("lies within 20 K of every row of the five colour lists, none skipped, and in their order", () => {
    const rows = readFileSync(
      join(import.meta.dirname, "../../reference-data/temper-colours/lists.csv"),
      "utf8",
    )
      .trim()
      .split("\n")
      .slice(1)
      .map((row) => row.split(","));
    expect(rows).toHaveLength(34);
    const last = new Map<string, number>();
    for (const [list = "", , unit, value, name] of rows) {
      const celsius = unit === "degF" ? (Number(value) - 32) / 1.8 : Number(value);
      const n = tints.findIndex((tint) => tint.name === name);
      const ours = (tints[n]?.temperature ?? NaN) - 273.15;
      expect(Math.abs(ours - celsius), `${list} ${name}`).toBeLessThanOrEqual(20);
      expect(n).toBeGreaterThan(last.get(list) ?? -1);
      last.set(list, n);
    }
  });
});

describe("tempering", () => {
  it("is the same after a longer time at less heat", () =>
    fc.assert(
      fc.property(number(450, 900), number(1, 1e6), number(450, 900), (T, seconds, other) => {
        const P = hollomonJaffe(T, seconds);
        const time = temperingTime(other, P);
        if (time !== undefined && time > 0) expect(hollomonJaffe(other, time) / P).toBeCloseTo(1, 9);
        expect(hollomonJaffe(T + 1, seconds)).toBeGreaterThan(P - 1e-9);
      }),
    ));

  it("gives no answer beyond counting", () => {
    expect(temperingTime(10, 12000)).toBeUndefined();
    expect(() => hollomonJaffe(500, 0)).toThrow("seconds");
  });
});
