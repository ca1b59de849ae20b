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
