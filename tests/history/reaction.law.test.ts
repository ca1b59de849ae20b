// What the driver does when he first feels a flare or a slip: the history goes on or ends accordingly, and says why.
import { beforeAll, describe, expect, it } from "vitest";
import { idling } from "../../src/bay/ready.ts";
import { feels, noResolve, pour } from "../../src/history/reaction.ts";
import { simulate, type History } from "../../src/history/simulate.ts";
import { readCase } from "../../src/inputs/case.ts";
import { fluidNow } from "../../src/physics/chain.ts";
import { specificHeat } from "../../src/physics/fluid/specific-heat.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { dipstickReading } from "../../src/physics/sump/level.ts";
import { meanDepth } from "../../src/physics/sump/pan.ts";
import type { Driver, Reaction } from "../../src/physics/build.ts";
import { changed, faultsWith } from "../inputs/shipped.ts";
import { celsius, days, hole, leaking, named, plan, qt, rounds, van } from "../emerge/van.ts";

const week = rounds([8, 12], { hardness: 1, hilliness: 1, duration: 600 });
const drive = (driver: Partial<Driver>) =>
  simulate(
    plan(
      { ...van, driver: { ...van.driver, ...driver }, leak: leaking("supply-line", hole(0.9e-3)) },
      week,
      celsius(10),
      {
        span: days(4),
      },
    ),
  );
const closes = ({ closure: { mass, leaked, energy } }: History) =>
  expect(Math.max(mass, leaked, energy)).toBeLessThan(1e-9);
const toppedUp = (history: History) => history.events.filter(({ name }) => name === "topped up");

describe("at the first slip", () => {
  let alone: History;
  beforeAll(() => {
    alone = drive({});
  });
  const after = (reaction: Reaction) => drive({ atFirstSlip: reaction });
  const slip = (history: History) => named(history, "first sustained slip")!;

  it("who carries on drives until it no longer does", () => {
    expect(alone.endedBy).toBe("no drive");
    expect(toppedUp(alone)).toEqual([]);
  });

  it("who stops is spared all that would have come", () => {
    const history = after({ does: "stops" });
    expect(history.endedBy).toBe("driver stopped");
    expect(slip(history)).toEqual(slip(alone));
    expect(history.end.clock - slip(history).clock).toBeLessThan(3);
    for (const { slipEnergy, name } of history.clutches)
      expect(slipEnergy).toBeLessThanOrEqual(alone.clutches.find((other) => other.name === name)!.slipEnergy);
    closes(history);
  });

  it("who drives home stops there, within a step of his way", () => {
    const history = after({ does: "drives home", distance: 400 });
    expect(history.endedBy).toBe("drove home");
    const driven = history.end.distance - slip(history).distance;
    expect(driven).toBeGreaterThanOrEqual(400);
    expect(driven).toBeLessThan(400 + 5 * 30);
    closes(history);
  });

  it("who tops up does so at the end of that trip, once, and the books close over it", () => {
    const history = after({ does: "tops up", volume: 1.5e-3 });
    const [bottle, more] = toppedUp(history);
    expect(more).toBeUndefined();
    const { clock, condition } = bottle!;
    expect(clock).toBe(history.trips.find((trip) => trip.clock >= slip(history).clock)!.clock);
    expect(condition).toBe("1.50 L of 10 degC added by the driver after the first sustained slip");
    expect(history.ledger.massAdded / (1.5e-3 * density(van.fluid.density15, celsius(10)))).toBeCloseTo(1, 9);
    expect(history.end.distance).toBeGreaterThan(alone.end.distance);
    closes(history);
  });

  it("who pours warm fluid pours it warm, and what is there has the temperature of the mixture by heat", () => {
    for (const temperature of [celsius(-30), celsius(15), celsius(60)]) {
      const walk = idling(van, 1.5e-3, celsius(85));
      walk.road.ambient = celsius(-5);
      const { mass } = walk.state;
      const resolve = noResolve();
      feels(slip(alone), { does: "tops up", volume: 1e-3, temperature }, resolve);
      const told: string[] = [];
      pour(walk, resolve, (says) => told.push(says));
      expect(told).toEqual([
        `1.00 L of ${Math.round(temperature - 273.15)} degC added by the driver after the first sustained slip`,
      ]);
      // Heat that the hot fluid and the metal give is heat that the cold fluid takes; heats by a fine sum of c dT.
      const { density15 } = van.fluid;
      const poured = 1e-3 * density(density15, temperature);
      const heat = (from: number, to: number) => {
        const n = 1000;
        return (
          Array.from({ length: n }, (_, i) =>
            specificHeat(density15, from + ((i + 0.5) / n) * (to - from)),
          ).reduce((a, b) => a + b) *
          ((to - from) / n)
        );
      };
      fluidNow(van, walk.state, walk.now);
      const mixture = walk.now.temperature;
      const given = mass * heat(mixture, celsius(85)) + van.build.heat.metal * (celsius(85) - mixture);
      expect(given / (poured * heat(temperature, mixture))).toBeCloseTo(1, 6);
      expect(walk.state.mass).toBeCloseTo(mass + poured, 9);
    }
  });

  it("who fills to the full mark has the stick at it then, and nothing is added to a full one", () => {
    for (const short of [1.5e-3, 0.4e-3, -0.5e-3]) {
      const walk = idling(van, short, celsius(85));
      walk.road.ambient = celsius(15);
      const resolve = noResolve();
      feels(slip(alone), { does: "tops up", volume: "to the full mark" }, resolve);
      const told: string[] = [];
      const before = walk.state.mass;
      pour(walk, resolve, (says) => told.push(says));
      expect(told.length).toBe(short > 0 ? 1 : 0);
      if (short < 0) expect(walk.state.mass).toBe(before);
      const { state, unit, now } = walk;
      const inPan =
        state.mass / now.density - state.converter - state.lines - state.passages - state.inFlight;
      const reading = dipstickReading(meanDepth(unit.build.sump.pan, inPan), unit.build.sump.stick);
      if (short > 0) expect(reading).toBeCloseTo(1, 6);
      else expect(reading).toBeGreaterThan(1);
    }
  });
});

