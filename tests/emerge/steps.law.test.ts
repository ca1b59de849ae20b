// No event is missed or moved by the choice of step; a run that cannot go on returns what it has, with the reason.
import { describe, expect, it, test } from "vitest";
import { ticks } from "../../src/driving/ticks.ts";
import type { Trace } from "../../src/driving/trace.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { simulate, type History, type Plan } from "../../src/history/simulate.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import type { EventName } from "../../src/history/watch.ts";
import { gravity as g } from "../../src/physics/load/road.ts";
import { fresh } from "../../src/physics/state.ts";
import { celsius, daily, days, hole, hours, leaking, named, plan, qt, rounds, trace, van } from "./van.ts";

/** Up to 72 km/h and on for half an hour up a gentle slope. */
const slope: Trace = trace("slope", [
  [0, 0, 0.02],
  ...Array.from({ length: 20 }, (_, i) => [2 + 2 * i, i, 0.02] as const),
  ...Array.from({ length: 352 }, (_, i) => [42 + 5 * i, 20, 0.02] as const),
]);

const halvings: Readonly<Record<string, { tick: number; step: Partial<Plan> }>> = {
  "the steps while air is possible": { tick: 1, step: { fine: 0.025 } },
  "the steps while slipping": { tick: 1, step: { finer: 0.01 } },
  "both kinds of steps": { tick: 1, step: { fine: 0.025, finer: 0.01 } },
  "the driving tick": { tick: 0.5, step: {} },
};

/** Seconds of running by which events of one history come later in another. */
function moved(from: History, to: History, names: readonly EventName[]): Record<string, number> {
  const seen = names.filter((name) => named(from, name) !== undefined);
  return Object.fromEntries(
    seen.map((name) => [name, (named(to, name)?.running ?? Infinity) - named(from, name)!.running]),
  );
}

describe("as the level falls in even driving", () => {
  const unit = { ...van, leak: leaking("supply-line", hole(1e-3)) };
  const drive = (step: number, more: Partial<Plan>) =>
    simulate(plan(unit, daily(slope, 8, step), celsius(15), { span: days(1), ...more }));
  const usual = drive(1, {});
  const steady: readonly EventName[] = [
    "leak opens",
    "first spot on the ground",
    "first gulp of air",
    "cooler flow below half",
    "lock-up slipping",
    "line pressure below demand",
  ];

  it("the ladder is climbed", () => {
    const seen = usual.events.map(({ name }) => name);
    expect(seen).toEqual(
      expect.arrayContaining(["first gulp of air", "cooler flow below half", "line pressure below demand"]),
    );
  });

  test.each(Object.entries(halvings))(
    "halving %s moves no event by a second",
    (_, { tick: step, step: more }) => {
      const shifts = moved(usual, drive(step, more), steady);
      for (const [name, seconds] of Object.entries(shifts)) expect(Math.abs(seconds), name).toBeLessThan(1);
    },
  );
});

describe("on parcel rounds, where one launch decides", () => {
  const first: readonly EventName[] = ["leak opens", "first spot on the ground", "first gulp of air"];
  const drive = (diameter: number, step: number, more: Partial<Plan>) => {
    const week = rounds([8, 13], { hardness: 1, hilliness: 1, duration: 1800 }, 1, step);
    const unit = { ...van, leak: leaking("supply-line", hole(diameter)) };
    return simulate(plan(unit, week, celsius(5), { span: days(1), ...more }));
  };

  test.each([0.5e-3, 0.7e-3])("a hole of %d m: none of spot and gulp moves by a second", (diameter) => {
    const usual = drive(diameter, 1, {});
    expect(named(usual, "first gulp of air")).toBeDefined();
    for (const { tick: step, step: more } of [
      halvings["both kinds of steps"]!,
      halvings["the driving tick"]!,
    ])
      for (const [name, seconds] of Object.entries(moved(usual, drive(diameter, step, more), first)))
        expect(Math.abs(seconds), name).toBeLessThan(1);
  });
});

