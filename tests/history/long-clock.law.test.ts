import { join } from "node:path";
import { expect, it } from "vitest";
import { noEngagement } from "../../src/history/shift.ts";
import { takeStock } from "../../src/history/advance.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import { readCase } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";
import { fresh } from "../../src/physics/state.ts";

const { unit } = readCase(caseData(join(import.meta.dirname, "../../reference-data/cases/slow-seep.json")));

it("a slip's tick ends after a year, when the clock's last digit is longer than what is left of it", () => {
  const walk = newWalk({ ...unit, leak: null }, fresh(unit, 350, 3.2e-3));
  takeStock(walk);
  const { state } = walk;
  Object.assign(state, { clock: 3.2e7, gear: 1, speed: 8, engine: 300, turbine: 250, slipping: true });
  walk.scheduled = 8;
  let steps = 0;
  // Less than half the last digit of 3.2e7 s, which is 3.7e-9 s: the clock cannot show that it has passed.
  tick(walk, 1.5e-9, 8, 0, 0, noEngagement(), () => ++steps < 1000);
  expect(steps).toBeLessThan(10);
  expect(Number.isFinite(walk.slip.heat)).toBe(true);
});

it("a slip after a year is that of the first day, on ticks that leave less than the clock's last digit over", () => {
  const slid = (clock: number) => {
    const walk = newWalk({ ...unit, leak: null }, fresh(unit, 350, 3.2e-3));
    takeStock(walk);
    const { state } = walk;
    Object.assign(state, { clock, gear: 1, speed: 8, engine: 300, turbine: 250, slipping: true });
    walk.scheduled = 8;
    state.char.fill(0.85);
    for (let i = 0; i < 300; i++) tick(walk, 0.1 + i / 997, 8, 0.05, 0, noEngagement(), () => true);
    return { heat: Math.max(...walk.slipEnergy), plate: Math.max(...state.plate) };
  };
  const [first, late] = [slid(0), slid(3.2e7)];
  expect(first.heat).toBeGreaterThan(1e4);
  expect(late.heat / first.heat).toBeCloseTo(1, 4);
  expect(late.plate).toBeCloseTo(first.plate, 2);
});

it("a slip that lacks two billionths of a second to be felt goes on, where the clock cannot show them", () => {
  const walk = newWalk({ ...unit, leak: null }, fresh(unit, 350, 3.2e-3));
  takeStock(walk);
  const { state } = walk;
  const slips = { gear: 1, speed: 8, engine: 300, turbine: 250, slipping: true, slipTime: 1 - 1.6e-9 };
  Object.assign(state, { clock: 17082660.99999999, ...slips });
  walk.scheduled = 8;
  state.char.fill(0.85);
  for (let i = 0; i < 3; i++) tick(walk, 0.2, 8, 0, 0, noEngagement(), () => true);
  expect(state.plate.every(Number.isFinite)).toBe(true);
  expect(Number.isFinite(walk.slip.warming)).toBe(true);
});
