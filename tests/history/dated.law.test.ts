// Moments are dated where they fall, inside a tick too, and no weakness of the engine is taken for one of the clutches.
import { describe, expect, it } from "vitest";
import { simulate } from "../../src/history/simulate.ts";
import { readCase } from "../../src/inputs/case.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { specificEnergy } from "../../src/physics/fluid/specific-heat.ts";
import { changed } from "../inputs/shipped.ts";
import { celsius, daily, days, hole, hours, leaking, named, plan, trace, van } from "../emerge/van.ts";

const mild = celsius(15);

/** A trace with a row each second between corners of time [s], speed [m/s] and grade. */
function between(name: string, corners: readonly (readonly [number, number, number?])[]) {
  const rows = corners.slice(1).flatMap(([to, speed, grade], i) => {
    const [from, before] = corners[i]!;
    const share = (t: number) => (t - from) / (to - from);
    return Array.from({ length: to - from }, (_, k) => from + k + 1).map(
      (t) => [t, before + (speed - before) * share(t), grade ?? 0] as const,
    );
  });
  return trace(name, [[0, corners[0]![1], corners[0]![2] ?? 0], ...rows]);
}

const round = between("out and back", [
  [0, 0],
  [20, 15],
  [400, 15],
  [420, 0],
  [600, 0],
]);
const week = daily(round);
const wet = { ...van, leak: leaking("supply-line", hole(0.4e-3)) };

describe("a leak opens where the case says, within a tick too", () => {
  const starts = hours(8) + 2; // after two seconds in neutral
  it.each([0, 7.25, 123.456])("%d s into the drive", (into) => {
    const opened = named(
      simulate(plan(wet, week, mild, { span: days(1), opens: { after: starts + into } })),
      "leak opens",
    );
    expect(opened!.clock).toBeCloseTo(starts + into, 5);
  });

  it.each([1234.5, 4000])("after %d m on the road", (distance) => {
    const opened = named(
      simulate(plan(wet, week, mild, { span: days(1), opens: { distance } })),
      "leak opens",
    );
    expect(opened!.distance).toBeCloseTo(distance, 1);
  });
});

describe("a spot on the ground", () => {
  // Without a hiding place and standing, all that leaves falls: one gram after 1 g / rate, found by losses just before and after.
  it("is dated at its gram", () => {
    const idling = between("idling", [
      [0, 0],
      [600, 0],
    ]);
    const unit = { ...van, leak: leaking("supply-line", hole(0.2e-3)) };
    const spotWith = (longestTick: number) =>
      named(
        simulate(
          plan(unit, daily(idling, 8, longestTick), mild, {
            opens: { after: hours(8) + 100 },
            span: days(1),
          }),
        ),
        "first spot on the ground",
      )!;
    const [usual, fine] = [1, 0.05].map(spotWith);
    expect(usual!.lost).toBeCloseTo(0.001, 6);
    expect(Math.abs(fine!.clock - usual!.clock)).toBeLessThan(0.05);
  });
});

describe("a pan with a hole", () => {
  it("still runs at night, and the row says so", () => {
    const history = simulate(
      plan({ ...van, leak: leaking("pan", hole(0.3e-3), { height: 0.005 }) }, week, mild, { span: days(2) }),
    );
    const first = history.trips[0]!;
    expect(first.leakFlow).toBeGreaterThan(0);
    const spot = named(history, "first spot on the ground")!;
    expect(spot.clock).toBeLessThan(hours(8));
    expect(spot.leakFlow).toBeGreaterThan(0);
  });
});

describe("falling behind", () => {
  const steep = daily(
    between("a hill too steep to keep up", [
      [0, 0, 0],
      [30, 15, 0.24],
      [200, 15, 0.24],
      [230, 0, 0],
    ]),
  );

  it("on a hill too steep for the engine is no event while every clutch holds", () => {
    const heavy = { ...van, build: { ...van.build, vehicle: { ...van.build.vehicle, mass: 6500 } } };
    const history = simulate(plan(heavy, steep, mild, { span: days(1) }));
    const slow = history.trips.reduce((sum, { distance }) => Math.max(sum, distance), 0);
    expect(slow).toBeLessThan(0.7 * 2900); // m: it does fall behind
    expect(history.clutches.every(({ slips }) => slips === 0)).toBe(true);
    expect(named(history, "vehicle falls behind")).toBeUndefined();
    expect(named(history, "no drive")).toBeUndefined();
  });

  it("for want of pressure is one", () => {
    const history = simulate(plan(van, steep, mild, { span: days(1), fillShort: 4.5e-3 }));
    expect(named(history, "vehicle falls behind")).toBeDefined();
  });
});

describe("a top-up", () => {
  const added = (at: number) => {
    const topUps = [{ at, volume: 0.5e-3, temperature: mild }];
    const history = simulate(plan(van, week, mild, { span: days(1), fillShort: 1e-3, topUps }));
    const events = history.events.filter(({ name }) => name === "topped up");
    return { events, mass: history.ledger.massAdded, gap: history.closure.mass };
  };

  it("dated in a stand is made at its date, once", () => {
    const { events } = added(hours(5));
    expect(events.map(({ clock }) => clock)).toEqual([hours(5)]);
  });

  it("tells volume and temperature, and mixes by heat when two of one moment differ in it", () => {
    const given = readCase(
      changed([
        "entries",
        [
          { kind: "top-up", date: "2024-03-05", volume: "0.5 L", temperature: "-10 degC" },
          { kind: "top-up", date: "2024-03-05", volume: "1 L", temperature: "50 degC" },
        ],
      ]),
    );
    const { topUps } = planOf(given);
    expect(topUps).toHaveLength(1);
    const { volume, temperature } = topUps[0]!;
    const { density15 } = given.unit.fluid;
    const holds = (litres: number, t: number) => {
      const mass = litres * 1e-3 * density(density15, celsius(t));
      return { mass, heat: mass * specificEnergy(density15, celsius(t)) };
    };
    const [cold, warm] = [holds(0.5, -10), holds(1, 50)];
    const mass = volume * density(density15, temperature);
    expect(mass / (cold.mass + warm.mass)).toBeCloseTo(1, 12);
    expect((mass * specificEnergy(density15, temperature)) / (cold.heat + warm.heat)).toBeCloseTo(1, 9);
    const { events } = simulate({ ...planOf(given), span: days(3) });
    const [event] = events.filter(({ name }) => name === "topped up");
    expect(event!.condition).toBe(
      `${(volume * 1e3).toFixed(2)} L of ${Math.round(temperature - 273.15)} degC added`,
    );
  });

  it("dated inside a trip is not lost: it is made when the trip has ended, once", () => {
    const stood = added(hours(5));
    const { events, mass, gap } = added(hours(8) + 300);
    expect(events).toHaveLength(1);
    expect(events[0]!.clock).toBeGreaterThan(hours(8) + 300);
    expect(events[0]!.clock).toBeLessThan(hours(8) + 700);
    expect(mass).toBeCloseTo(stood.mass, 12);
    expect(gap).toBeLessThan(1e-9);
  });
});
