// What changes within minutes is taken halfway through a step: fluid and coolant that warm, a leak that grows, what drains back in a night.
import { expect, test } from "vitest";
import { ticks } from "../../src/driving/ticks.ts";
import { stand } from "../../src/history/parked.ts";
import { settle } from "../../src/history/settle.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import type { Leak } from "../../src/physics/build.ts";
import { fluidNow } from "../../src/physics/chain.ts";
import { fresh } from "../../src/physics/state.ts";
import { celsius, gap, leaking, trace, van } from "../emerge/van.ts";

const launch = Array.from({ length: 12 }, (_, i) => [i + 1, 1.5 * (i + 1)] as const);
const on = Array.from({ length: 58 }, (_, i) => [17 + 5 * i, 18] as const);
const steady = trace("away and steady", [[0, 0], ...launch, ...on]);
const turns = trace("turns in the cold", [
  [0, 0],
  ...Array.from({ length: 10 }, (_, i) => [i + 1, 0.8 * (i + 1)] as const),
  ...Array.from({ length: 120 }, (_, i) => [11 + i, 8, 0, i % 7 < 3 ? 2.5 : -1] as const),
]);

/** Lost [kg] on a cold drive of so many seconds a tick, heat settled as often. */
function lost(leak: Leak, drive: typeof steady, step: number, fine = 0.05 * step): number {
  const unit = { ...van, leak };
  const state = fresh(unit, celsius(10));
  Object.assign(state, { leakAge: 0, leakOpenedAt: 0, coolant: celsius(10) });
  const walk = newWalk(unit, state, fine, 0.4 * fine);
  const cut = ticks(drive, step);
  const engagement = noEngagement();
  for (let i = 0; i < cut.count; i++)
    tick(walk, cut.dt[i]!, cut.speed[i]!, cut.grade[i]!, cut.lateral[i]!, engagement, () => true);
  settle(walk);
  return walk.ledger.massLeaked;
}

const creeping = {
  kind: "seal",
  diameter: 13e-3,
  length: 2.4e-3,
  eccentricity: 0.5,
  clearance: 20e-6,
  finalClearance: 60e-6,
  creepTime: 600,
} as const;
const crack = {
  kind: "crack",
  halfLength: 2e-3,
  partsAt: 7e-3,
  partsAfter: 500,
  parisExponent: 3,
  wall: 0.9e-3,
  tubeRadius: 4.55e-3,
  modulus: 69e9,
  poisson: 0.33,
  bendingStress: 60e6,
  restGap: 20e-6,
} as const;
const rub = {
  kind: "rub",
  tubeRadius: 4e-3,
  wall: 0.9e-3,
  contact: 1.5e-3,
  depthInHundredHours: 0.3e-3,
} as const;

// Of second order: a quarter of the error in half the step. Taken at the beginning of a step, warming would cost 7e-4 to 5e-3 of the
// loss in ticks of half a second, growing 3e-3 to 7e-3.
test.each<[string, Leak]>([
  ["a fine gap in the supply line", leaking("supply-line", gap(30e-6))],
  ["a fine gap in the return line, where the coolant counts", leaking("return-line", gap(30e-6))],
  ["a seal that creeps", leaking("supply-line", creeping)],
  ["a crack that grows", leaking("supply-line", crack)],
  ["a tube that is rubbed through", leaking("supply-line", rub)],
])("%s loses on a cold drive what it loses in ticks of a sixty-fourth of a second", (_, leak) => {
  const truth = lost(leak, steady, 1 / 64);
  const [whole, half] = [1, 0.5].map((step) => Math.abs(lost(leak, steady, step) / truth - 1));
  expect(whole).toBeLessThan(2e-3);
  expect(half).toBeLessThan(5e-4);
});

// Looked at once a second it would be an eighth off.
test("what a swinging surface wets of the pan's rail is seen as it swings, to a hundredth, with half the steps to a quarter of that", () => {
  const slot = { kind: "slot", length: 20e-3, gap: 0.4e-3, depth: 5e-3 } as const;
  const seam = leaking("pan-seam", slot, { height: 0.058, x: 0.2, y: 0.01 });
  const truth = lost(seam, turns, 1, 0.05 / 64);
  expect(truth).toBeGreaterThan(1e-4);
  expect(Math.abs(lost(seam, turns, 1) / truth - 1)).toBeLessThan(1e-2);
  expect(Math.abs(lost(seam, turns, 1, 0.05 / 2) / truth - 1)).toBeLessThan(2.5e-3);
});

/** Lost [kg] from a seam just over the level at rest, in one stand or in many short ones, each of which begins with short steps. */
function nightsLoss(stands: number): number {
  const slot = { kind: "slot", length: 20e-3, gap: 0.15e-3, depth: 5e-3 } as const;
  const unit = { ...van, leak: leaking("pan-seam", slot, { height: 0.05 }) };
  const state = fresh(unit, celsius(11));
  Object.assign(state, { leakAge: 0, leakOpenedAt: 0 });
  const walk = newWalk(unit, state);
  walk.road.ambient = celsius(11);
  fluidNow(unit, state, walk.now);
  for (let i = 0; i < stands; i++) stand(walk, 7200 / stands, () => true);
  return walk.ledger.massLeaked;
}

test("what drains back overnight stands over a seam by half a step's share, not by all of it", () => {
  const truth = nightsLoss(3600);
  expect(truth).toBeGreaterThan(1e-4);
  expect(Math.abs(nightsLoss(1) / truth - 1)).toBeLessThan(1e-3);
});
