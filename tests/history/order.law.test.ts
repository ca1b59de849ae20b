// How fast the error of a history shrinks with its steps: of second order while a clutch slips and where heat is settled once a tick.
import { Solver, type Derivative } from "odex";
import { describe, expect, test } from "vitest";
import { ticks } from "../../src/driving/ticks.ts";
import { settle } from "../../src/history/settle.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { slipFor } from "../../src/history/slip.ts";
import { simulate } from "../../src/history/simulate.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import type { Unit } from "../../src/physics/build.ts";
import { clutchesNow, fluidNow, supplyNow } from "../../src/physics/chain.ts";
import { turbinePerMetre, wheelForceFrom } from "../../src/physics/drivetrain.ts";
import { impellerTorque, turbineTorque } from "../../src/physics/load/converter.ts";
import { engineTorque } from "../../src/physics/load/engine.ts";
import { roadForce } from "../../src/physics/load/road.ts";
import { copyOf, fresh } from "../../src/physics/state.ts";
import { inFlightAfter } from "../../src/physics/sump/holdup.ts";
import { sloshFrequency, sloshStep } from "../../src/physics/sump/slosh.ts";
import { pumpTorque } from "../../src/physics/supply/pump.ts";
import { suctionGasAfter } from "../../src/physics/supply/suction.ts";
import { celsius, daily, days, hole, leaking, plan, qt, trace, van } from "../emerge/van.ts";

const { build } = van;
const heavy = <C extends { readonly steelMass: number }>(clutch: C): C => ({
  ...clutch,
  steelMass: 1e9 * clutch.steelMass,
});
/** The van with what moves slowly held still, so that engine, turbine and road speed are all that moves. */
const held: Unit = {
  ...van,
  build: {
    ...build,
    clutches: build.clutches.map(heavy),
    lockUp: { ...build.lockUp, clutch: heavy(build.lockUp.clutch) },
    heat: { ...build.heat, metal: 1e9 * build.heat.metal },
    holdUp: { ...build.holdUp, suction: 1e9 * build.holdUp.suction },
  },
};

/** Third gear at 12 m/s, the pump nearly dry, the pressure too low to hold; past the first jerk. */
const slipping = (() => {
  const state = fresh(held, 353.15, 4e-3);
  Object.assign(state, { gear: 2, speed: 12, slipping: true, gas: 0.98, engine: 330, turbine: 300 });
  const walk = newWalk(held, state);
  walk.pedal = 0.5;
  walk.road.wish = 1;
  fluidNow(held, walk.state, walk.now);
  for (let i = 0; i < 3000; i++) slipFor(walk, 0.3 / 3000);
  return walk;
})();

/** Engine, turbine and road speed after half a second of slip in so many looks. */
function slid(looks: number): number[] {
  const walk = newWalk(held, copyOf(slipping.state));
  Object.assign(walk, {
    pedal: slipping.pedal,
    engineTrend: slipping.engineTrend,
    turbineTrend: slipping.turbineTrend,
  });
  walk.road.wish = 1;
  Object.assign(walk.now.drive, slipping.now.drive);
  fluidNow(held, walk.state, walk.now);
  for (let i = 0; i < looks; i++) slipFor(walk, 0.5 / looks);
  return [walk.state.engine, walk.state.turbine, walk.state.speed];
}

describe("while a clutch slips", () => {
  const truth = slid(12_800);

  test.each([
    ["engine", 0],
    ["turbine", 1],
  ])("halving the look takes the error of the %s's speed to a quarter", (_, i) => {
    const errors = [50, 100, 200, 400].map((looks) => Math.abs(slid(looks)[i]! - truth[i]!));
    for (let k = 1; k < errors.length; k++) {
      const order = Math.log2(errors[k - 1]! / errors[k]!);
      expect(order).toBeGreaterThan(1.6);
      expect(order).toBeLessThan(2.6);
    }
  });

  test("the usual look is within a part in five thousand of an extrapolation solver on the same equations", () => {
    const { state, now, road, pedal } = slipping;
    const start = [state.engine, state.turbine, state.speed];
    const gear = build.gears[state.gear]!;
    const perMetre = turbinePerMetre(build, gear);
    const copy = copyOf(state);
    const rate: Derivative = (_, [engine, turbine, speed]) => {
      const driven = turbineTorque(build.converter, engine!, turbine!);
      supplyNow(held, copy, engine!, driven, false, now);
      clutchesNow(held, copy, gear, turbine! - perMetre * speed!, now);
      const pumping = pumpTorque(build.pump, now.line.linePressure);
      const pushed =
        (wheelForceFrom(build, gear, now.holds) - roadForce(build.vehicle, speed!, 0, 0)) /
        (build.vehicle.mass * build.vehicle.rotating);
      return [
        (engineTorque(build.engine, engine!, pedal) -
          pumping -
          impellerTorque(build.converter, engine!, turbine!)) /
          build.engine.inertia,
        (driven - now.holds) / build.shiftControl.turbineInertia,
        Math.min(road.wish, pushed),
      ];
    };
    const solver = new Solver(3);
    solver.relativeTolerance = solver.absoluteTolerance = 1e-9;
    solver.maxSteps = 1_000_000;
    const { y } = solver.solve(rate, 0, start, 0.5);
    slid(25).forEach((value, i) => expect(Math.abs(value / y[i]! - 1)).toBeLessThan(2e-4));
    slid(400).forEach((value, i) => expect(Math.abs(value / y[i]! - 1)).toBeLessThan(2e-5));
  });
});

