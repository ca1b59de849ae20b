// The learned trim hides a loss of friction: shifts take their time while the trim climbs, and leave it once the trim is at its limit.
import { describe, expect, it } from "vitest";
import { holdAt, idling } from "../../src/bay/ready.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { tick } from "../../src/history/tick.ts";
import { celsius, van } from "./van.ts";

const warm = celsius(80);
const { targetTime, trimLimit } = van.build.shiftControl;

interface Trip {
  readonly lost: number;
  readonly trim: number;
  /** Mean and longest time that its upshifts slipped [s]. */
  readonly mean: number;
  readonly longest: number;
}

/** Trips of three launches to 80 km/h; before each the linings have lost a little more of their friction. */
function trips(count: number, lossPerTrip: number, trimGain: number): Trip[] {
  const build = { ...van.build, shiftControl: { ...van.build.shiftControl, trimGain } };
  const walk = idling({ ...van, build }, 0, warm);
  const { state } = walk;
  const engagement = noEngagement();
  return Array.from({ length: count }, (_, trip) => {
    const lost = trip * lossPerTrip;
    const times: number[] = [];
    for (let launch = 0; launch < 3; launch++) {
      state.gear = 0;
      state.speed = 0;
      state.slipping = false;
      walk.scheduled = 0;
      for (let s = 1; s <= 22; s++) {
        const { gear } = state;
        state.char.fill(lost);
        tick(walk, 1, s, 0, 0, engagement, () => holdAt(walk, warm));
        if (state.gear > gear) times.push(engagement.time);
      }
    }
    return {
      lost,
      trim: state.trim,
      mean: times.reduce((sum, time) => sum + time, 0) / times.length,
      longest: Math.max(...times),
    };
  });
}

const learning = trips(120, 0.004, van.build.shiftControl.trimGain);
const limit = learning.findIndex(({ trim }) => trim >= 0.999 * trimLimit);
const climbing = learning.slice(0, limit);

describe("while the trim climbs", () => {
  it("it climbs with every loss, to its limit and no further", () => {
    expect(limit).toBeGreaterThan(20);
    for (let i = 1; i < climbing.length; i++)
      expect(climbing[i]!.trim).toBeGreaterThan(climbing[i - 1]!.trim);
    for (const { trim } of learning) expect(trim).toBeLessThanOrEqual(trimLimit);
  });

  it("the slip of a shift stays in its band", () => {
    for (const { mean } of climbing) {
      expect(mean / targetTime).toBeGreaterThan(0.9);
      expect(mean / targetTime).toBeLessThan(1.15);
    }
  });

  it("though a quarter of the friction is gone by the end of it", () => {
    expect(climbing.at(-1)!.lost).toBeGreaterThan(0.25);
  });
});

describe("without learning", () => {
  it("the same loss is felt long before", () => {
    const felt = trips(40, 0.004, 0).find(({ mean }) => mean > 1.3 * targetTime)!;
    expect(felt.lost).toBeLessThan(0.3 * climbing.at(-1)!.lost);
  });
});

describe("at the limit of the trim", () => {
  it("the slip of a shift leaves its band within a few trips", () => {
    const left = learning.findIndex(({ mean }, i) => i >= limit && mean > 1.25 * targetTime);
    expect(left).toBeGreaterThanOrEqual(limit);
    expect(left - limit).toBeLessThanOrEqual(10);
  });

  it("and soon a shift does not lock at all", () => {
    const never = learning.findIndex(({ longest }) => longest === Infinity);
    expect(never).toBeGreaterThan(limit);
    expect(learning[never]!.lost - learning[limit]!.lost).toBeLessThan(0.1);
  });
});
