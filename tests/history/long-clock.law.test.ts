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

it("a tick ends also when the clock has run for a year, with a clutch that slips on and off", () => {
  const walk = newWalk({ ...unit, leak: null }, fresh(unit, 350, 3.2e-3));
  takeStock(walk);
  walk.state.clock = 3.2e7 + 0.06;
  const engagement = noEngagement();
  let steps = 0;
  for (let s = 1; s <= 40; s++)
    tick(walk, 0.9 + (s % 3) / 30, Math.min(12, s), 0.04, 2 * (s % 2), engagement, () => ++steps < 1e5);
  expect(steps).toBeGreaterThan(40);
  expect(steps).toBeLessThan(1e4);
});