describe("what is exact within a step is what a solver makes of its equation", () => {
  const solved = (rate: (y: number[]) => number[], start: number[], span: number) => {
    const solver = new Solver(start.length);
    solver.relativeTolerance = solver.absoluteTolerance = 1e-12;
    return solver.solve((_, y) => rate(y), 0, start, span).y;
  };

  test("slosh, weakly and strongly damped", () => {
    const w = sloshFrequency(0.4, 0.05);
    for (const damping of [0.02, 0.3, 1, 2.5]) {
      const surface = Float64Array.of(0.1, -0.3);
      sloshStep(surface, 0, 0.25, w, damping, 1.3);
      const y = solved(([s, v]) => [v!, w * w * (0.25 - s!) - 2 * damping * w * v!], [0.1, -0.3], 1.3);
      expect(surface[0]!).toBeCloseTo(y[0]!, 9);
      expect(surface[1]!).toBeCloseTo(y[1]!, 9);
    }
  });

  test("suction gas and fluid in flight", () => {
    const gas = solved(([x]) => [((0.4 - x!) * 3e-4) / 2e-4], [0.02], 0.7)[0]!;
    expect(suctionGasAfter(0.02, 0.4, 3e-4, 2e-4, 0.7)).toBeCloseTo(gas, 10);
    const flight = solved(([v]) => [2 - v! / 3.5], [1.1], 0.9)[0]!;
    expect(inFlightAfter(1.1, 2, 3.5, 0.9)).toBeCloseTo(flight, 10);
  });
});

const turns = trace("even turns", [
  [0, 0],
  ...Array.from({ length: 10 }, (_, i) => [i + 1, 0.8 * (i + 1)] as const),
  ...Array.from({ length: 60 }, (_, i) => [11 + i, 8, 0, -2.45 * Math.sin((2 * Math.PI * i) / 9)] as const),
]);

describe("a whole drive", () => {
  const cut = ticks(turns);
  const unit = { ...van, leak: leaking("supply-line", hole(1e-3)) };

  /** Lost [kg] and energy inside [J] after a minute with steps so fine. */
  function driven(fine: number): number[] {
    const state = fresh(unit, celsius(60), qt(1));
    state.leakAge = 0;
    const walk = newWalk(unit, state, fine, 0.4 * fine);
    const before = state.mass;
    const engagement = noEngagement();
    for (let i = 0; i < cut.count; i++)
      tick(walk, cut.dt[i]!, cut.speed[i]!, cut.grade[i]!, cut.lateral[i]!, engagement, () => true);
    settle(walk);
    return [before - walk.state.mass, walk.state.energy];
  }

  test("loses and heats as much to within one part in ten thousand, with steps an eighth as long in a hundred thousand", () => {
    const truth = driven(0.05 / 128);
    for (const i of [0, 1]) {
      const [usual, finer] = [0.05, 0.05 / 8].map((fine) => Math.abs(driven(fine)[i]! / truth[i]! - 1));
      expect(usual).toBeLessThan(1e-4);
      expect(finer).toBeLessThan(1e-5);
    }
  });
});

describe("being watched changes nothing", () => {
  test("a history told of day by day is the one that nobody asked about, to the bit", () => {
    const week = daily(turns);
    const given = plan({ ...van, leak: leaking("supply-line", hole(0.8e-3)) }, week, celsius(10), {
      span: days(5),
      fillShort: qt(1),
    });
    let told = 0;
    const watched = simulate(given, () => ++told > 0);
    expect(told).toBeGreaterThan(3);
    const alone = simulate(given);
    expect(watched.events).toEqual(alone.events);
    expect(watched.end).toEqual(alone.end);
  });
});
