// A pan too full is told; what of it foams, heats and is thrown out is not computed, so nothing else may follow from it.
import { describe, expect, it } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { weekOf } from "../../src/driving/pattern.ts";
import { simulate } from "../../src/history/simulate.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { panCapacity } from "../../src/physics/sump/pan.ts";
import { celsius, daily, days, named, plan, qt, taxi, van } from "../emerge/van.ts";

const week = daily(nedc);
const driven = (unit: typeof van, tooMuch: number, more = {}) =>
  simulate(plan(unit, week, celsius(15), { span: days(2), fillShort: -tooMuch, ...more }));

describe("pan overfull", () => {
  it.each([
    ["van", van],
    ["taxi", taxi],
  ])("is told of the %s from a fill on, and below that of none", (_, unit) => {
    const fills = Array.from({ length: 13 }, (_, i) => 0.25e-3 * i);
    const told = fills.map((tooMuch) => named(driven(unit, tooMuch), "pan overfull") !== undefined);
    expect(told[0]).toBe(false);
    expect(told.at(-1)).toBe(true);
    expect(told.indexOf(true)).toBe(told.lastIndexOf(false) + 1);
    // What is too much is at least what the pan has room for over the mark that a right fill reaches, hot.
    const { pan, stick } = unit.build.sump;
    const room = panCapacity(pan) * (1 - stick.full / pan.height);
    expect(fills[told.indexOf(true)]).toBeGreaterThan(room);
  });

  it("comes with the bottle that is one too many, says what makes it so, and is told once", () => {
    const topUps = [{ at: days(1) + 3600, volume: qt(3), temperature: celsius(15) }];
    const history = driven(van, 0, { topUps });
    const event = named(history, "pan overfull")!;
    expect(event.clock).toBeGreaterThan(days(1));
    expect(event.condition).toMatch(/over the top of the pan.*30 s/);
    expect(history.events.filter(({ name }) => name === "pan overfull")).toHaveLength(1);
    // Over the top stands no more than is there at all.
    expect(event.mass / density(van.fluid.density15, event.temperature)).toBeGreaterThan(
      panCapacity(van.build.sump.pan),
    );
  });

  it("is not told of a stand: nothing turns", () => {
    const parked = simulate(plan(van, weekOf([]), celsius(15), { span: days(2), fillShort: -6e-3 }));
    expect(parked.events).toEqual([]);
  });
});
