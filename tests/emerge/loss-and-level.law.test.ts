// What a leak loses while the pump is fed does not depend on the level; parked, only what stands above the hole is lost.
import { describe, expect, it, test } from "vitest";
import { holdAt, HOT, idling } from "../../src/bay/ready.ts";
import { idleInNeutral } from "../../src/history/idle.ts";
import { stand } from "../../src/history/parked.ts";
import type { Walk } from "../../src/history/walk.ts";
import type { Leak } from "../../src/physics/build.ts";
import { panVolume } from "../../src/physics/sump/holdup.ts";
import { celsius, days, gap, hole, hours, leaking, qt, van } from "./van.ts";

/** A unit that lacks fluid, hot and idling, whose leak has just opened. */
function leakingAt(leak: Leak, shortage: number): Walk {
  const walk = idling({ ...van, leak }, shortage, HOT);
  walk.state.leakAge = 0;
  return walk;
}

/** Mass lost in ten minutes of idling at a temperature that is held [kg]. */
function tenMinutes(leak: Leak, shortage: number): number {
  const walk = leakingAt(leak, shortage);
  idleInNeutral(walk, 600, van.build.engine.idleSpeed, () => holdAt(walk, HOT));
  return walk.ledger.massLeaked;
}

describe("while the pump is fed", () => {
  const shortages = [0, 0.5, 1, 1.5, 2].map(qt);
  test.each([
    ["a hole in the supply line", leaking("supply-line", hole(0.3e-3))],
    ["a hole in the return line", leaking("return-line", hole(0.3e-3))],
    ["a seal in the supply line", leaking("supply-line", gap(20e-6))],
  ])("%s loses the same each hour whatever the level", (_, leak) => {
    const [full, ...lower] = shortages.map((shortage) => tenMinutes(leak, shortage));
    expect(full).toBeGreaterThan(0.005);
    // The temperature is put back after each step and wanders within it, less fluid by a little more.
    for (const lost of lower) expect(lost / full!).toBeCloseTo(1, 5);
  });

  it("and less once the pump draws air", () => {
    const leak = leaking("supply-line", hole(0.3e-3));
    expect(tenMinutes(leak, qt(5))).toBeLessThan(0.9 * tenMinutes(leak, 0));
  });

  it("a hole in the pan is another matter: it lives on the head above it", () => {
    const leak = leaking("pan", hole(1e-3), { height: 0.005 });
    expect(tenMinutes(leak, qt(2))).toBeLessThan(0.95 * tenMinutes(leak, 0));
  });
});

describe("parked", () => {
  const { build } = van;
  const floor = build.sump.pan.length * build.sump.pan.width * build.sump.pan.free;

  /** Lets a hot unit stand, and says what is lost in the first days and in the month after [m³ at the last density], and how deep it then stands. */
  function parked(leak: Leak, shortage = 0) {
    const walk = leakingAt(leak, shortage);
    walk.road.ambient = celsius(20);
    const { state, now } = walk;
    const go = (seconds: number) => {
      const before = walk.ledger.massLeaked;
      stand(walk, seconds, () => true);
      return (walk.ledger.massLeaked - before) / now.density;
    };
    const lines = state.lines;
    const first = go(days(10));
    const later = go(days(30));
    const depth =
      panVolume(state.mass / now.density, state.converter, state.lines, state.passages, state.inFlight) /
      floor;
    return { first, later, depth, fromLines: lines - state.lines };
  }

  it("the pan empties down to the hole and no further, then it stops", () => {
    const { first, later, depth } = parked(leaking("pan", hole(2e-3), { height: 0.02 }));
    expect(first).toBeGreaterThan(0.5e-3);
    expect(depth).toBeGreaterThan(0.02 - 1e-6);
    expect(depth).toBeLessThan(0.0201);
    expect(later).toBeLessThan(1e-3 * first);
  });

  it("a hole above the level loses nothing at all", () => {
    expect(parked(leaking("pan", hole(2e-3), { height: 0.2 })).first).toBe(0);
  });

  it("from a line only what stands above the hole comes, then it stops", () => {
    const above = 0.15e-3;
    const high = leaking("supply-line", hole(1e-3), { height: 0.2, lineAbove: above, columnHeight: 0.2 });
    const { first, later, fromLines } = parked(high);
    expect(fromLines / above).toBeGreaterThan(0.999);
    expect(fromLines / above).toBeLessThanOrEqual(1 + 1e-12);
    // It left hot and thin, and is measured cold.
    expect(first / fromLines).toBeGreaterThan(0.95);
    expect(first / fromLines).toBeLessThanOrEqual(1);
    expect(later).toBeLessThan(1e-3 * first);
  });

  it("and nothing behind a valve that keeps the column up", () => {
    expect(parked(leaking("supply-line", hole(1e-3), { height: 0.2 })).first).toBe(0);
  });

  it("what the pan loses standing does depend on the level", () => {
    const leak = leaking("pan", hole(2e-3), { height: 0.02 });
    expect(parked(leak, qt(1)).first).toBeLessThan(parked(leak).first - 0.9 * qt(1));
  });
});

test("no leak, no loss", () => {
  const walk = idling(van, 0, HOT);
  idleInNeutral(walk, hours(0.2), van.build.engine.idleSpeed);
  stand(walk, days(3), () => true);
  expect(walk.ledger.massLeaked).toBe(0);
  expect(walk.state.mass).toBe(walk.ledger.massFilled);
});