it("the first flare has its own", () => {
  const low = plan(van, rounds([8], { hardness: 1.3, hilliness: 1.5, duration: 600 }), celsius(20), {
    span: days(2),
    fillShort: qt(2),
  });
  const unit = { ...low.unit, driver: { ...van.driver, atFirstFlare: { does: "stops" } } } as const;
  expect(simulate(low).endedBy).toBe("end of span");
  const history = simulate({ ...low, unit });
  expect(history.endedBy).toBe("driver stopped");
  expect(history.end.clock - named(history, "first flare")!.clock).toBeLessThan(3);
});

describe("in a case", () => {
  it("is read with its units, and carrying on is what is not said", () => {
    const home = { does: "drives home", distance: "3 mi" };
    const fills = { does: "tops up", volume: "to the full mark" };
    const pint = { does: "tops up", volume: "1 pint" };
    const warm = { does: "tops up", volume: "to the full mark", temperature: "30 degC" };
    expect(
      readCase(changed(["driver", { pressOn: "0 s/m", easeOff: 1, whenBehind: "stops", atFirstSlip: warm }]))
        .unit.driver.atFirstSlip,
    ).toEqual({ ...warm, temperature: celsius(30) });
    const driver = (more: object) =>
      readCase(changed(["driver", { pressOn: "0 s/m", easeOff: 1, whenBehind: "stops", ...more }])).unit
        .driver;
    expect(driver({})).toMatchObject({
      atFirstFlare: { does: "carries on" },
      atFirstSlip: { does: "carries on" },
    });
    const both = driver({ atFirstFlare: fills, atFirstSlip: home });
    expect(both.atFirstFlare).toEqual(fills);
    expect(both.atFirstSlip).toEqual({ does: "drives home", distance: 3 * 1609.344 });
    expect(driver({ atFirstSlip: pint }).atFirstSlip).toEqual({ does: "tops up", volume: 473.176473e-6 });
  });

  it.each([
    [{ does: "tops up", volume: "0 qt" }, "driver.atFirstSlip.volume"],
    [{ does: "tops up", volume: 2 }, "driver.atFirstSlip.volume"],
    [{ does: "tops up", volume: "1 qt", temperature: "-300 degC" }, "driver.atFirstSlip.temperature"],
    [{ does: "tops up", volume: "1 qt", temperature: 20 }, "driver.atFirstSlip.temperature"],
    [{ does: "drives home" }, "driver.atFirstSlip.distance"],
    [{ does: "prays" }, "driver.atFirstSlip.does"],
  ])("%j is refused", (reaction, path) => {
    expect(faultsWith(["driver.atFirstSlip", reaction]).map((fault) => fault.path)).toEqual([path]);
  });
});
