// A growing leak passes weep, drip, stream in that order; how much of the loss falls in the last tenth of its time.
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { density } from "../../src/physics/fluid/density.ts";
import { dynamicViscosity } from "../../src/physics/fluid/fluid.ts";
import { surfaceTension } from "../../src/physics/fluid/surface-tension.ts";
import { closedLeak, hasParted, openingAt } from "../../src/physics/leaking.ts";
import type { LeakOpening } from "../../src/physics/build.ts";
import { leakFlow } from "../../src/physics/leak/flow.ts";
import { flowPower, shareInLast } from "../../src/physics/leak/power-growth.ts";
import { regime } from "../../src/physics/leak/regime.ts";
import { between } from "../between.ts";
import { celsius, days, gap, hole, hours, named, plan, rounds, shipped, van } from "./van.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { simulate } from "../../src/history/simulate.ts";

const warm = celsius(85);
const rho = density(van.fluid.density15, warm);
const mu = dynamicViscosity(van.fluid, warm, 0);
const pressure = 100e3;
const crack = shipped("parting-crack").unit.leak!;
const seep = shipped("slow-seep").unit.leak!;

/** Flow at an age, pressure and temperature held [m³/s]. */
function flowAt(opening: LeakOpening, age: number): number {
  const out = closedLeak();
  openingAt(out, opening, age, pressure, true);
  return leakFlow(out, pressure, mu, rho);
}

/** What shows at an age; the exit is a circle of the flow's own area at the ideal speed, or larger. */
function shows(opening: LeakOpening, dripRadius: number, age: number): string {
  const flow = flowAt(opening, age);
  const exit = Math.sqrt(flow / ((Math.PI / 4) * Math.sqrt((2 * pressure) / rho) * 0.61));
  return regime(flow, exit, dripRadius, rho, surfaceTension(warm), 0);
}

const order = ["dry", "weep", "drip", "stream"];

/** Steps of a sequence without its repetitions. */
const turns = (seen: readonly string[]) => seen.filter((what, i) => what !== seen[i - 1]);

/** Share of the loss between age 0 and `end` that falls in the last tenth of that time. */
function lastTenth(flow: (age: number) => number, end: number): number {
  const cells = 2000;
  let [all, last] = [0, 0];
  for (let i = 0; i < cells; i++) {
    const q = flow((end * (i + 0.5)) / cells);
    all += q;
    if (i >= 0.9 * cells) last += q;
  }
  return last / all;
}

describe("weep, drip, stream in that order", () => {
  it("a crack on its way to parting", () => {
    if (crack.opening.kind !== "crack") throw new Error("the case has another leak now");
    const young: LeakOpening = { ...crack.opening, halfLength: 0.6e-3 };
    const { partsAfter } = young;
    const seen = Array.from({ length: 401 }, (_, i) =>
      shows(young, crack.dripRadius, (partsAfter * i) / 400),
    );
    expect(turns(seen)).toEqual(["weep", "drip", "stream"]);
  });

  it("a seal that creeps, as far as it comes", () => {
    const from: LeakOpening = {
      ...gap(0.8e-6),
      finalClearance: 150e-6,
      creepTime: hours(100),
    } as LeakOpening;
    const seen = Array.from({ length: 401 }, (_, i) => shows(from, seep.dripRadius, (hours(600) * i) / 400));
    expect(turns(seen)).toEqual(["weep", "drip", "stream"]);
  });

  it("any growing hole never goes back", () => {
    fc.assert(
      fc.property(between(1e-6, 1e-4), between(1.01, 1.5), (first, factor) => {
        const seen = Array.from({ length: 40 }, (_, i) => shows(hole(first * factor ** i), 0.004, 0));
        const places = seen.map((what) => order.indexOf(what));
        for (let i = 1; i < places.length; i++) expect(places[i]!).toBeGreaterThanOrEqual(places[i - 1]!);
      }),
      { numRuns: 30 },
    );
  });
});

