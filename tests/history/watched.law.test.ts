// What the chain uses is watched: a history that starves tells each law that it left, and one that keeps to them is silent about it.
import { describe, expect, test } from "vitest";
import { nedcExtraUrban } from "../../src/driving/nedc.ts";
import type { Range } from "../../src/errors.ts";
import { simulate } from "../../src/history/simulate.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { watchedLaws } from "../../src/history/watched-laws.ts";
import { newWalk } from "../../src/history/walk.ts";
import { readCaseFile } from "../../src/inputs/files.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { fresh } from "../../src/physics/state.ts";
import { lockupPressureRange } from "../../src/physics/clutch/lockup.ts";
import { aeratedRange } from "../../src/physics/fluid/aerated.ts";
import { effectivenessRange } from "../../src/physics/heat/cooler.ts";
import { lumpedRange } from "../../src/physics/heat/plate.ts";
import { converterRange } from "../../src/physics/load/converter.ts";
import { interfaceRange } from "../../src/physics/heat/interface.ts";
import { glazeLossRange } from "../../src/physics/damage/damage-index.ts";
import { wearRange } from "../../src/physics/damage/wear.ts";
import { fullTorqueRange } from "../../src/physics/load/engine.ts";
import { airOnset, airOnsetRange, mouthRadius, weirDepth } from "../../src/physics/sump/pickup.ts";
import { caseFile } from "../inputs/shipped.ts";
import { celsius, daily, days, plan, van } from "../emerge/van.ts";

const tells = (outside: readonly string[], { law }: Range) =>
  outside.some((line) => line.startsWith(`${law} used`));
/** A drive on a hot day, in which the lock-up engages. */
const driven = (unit: typeof van) =>
  simulate(plan(unit, daily(nedcExtraUrban), celsius(45), { span: days(1) })).outside;

describe("a unit that is full, warm and sound", () => {
  const told = driven(van);
  test.each([
    airOnsetRange,
    aeratedRange,
    effectivenessRange,
    lumpedRange,
    lockupPressureRange,
    fullTorqueRange,
  ])("does not leave: $law", (range) => {
    expect(tells(told, range)).toBe(false);
  });
});

describe("a unit that loses its fluid until it no longer drives", () => {
  const told = simulate(planOf(readCaseFile(caseFile("pinhole")))).outside;
  test.each([airOnsetRange, aeratedRange, effectivenessRange, fullTorqueRange, converterRange])(
    "leaves: $law",
    (range) => {
      expect(tells(told, range)).toBe(true);
    },
  );
});

describe("a build beyond what was measured", () => {
  test("a converter clutch that is pressed with more than 7 bar", () => {
    const { lockUp, regulator } = van.build;
    const clutch = { ...lockUp.clutch, most: 9e5, back: 0, fedFromOverflow: false };
    const build = { ...van.build, lockUp: { ...lockUp, clutch }, regulator: { ...regulator, base: 9e5 } };
    expect(tells(driven({ ...van, build }), lockupPressureRange)).toBe(true);
  });

  test("plates that are cooled too fast to be of one temperature: 7000 W/(m² K) over half of 1.8 mm of steel is a Bi of 0.137", () => {
    const given = planOf(readCaseFile(caseFile("pinhole")));
    const { heat } = given.unit.build;
    const lubrication = { ...heat.lubrication, fullCoefficient: 7000 };
    const unit = { ...given.unit, build: { ...given.unit.build, heat: { ...heat, lubrication } } };
    expect(tells(simulate({ ...given, unit }).outside, lumpedRange)).toBe(true);
  });
});

test("numbers of a build beyond what was measured are told: friction lost by glaze, wear, a thick plate in a narrow ring", () => {
  const given = planOf(readCaseFile(caseFile("pinhole")));
  const { build } = given.unit;
  const clutches = build.clutches.map((clutch) => ({ ...clutch, inner: clutch.outer - 5e-3 })); // 1.8 mm of steel on 5
  const damage = { ...build.damage, glazeLoss: 0.2, wearPerEnergy: 1e-12 };
  const ranges = [glazeLossRange, wearRange, interfaceRange];
  const told = (unit: typeof given.unit) => {
    const { outside } = simulate({ ...given, unit });
    return ranges.map((range) => tells(outside, range));
  };
  expect(told({ ...given.unit, build: { ...build, clutches, damage } })).toEqual([true, true, true]);
  expect(told(given.unit)).toEqual([false, false, false]);
});

test("the onset of air is used where air is drawn between it and the rim's limit, nowhere else", () => {
  const walk = newWalk(van, fresh(van, celsius(80)));
  const { pickup } = van.build.sump;
  const onset = watchedLaws.find(({ range }) => range === airOnsetRange)!;
  const drawn = 13.2e-3 / 60;
  const at = (submergence: number, gasDrawn: number) => {
    Object.assign(walk.now, { submergence, gasDrawn });
    walk.now.line.drawn = drawn;
    return onset.value(walk, noEngagement());
  };
  const [rim, air] = [weirDepth(pickup.rim, drawn), airOnset(drawn)];
  expect(rim).toBeLessThan(air);
  expect(at(air * 1.01, pickup.baseGas)).toBeUndefined();
  expect(at((rim + air) / 2, 0.03)).toBeCloseTo(air / mouthRadius(pickup), 12);
  expect(at(rim * 0.99, 0.06)).toBeUndefined();
});
