// Holes that go on growing: a pit by the calendar, a rubbed spot by running time, and a wall that is rubbed through on the way.
import { describe, expect, it } from "vitest";
import { atTheLeak } from "../../src/bay/at-the-leak.ts";
import { simulate } from "../../src/history/simulate.ts";
import { readCase } from "../../src/inputs/case.ts";
import { planOf } from "../../src/inputs/plan.ts";
import type { LeakOpening } from "../../src/physics/build.ts";
import { holeOpening } from "../../src/physics/leak/hole.ts";
import { corrosionDepth, pitRange } from "../../src/physics/leak/pits.ts";
import { timeToThrough } from "../../src/physics/leak/rub-through.ts";
import { closedLeak, mouthOf, openingAt } from "../../src/physics/leaking.ts";
import { changed, faultsWith } from "../inputs/shipped.ts";
import { celsius, daily, days, hours, leaking, named, plan, trace, van } from "../emerge/van.ts";

const pit: LeakOpening = {
  kind: "pit",
  diameter: 0.4e-3,
  after: days(100),
  exponent: 1 / 3,
  wall: 0.9e-3,
  bore: 8e-3,
};
const rub: LeakOpening = {
  kind: "rub",
  tubeRadius: 5e-3,
  wall: 0.9e-3,
  contact: 1e-3,
  depthInHundredHours: 5e-6,
};
const week = daily(
  trace(
    "out and back",
    Array.from({ length: 61 }, (_, i) => [2 * i, Math.min(10, 2 * i, 2 * (60 - i))] as const),
  ),
);
const flowAtEnd = (opening: LeakOpening, span: number) =>
  simulate(plan({ ...van, leak: leaking("supply-line", opening) }, week, celsius(15), { span })).trips.at(-1)!
    .leakFlow;

describe("while the vehicle stands", () => {
  it("a pit grows and a rubbed spot does not", () => {
    const sizes = (opening: LeakOpening) =>
      [0, days(50)].map((calendar) => {
        const out = closedLeak();
        openingAt(out, opening, hours(10), 0, false, hours(10) + calendar);
        return out.inertial;
      });
    const [young, old] = sizes(pit);
    expect(old).toBeLessThan(young!);
    expect(sizes(rub)[0]).toBe(sizes(rub)[1]);
  });

  it("a pit counts the days since it came through", () => {
    const leak = leaking("supply-line", pit);
    const { end } = simulate(
      plan({ ...van, leak }, week, celsius(15), { span: days(20), opens: { after: days(5) } }),
    );
    expect(end.leakOpenedAt).toBe(days(5));
    expect(end.leakAge).toBeLessThan(hours(1));
    const width = mouthOf(pit, end.leakAge, end.clock - end.leakOpenedAt);
    expect(width).toBeCloseTo(corrosionDepth(0.4e-3, days(100), days(15), 1 / 3), 12);
  });
});

it("the leak flow follows: more from week to week, and drops by the same opening", () => {
  for (const opening of [pit, { ...pit, aspect: 1 }, rub]) {
    const flows = [2, 8, 30].map((n) => flowAtEnd(opening, days(n)));
    expect(flows[1]).toBeGreaterThan(flows[0]!);
    expect(flows[2]).toBeGreaterThan(flows[1]!);
    const look = { age: hours(1), calendar: days(30), temperature: celsius(80), flow: flows[2]! };
    expect(atTheLeak({ ...van, leak: leaking("supply-line", opening) }, look).drops).toBeGreaterThan(0);
  }
});

describe("in a case", () => {
  const common = { place: "return-line", wall: "0.9 mm" };
  const rubbed = {
    kind: "rub",
    ...common,
    tubeDiameter: "10 mm",
    contact: "15 mm",
    wornInHundredHours: "0.2 mm",
  };
  const pitted = {
    kind: "pit",
    ...common,
    material: "steel",
    diameter: "0.4 mm",
    after: "100 days",
    bore: "8.2 mm",
  };

  it("a pit takes its exponent from the material", () => {
    const { unit } = readCase(changed(["leak", pitted]));
    expect(unit.leak!.opening).toMatchObject({ kind: "pit", after: days(100), exponent: 0.523 });
  });

  it("a round pit has the width that was told at its time, resists as an edge there, and its way through the wall counts as rusting", () => {
    const asked = readCase(changed(["leak", { ...pitted, aspect: "1" }], ["fillShort", "0 qt"]));
    const round = asked.unit.leak!.opening;
    expect(round).toMatchObject({ kind: "pit", aspect: 1 });
    const out = closedLeak();
    openingAt(out, round, 0, 0, false, days(100));
    const edged = holeOpening(0.4e-3, 0);
    expect(out.viscous / edged.viscous).toBeCloseTo(1, 9);
    expect(out.inertial / edged.inertial).toBeCloseTo(1, 9);
    // A pit that is hardly wider after a year took over twenty to come through: more than rust was followed.
    const slow = { ...pit, aspect: 1, diameter: 0.1e-3, after: days(365) };
    const short = (opening: LeakOpening) =>
      simulate(plan({ ...van, leak: leaking("supply-line", opening) }, week, celsius(15), { span: days(1) }))
        .outside;
    expect(short(slow).filter((line) => line.startsWith(pitRange.law))).toHaveLength(1);
    expect(short(pit).filter((line) => line.startsWith(pitRange.law))).toEqual([]);
  });

  it("a wall still being rubbed is through after its running hours, within a tick", () => {
    const given = readCase(changed(["leak", { ...rubbed, wornAtStart: "0.8998 mm" }], ["opens", undefined]));
    const due = timeToThrough(5e-3, 0.9e-3, 0.8998e-3, 0.2e-3);
    if (!("running" in given.opens)) throw new Error("the leak opens by another measure");
    expect(given.opens.running / due).toBeCloseTo(1, 9);
    const opens = named(simulate({ ...planOf(given), span: days(7) }), "leak opens")!;
    expect(opens.running).toBeCloseTo(due, 6);
  });

  it.each([
    ["a mouth wider than the bore", { ...pitted, diameter: "9 mm" }, "leak.diameter"],
    ["a pit without depth", { ...pitted, aspect: "0" }, "leak.aspect"],
    ["a pan rubbed flat", { ...rubbed, place: "pan" }, "leak.place"],
    ["a wall thicker than the tube", { ...rubbed, wall: "6 mm" }, "leak.wall"],
    [
      "more than half the tube rubbed off",
      { ...rubbed, wornInHundredHours: "6 mm" },
      "leak.wornInHundredHours",
    ],
    ["more gone than there was", { ...rubbed, wornAtStart: "1 mm" }, "leak.wornAtStart"],
  ])("%s is refused", (_, leak, path) => {
    expect(faultsWith(["leak", leak], ["opens", undefined]).map((fault) => fault.path)).toEqual([path]);
  });

  it("a wall still being rubbed leaves no other moment for the leak to open", () => {
    const faults = faultsWith(["leak", { ...rubbed, wornAtStart: "0.4 mm" }], ["opens", { after: "1 day" }]);
    expect(faults.map(({ path }) => path)).toEqual(["opens"]);
  });
});