describe("the share of the loss in the last tenth of the time", () => {
  test.each([0, 1, flowPower.orifice, flowPower.slot, flowPower.longHole, 5.5, 6])(
    "is 1 - 0.9^(p + 1) for flow growing as t^%d",
    (power) => {
      const share = lastTenth((age) => age ** power, 1);
      expect(share).toBeCloseTo(1 - 0.9 ** (power + 1), 6);
      expect(share).toBeCloseTo(shareInLast(0.1, power), 6);
    },
  );

  it("passes one half only beyond p = 5.58: none of hole, slot and long hole of steadily growing size", () => {
    const limit = Math.log(0.5) / Math.log(0.9) - 1;
    expect(limit).toBeCloseTo(5.58, 2);
    for (const power of Object.values(flowPower)) expect(shareInLast(0.1, power)).toBeLessThan(0.5);
    expect(shareInLast(0.1, limit + 0.01)).toBeGreaterThan(0.5);
  });

  it("a steady hole, in orifice and seep alike, has one tenth", () => {
    expect(lastTenth((age) => flowAt(hole(0.3e-3), age), hours(100))).toBeCloseTo(0.1, 9);
  });

  it("a seal that creeps slows down: under an orifice that grows for ever", () => {
    const { opening } = seep;
    if (opening.kind !== "seal") throw new Error("the case has another leak now");
    const share = lastTenth((age) => flowAt(opening, age), 3 * opening.creepTime);
    expect(share).toBeGreaterThan(0.1);
    expect(share).toBeLessThan(0.2);
  });

  it("a fatigue crack runs away: more than half, up to where it parts", () => {
    const { opening } = crack;
    if (opening.kind !== "crack") throw new Error("the case has another leak now");
    expect(hasParted(opening, opening.partsAfter)).toBe(true);
    expect(lastTenth((age) => flowAt(opening, age), opening.partsAfter)).toBeGreaterThan(0.5);
  });
});

describe("in a history", () => {
  it("a hole that keeps its size loses a tenth in the last tenth of the running hours, while it is fed", () => {
    const leak = {
      ...seep,
      opening: hole(0.06e-3),
      hiding: { capacity: 0, carryOff: 0 },
      lineAbove: 0,
      height: 0.2,
    };
    const week = rounds([8], { hardness: 1, hilliness: 0, duration: 1200 }, 3);
    const { trips } = simulate(plan({ ...van, leak }, week, celsius(10), { span: days(21) }));
    const last = trips.at(-1)!;
    // Trips are short against the whole: the row nearest to nine tenths will do.
    const nine = trips.reduce((a, b) =>
      Math.abs(b.running - 0.9 * last.running) < Math.abs(a.running - 0.9 * last.running) ? b : a,
    );
    const share = (last.lost - nine.lost) / last.lost / (1 - nine.running / last.running);
    expect(share).toBeGreaterThan(0.9);
    expect(share).toBeLessThan(1.1);
  });

  it("the line of the case parts before the van has lost its drive, which it then does within minutes", () => {
    const given = shipped("parting-crack");
    const history = simulate(planOf(given));
    const [parts, end] = [named(history, "line parts")!, named(history, "no drive")!];
    expect(end.running - parts.running).toBeGreaterThan(0);
    expect(end.running - parts.running).toBeLessThan(600);
  });

  it("the crack of the case loses more than half in the last tenth before it parts or the van stops", () => {
    const given = shipped("parting-crack");
    const leak = { ...crack, opening: { ...crack.opening, partsAfter: hours(6) } as LeakOpening };
    const week = rounds([8, 13], { hardness: 1, hilliness: 1, duration: 2400 });
    const history = simulate(plan({ ...given.unit, leak }, week, celsius(5), { span: days(10) }));
    const end = named(history, "line parts") ?? history.events.at(-1)!;
    const before = history.trips.filter(({ running }) => running < 0.9 * end.running).at(-1)!;
    expect((end.lost - before.lost) / end.lost).toBeGreaterThan(0.5);
  });
});
