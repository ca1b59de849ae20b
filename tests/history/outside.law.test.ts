// A history tells which law of the leak's opening it left, and is silent about those that it kept to.
import { expect, test } from "vitest";
import { simulate } from "../../src/history/simulate.ts";
import type { LeakOpening } from "../../src/physics/build.ts";
import {
  celsius,
  daily,
  days,
  gap,
  hole,
  hours,
  leaking,
  plan,
  steelCrack,
  trace,
  van,
} from "../emerge/van.ts";

const week = daily(
  trace("still", [
    [0, 0],
    [120, 0],
  ]),
);
const told = (opening: LeakOpening) =>
  simulate(
    plan({ ...van, leak: leaking("supply-line", opening) }, week, celsius(20), { span: days(3) }),
  ).outside.join("\n");
const crack = (partsAt: number) => steelCrack(partsAt, hours(0.05));

// √(12(1 − 0.29²))^½ / √(4.55 × 0.9) × 6 mm = 5.4: past 5; 4 mm: 3.6.
test.each<[string, LeakOpening, RegExp, LeakOpening]>([
  ["a crack of 12 mm in a 10 mm tube", crack(6e-3), /shell parameter of the crack = 5\.3/, crack(4e-3)],
  ["a hole twenty times as long as wide", hole(0.045e-3), /wall over diameter = 20/, hole(0.2e-3)],
  ["a gap of a tenth of a fitting's diameter", gap(1.3e-3), /clearance over diameter = 0\.1/, gap(20e-6)],
])("%s is told, a smaller or wider one is not", (_, opening, says, kept) => {
  expect(told(opening)).toMatch(says);
  expect(told(kept)).not.toMatch(/shell parameter|wall over diameter|clearance over diameter/);
});
