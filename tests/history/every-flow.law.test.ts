// A thousandth left out of a flow is noticed: each against what it must be by its own law, worked out here.
import { describe, expect, test } from "vitest";
import { idleInNeutral } from "../../src/history/idle.ts";
import { stand } from "../../src/history/parked.ts";
import { simulate } from "../../src/history/simulate.ts";
import { newWalk } from "../../src/history/walk.ts";
import { fluidNow, supplyNow } from "../../src/physics/chain.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { gravity } from "../../src/physics/fluid/surroundings.ts";
import { leakFlow } from "../../src/physics/leak/flow.ts";
import { holeOpening } from "../../src/physics/leak/hole.ts";
import { newNow } from "../../src/physics/now.ts";
import { fresh } from "../../src/physics/state.ts";
import { drainedAfter, returnTime } from "../../src/physics/sump/holdup.ts";
import { panCapacity } from "../../src/physics/sump/pan.ts";
import {
  circuitAtFeed,
  stillCircuit,
  type CircuitConditions,
} from "../../src/physics/supply/cooler-circuit.ts";
import { celsius, daily, days, hole, hours, leaking, plan, trace, van } from "../emerge/van.ts";

const tenth = 1e-4; // a tenth of a thousandth

test("what is poured in is in the unit: volume × density at its temperature", () => {
  const week = daily(
    trace("still", [
      [0, 0],
      [60, 0],
    ]),
  );
  const given = plan(van, week, celsius(20), { span: days(2) });
  const poured = { at: hours(20), volume: 0.7e-3, temperature: celsius(5) };
  const more = simulate({ ...given, topUps: [poured] }).end.mass - simulate(given).end.mass;
  expect(more / (0.7e-3 * density(van.fluid.density15, celsius(5)))).toBeCloseTo(1, 9);
});

test("two bottles of one moment, and bottles told in any order, are all poured in at their time", () => {
  const week = daily(
    trace("still", [
      [0, 0],
      [60, 0],
    ]),
  );
  const bottle = (at: number) => ({ at, volume: 0.2e-3, temperature: celsius(20) });
  const topUps = [bottle(hours(30)), bottle(hours(3)), bottle(hours(3))];
  const { events, end } = simulate(plan(van, week, celsius(20), { span: days(2), topUps }));
  const poured = events.filter(({ name }) => name === "topped up").map(({ clock }) => clock);
  expect(poured).toEqual([hours(3), hours(3), hours(30)]);
  const without = simulate(plan(van, week, celsius(20), { span: days(2) })).end.mass;
  expect((end.mass - without) / (0.6e-3 * density(van.fluid.density15, celsius(20)))).toBeCloseTo(1, 9);
});

describe("what is thrown off and on its way down is what clutches and feed take, less what leaks and what the relief lets go", () => {
  test.each([
    ["through a large hole", Infinity, leaking("supply-line", hole(3e-3))],
    ["with a relief that opens early", 20e3, null],
  ])("%s", (_, relief, leak) => {
    const unit = { ...van, leak, build: { ...van.build, cooler: { ...van.build.cooler, relief } } };
    const state = fresh(unit, celsius(60));
    if (leak !== null) state.leakAge = 0;
    const walk = newWalk(unit, state);
    fluidNow(unit, state, walk.now);
    const { energy, mass } = state;
    const hold = () => {
      // Fluid and temperature are held, so that all flows come to rest.
      Object.assign(state, { energy, mass });
      fluidNow(unit, state, walk.now);
      return true;
    };
    idleInNeutral(walk, 1200, van.build.engine.idleSpeed, hold);
    const { line, viscosity } = walk.now;
    const { holdUp } = van.build;
    const back = returnTime(holdUp.hotReturnTime, viscosity, holdUp.hotViscosity, holdUp.returnExponent);
    const thrown = (line.clutchFlow + line.feed - line.relief - line.leak) * (1 - line.lineGas);
    expect(leak === null ? line.relief : line.leak).toBeGreaterThan(0.02 * line.feed);
    expect(Math.abs(state.inFlight / (thrown * back) - 1)).toBeLessThan(tenth);
  });
});

test.each(["pan-seam", "pan"] as const)(
  "a hole at the %s leaks under the surface and under what the pan cannot hold",
  (place) => {
    const { pan } = van.build.sump;
    const leak = {
      ...leaking(place, hole(2e-3)),
      height: 0.9 * pan.height,
      x: pan.length / 2,
      y: pan.width / 2,
    };
    const unit = { ...van, leak };
    const state = fresh(unit, celsius(20), -6e-3); // far too full
    state.leakAge = 0;
    const now = newNow(unit.build);
    fluidNow(unit, state, now);
    supplyNow(unit, state, van.build.engine.idleSpeed, 0, false, now);
    const over = (now.panVolume - panCapacity(pan)) / (pan.free * pan.length * pan.width);
    expect(over).toBeGreaterThan(0.01);
    const head = now.density * gravity * (pan.height + over - leak.height);
    const flow = leakFlow(holeOpening(2e-3, 0.9e-3), head, now.viscosity, now.density);
    expect(Math.abs(now.leakFlow / flow - 1)).toBeLessThan(tenth);
  },
);

test("parked overfull, a hole in the pan loses by the whole height that stands over it", () => {
  const { pan } = van.build.sump;
  const area = pan.free * pan.length * pan.width;
  const holdUp = { ...van.build.holdUp, converterDrains: 0, passagesDrain: 0 };
  const leak = { ...leaking("pan", hole(0.3e-3)), height: 0.005 };
  const unit = { ...van, leak, build: { ...van.build, holdUp } };
  const state = fresh(unit, celsius(20), -6e-3);
  state.leakAge = 0;
  const walk = newWalk(unit, state);
  walk.road.ambient = celsius(20);
  fluidNow(unit, state, walk.now);
  stand(walk, 60, () => true); // what was thrown about is down
  const { now } = walk;
  const full = state.mass / now.density - state.converter - state.lines - state.passages - state.inFlight;
  expect(full).toBeGreaterThan(panCapacity(pan));
  const before = state.mass;
  stand(walk, 10, () => true);
  const flow = leakFlow(
    holeOpening(0.3e-3, 0.9e-3),
    now.density * gravity * (full / area - leak.height),
    now.viscosity,
    now.density,
  );
  expect(Math.abs((before - state.mass) / now.density / (10 * flow) - 1)).toBeLessThan(1e-3); // ten seconds of sinking
});

test("draining for two halves of a time is draining for the whole, and for none of it nothing", () => {
  expect(drainedAfter(3e-3, 1e-3, 900, 0)).toBe(3e-3);
  const twice = drainedAfter(drainedAfter(3e-3, 1e-3, 900, 700), 1e-3, 900, 700);
  expect(twice / drainedAfter(3e-3, 1e-3, 900, 1400)).toBeCloseTo(1, 12);
});

test("a leak at the converter's outlet sees the outlet's pressure", () => {
  const conditions: CircuitConditions = {
    temperature: 360,
    viscosity: 7e-3,
    pathViscosity: 11e-3,
    density: 830,
    leakPlace: "converter-outlet",
    leakViscous: 1e30, // as good as shut
    leakInertial: 0,
    leakViscosity: 7e-3,
  };
  const [leaky, tight] = [stillCircuit(), stillCircuit()];
  circuitAtFeed(van.build.cooler, conditions, 1e-4, leaky);
  circuitAtFeed(van.build.cooler, { ...conditions, leakPlace: "none" }, 1e-4, tight);
  expect(leaky.leakPressure / tight.nodePressure).toBeCloseTo(1, 9);
});
