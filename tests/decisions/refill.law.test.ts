// What goes into an emptied unit: the mass that is missing, whatever the temperature.
import { expect, test } from "vitest";
import { emptyings, refills } from "../../src/decisions/refill.ts";
import { inThePan, stoodFor } from "../../src/bay/ready.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { van } from "../emerge/van.ts";

const { build, fluid } = van;

test("mass is kept: what stays, which fills what holds it, and what goes in are a full unit, warm or cold", () => {
  const full = build.fill * density(fluid.density15, build.fillTemperature);
  const { converter, converterDrains, coolerAndLines, passages, passagesDrain } = build.holdUp;
  const stays = converter * (1 - converterDrains) + coolerAndLines + passages * (1 - passagesDrain);
  for (const temperature of [253.15, 293.15, 353.15]) {
    const rho = density(fluid.density15, temperature);
    for (const { poured, old } of refills(build, fluid, temperature))
      expect(poured * rho + old * full).toBeCloseTo(full, 9);
    expect(refills(build, fluid, temperature)[0]!.old * full).toBeCloseTo(stays * rho, 9);
  }
});

test("the pan alone takes what a full unit has in it after a night, to a fiftieth", () => {
  const night = stoodFor({ ...van, leak: null }, 0, 14 * 3600, 293.15);
  const [pan] = refills(build, fluid, 293.15);
  expect(Math.abs(pan!.poured / inThePan(night) - 1)).toBeLessThan(0.02);
});

test("each part that comes dry takes what it held, and a unit that was apart takes its whole fill", () => {
  const { converter, converterDrains, coolerAndLines, passages, passagesDrain } = build.holdUp;
  const all = refills(build, fluid, build.fillTemperature);
  expect(all.map(({ emptied }) => emptied)).toEqual([...emptyings]);
  const [pan, lines, apart, dry] = all.map(({ poured }) => poured);
  expect(lines! - pan!).toBeCloseTo(coolerAndLines, 12);
  expect(apart! - lines!).toBeCloseTo(converter * (1 - converterDrains), 12);
  expect(dry! - apart!).toBeCloseTo(passages * (1 - passagesDrain), 12);
  expect(dry).toBeCloseTo(build.fill, 12);
  expect(all.at(-1)!.old).toBe(0);
});

test("cold fluid takes less room: 80 K colder some 5 to 6 % less goes in", () => {
  const [hot, cold] = [353.15, 273.15].map(
    (temperature) => refills(build, fluid, temperature).at(-1)!.poured,
  );
  expect(cold! / hot!).toBeGreaterThan(0.94);
  expect(cold! / hot!).toBeLessThan(0.95);
});

test("a temperature that is none is refused", () => {
  expect(() => refills(build, fluid, 0)).toThrow(/temperature/);
});