describe("two crossings within a second", () => {
  /** Each time that gas at the pump rises past a tenth [s], on a drive of turns to and fro, short of fluid. */
  function gulps(fine: number): number[] {
    const turns = trace("to and fro", [
      [0, 0],
      ...Array.from({ length: 10 }, (_, i) => [i + 1, 0.8 * (i + 1)] as const),
      ...Array.from({ length: 40 }, (_, i) => [11 + 1.37 * i, 8, 0, (i % 4 === 0 ? -0.35 : 0) * g] as const),
    ]);
    const walk = newWalk(van, fresh(van, celsius(60), qt(1.6)), fine, Math.min(fine, 0.02));
    const cut = ticks(turns);
    const engagement = noEngagement();
    const found: number[] = [];
    let over = false;
    for (let i = 0; i < cut.count; i++)
      tick(walk, cut.dt[i]!, cut.speed[i]!, cut.grade[i]!, cut.lateral[i]!, engagement, ({ state }) => {
        if (state.gas > 0.1 && !over) found.push(state.clock);
        over = state.gas > 0.1;
        return true;
      });
    return found;
  }

  it("are found: the usual steps see every gulp that ten times finer ones see, at its time", () => {
    const [usual, finest] = [gulps(0.05), gulps(0.005)];
    expect(finest.length).toBeGreaterThan(4);
    expect(usual.length).toBe(finest.length);
    usual.forEach((clock, i) => expect(Math.abs(clock - finest[i]!)).toBeLessThan(0.2));
  });
});

describe("kinks of the driving are stepped on", () => {
  /** When a single turn, begun at an odd instant, lets air in [s of running]. */
  function turnAt(start: number): number {
    const rows: [number, number, number, number][] = [[0, 0, 0, 0]];
    for (let s = 1; s <= 10; s++) rows.push([s, 0.8 * s, 0, 0]);
    for (let s = 14; s < start - 0.5; s += 4) rows.push([s, 8, 0, 0]);
    rows.push([start, 8, 0, -0.35 * g], [start + 3.3, 8, 0, 0], [start + 8, 8, 0, 0]);
    const week = daily(trace("one turn", rows));
    const history = simulate(plan(van, week, celsius(60), { span: hours(9), fillShort: qt(1.6) }));
    return named(history, "first gulp of air")!.running;
  }

  it("an event follows its turn by any part of a second", () => {
    const after = turnAt(20) - 20;
    for (const late of [0.13, 0.37, 0.5, 0.86]) expect(turnAt(20 + late) - 20 - late).toBeCloseTo(after, 1);
  });
});

describe("a run that cannot go on returns what it has, with the reason", () => {
  const week = rounds([8], { hardness: 1, hilliness: 1, duration: 1200 });
  const sudden = leaking("supply-line", hole(6e-3));
  const ends = (unit: typeof van, more: Partial<Plan> = {}, stopAfter = Infinity) =>
    simulate(plan(unit, week, celsius(10), { span: days(3), ...more }), (share) => share < stopAfter);
  const complete = (history: History) => {
    expect(history.trips.length).toBeGreaterThan(0);
    expect(Math.max(history.closure.mass, history.closure.leaked, history.closure.energy)).toBeLessThan(1e-9);
    for (let i = 1; i < history.events.length; i++)
      expect(history.events[i]!.clock).toBeGreaterThanOrEqual(history.events[i - 1]!.clock);
  };

  it("the span is over", () => {
    const history = ends(van);
    complete(history);
    expect(history.endedBy).toBe("end of span");
    expect(history.end.clock).toBe(days(3));
  });

  it("it was cancelled", () => {
    const history = ends(van, {}, 0.5);
    complete(history);
    expect(history.endedBy).toBe("cancelled");
    expect(history.end.clock).toBe(days(2));
  });

  it("the van no longer drives", () => {
    const history = ends({ ...van, leak: sudden });
    complete(history);
    expect(history.endedBy).toBe("no drive");
    expect(history.events.at(-1)!.name).toBe("no drive");
  });

  it("the driver stops", () => {
    const driver = { ...van.driver, whenBehind: "stops" } as const;
    const history = ends({ ...van, driver, leak: sudden });
    complete(history);
    expect(history.endedBy).toBe("driver stopped");
  });

  it("a unit with a last drop in it is a result too", () => {
    const history = ends({ ...van, leak: sudden }, { fillShort: 0.9999 * van.build.fill });
    complete(history);
    expect(history.endedBy).toBe("no drive");
    expect(history.end.mass).toBeLessThan(1e-3);
  });
});
