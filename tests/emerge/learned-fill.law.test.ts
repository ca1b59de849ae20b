// The learned fill hides slow filling: a clutch that air fills slowly is begun earlier and is full when it is due, until the
// controller may begin no earlier; then the engine flares and the clutch slips in.
import { describe, expect, it } from "vitest";
import { engageFromRest, noEngagement, shiftTo } from "../../src/history/shift.ts";
import { newWalk } from "../../src/history/walk.ts";
import { simulate } from "../../src/history/simulate.ts";
import { fluidNow } from "../../src/physics/chain.ts";
import { fresh } from "../../src/physics/state.ts";
import type { Unit } from "../../src/physics/build.ts";
import { celsius, days, plan, qt, rounds, taxi, van } from "./van.ts";

/** Shifts from second to third, each of a fresh unit with so much gas at the pump that has learned from the ones before. */
function shifts(unit: Unit, gas: number, count: number) {
  let known = new Float64Array(unit.build.clutches.length);
  return Array.from({ length: count }, () => {
    const walk = newWalk(unit, fresh(unit, celsius(80)));
    walk.state.learnedFill.set(known);
    Object.assign(walk.state, { gear: 1, speed: 8, gas });
    Object.assign(walk.road, { speed: 8, wish: 0.4, grade: 0 });
    fluidNow(unit, walk.state, walk.now);
    const shift = noEngagement();
    shiftTo(walk, 2, shift);
    known = walk.state.learnedFill.slice();
    return { late: shift.late, learned: known[shift.clutch]!, clutch: shift.clutch };
  });
}

const unlearning = (unit: Unit): Unit => ({
  ...unit,
  build: { ...unit.build, shiftControl: { ...unit.build.shiftControl, fillLimit: 0 } },
});

describe.each([van, taxi])("in the $build.name", (unit) => {
  const { fillLimit } = unit.build.shiftControl;
  /** First gas share at which a fill is late by so much, of an unlearned controller. */
  const gasFor = (late: number) => {
    for (let gas = 0.02; gas < 0.98; gas += 0.005)
      if (shifts(unlearning(unit), gas, 1)[0]!.late > late) return gas;
    throw new Error("no such gas");
  };

  it("a sound clutch teaches nothing", () => {
    for (const { late, learned } of shifts(unit, unit.build.sump.pickup.baseGas, 20)) {
      expect(late).toBeLessThan(1e-9);
      expect(learned).toBeLessThan(1e-9);
    }
  });

  it("a fill that is late by less than the limit comes to be in time", () => {
    const gas = gasFor(0.3 * fillLimit);
    const seen = shifts(unit, gas, 60);
    expect(seen[0]!.late).toBeGreaterThan(0.3 * fillLimit);
    for (let i = 1; i < seen.length; i++) expect(seen[i]!.late).toBeLessThanOrEqual(seen[i - 1]!.late);
    expect(seen.at(-1)!.late).toBeLessThan(1e-5);
    expect(seen.at(-1)!.learned).toBeCloseTo(seen[0]!.late, 5);
  });

  it("a later one stays late by what the limit leaves", () => {
    const gas = gasFor(2 * fillLimit);
    const seen = shifts(unit, gas, 60);
    expect(seen.at(-1)!.learned).toBe(fillLimit);
    expect(seen.at(-1)!.late).toBeCloseTo(seen[0]!.late - fillLimit, 12);
  });

  it("each clutch learns for itself, and the first engagement of a drive neither teaches nor is helped", () => {
    const walk = newWalk(unit, fresh(unit, celsius(80)));
    walk.state.learnedFill.fill(fillLimit);
    walk.state.gas = gasFor(2 * fillLimit);
    fluidNow(unit, walk.state, walk.now);
    const helped = noEngagement();
    engageFromRest(walk, helped);
    const bare = newWalk(unlearning(unit), fresh(unit, celsius(80)));
    bare.state.gas = walk.state.gas;
    fluidNow(unit, bare.state, bare.now);
    const alone = noEngagement();
    engageFromRest(bare, alone);
    expect(helped.late).toBe(alone.late);
    const { clutch } = shifts(unit, 0.5, 1)[0]!;
    const after = newWalk(unit, fresh(unit, celsius(80)));
    Object.assign(after.state, { gear: 1, speed: 8, gas: gasFor(fillLimit) });
    Object.assign(after.road, { speed: 8, wish: 0.4, grade: 0 });
    fluidNow(unit, after.state, after.now);
    shiftTo(after, 2, noEngagement());
    after.state.learnedFill.forEach((learned, i) => expect(learned > 0).toBe(i === clutch));
  });
});

it("in a history it comes with the air, and goes again with it", () => {
  const week = rounds([7.5, 13], { hardness: 1, hilliness: 1, duration: 2400 }, 100);
  const learnt = (quarts: number) =>
    Math.max(
      ...simulate(plan(van, week, celsius(-5), { span: days(4), fillShort: qt(quarts) })).clutches.map(
        ({ learnedFill }) => learnedFill,
      ),
    );
  const { fillLimit } = van.build.shiftControl;
  expect(learnt(0)).toBeLessThan(1e-3 * fillLimit);
  expect(learnt(1)).toBeLessThan(1e-3 * fillLimit);
  expect(learnt(2.7)).toBeGreaterThan(0.1 * fillLimit);
  expect(learnt(2.7)).toBeLessThanOrEqual(fillLimit); // gulps pass, and between them it is unlearned
});
