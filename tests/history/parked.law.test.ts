// What an opening is at a moment, what it loses while parked, and what a hole in the pan loses by its head.
import { describe, expect, it } from "vitest";
import { stand } from "../../src/history/parked.ts";
import { newWalk } from "../../src/history/walk.ts";
import type { FatigueCrack, Leak } from "../../src/physics/build.ts";
import { fluidNow, supplyNow } from "../../src/physics/chain.ts";
import { dynamicViscosity } from "../../src/physics/fluid/fluid.ts";
import { gravity } from "../../src/physics/fluid/surroundings.ts";
import { crackGap, crackOpening } from "../../src/physics/leak/crack.ts";
import { leakFlow } from "../../src/physics/leak/flow.ts";
import { holeOpening } from "../../src/physics/leak/hole.ts";
import { closedLeak, openingAt } from "../../src/physics/leaking.ts";
import { newNow } from "../../src/physics/now.ts";
import { fresh } from "../../src/physics/state.ts";
import { celsius, hole, leaking, van } from "../emerge/van.ts";

const height = 0.01;
const pinhole = (more: Partial<Leak> = {}) => leaking("pan", hole(0.5e-3), { height, ...more });
const opening = holeOpening(0.5e-3, 0.9e-3);

/** The van with a leak, cold, everything that drains already drained, its surface at rest. */
function standing(leak: Leak) {
  const unit = { ...van, leak };
  const state = fresh(unit, celsius(20));
  const { converter, converterDrains, passages, passagesDrain } = unit.build.holdUp;
  state.converter = converter * (1 - converterDrains);
  state.passages = passages * (1 - passagesDrain);
  state.leakAge = 0;
  const walk = newWalk(unit, state);
  walk.road.ambient = celsius(20);
  fluidNow(unit, state, walk.now);
  return walk;
}

describe("parked", () => {
  it("a short while loses what the hole lets out under the head above it", () => {
    const walk = standing(pinhole());
    stand(walk, 5, () => true);
    const { now, ledger } = walk;
    const head = now.density * gravity * (now.panDepth - height);
    const flow = leakFlow(opening, head, now.viscosity, now.density);
    expect(ledger.massLeaked / (flow * now.density * 5)).toBeCloseTo(1, 2);
  });

  it("a short while loses what the column in the line presses out, when that stands higher", () => {
    const lineAbove = 0.1e-3;
    const walk = standing(leaking("supply-line", hole(0.5e-3), { height: 1, lineAbove, columnHeight: 0.5 }));
    stand(walk, 1, () => true);
    const { now, ledger } = walk;
    const flow = leakFlow(opening, now.density * gravity * 0.5, now.viscosity, now.density);
    expect(ledger.massLeaked / (flow * now.density)).toBeCloseTo(1, 2);
  });
});

describe("parked for weeks", () => {
  it("a line above the pan loses what stands over the hole, and no more", () => {
    const lineAbove = 0.1e-3;
    const walk = standing(leaking("supply-line", hole(0.5e-3), { height: 1, lineAbove, columnHeight: 0.5 }));
    const full = walk.state.lines;
    stand(walk, 30 * 86400, () => true);
    expect(full - walk.state.lines).toBeCloseTo(lineAbove, 9);
    expect(walk.ledger.massLeaked / (lineAbove * walk.now.density)).toBeCloseTo(1, 3);
    const lost = walk.ledger.massLeaked;
    stand(walk, 30 * 86400, () => true);
    expect(walk.ledger.massLeaked / lost).toBeCloseTo(1, 9);
  });
});

describe("running", () => {
  it.each([0.001, 0.01, 0.03])("a hole in the pan %f m up leaks by the head above it", (height) => {
    const unit = { ...van, leak: pinhole({ height }) };
    const state = fresh(unit, celsius(80));
    state.leakAge = 0;
    const now = newNow(unit.build);
    fluidNow(unit, state, now);
    supplyNow(unit, state, unit.build.engine.idleSpeed, 0, false, now);
    const head = now.density * gravity * (now.panDepth - height);
    expect(now.leakFlow).toBeCloseTo(leakFlow(opening, head, now.viscosity, now.density), 15);
    expect(now.leakFlow).toBeGreaterThan(1e-8);
  });

  it("the cooler path is as thick as fluid halfway between sump and coolant", () => {
    const state = fresh(van, celsius(80));
    state.coolant = celsius(20);
    const now = newNow(van.build);
    fluidNow(van, state, now);
    supplyNow(van, state, 100, 0, false, now);
    expect(now.lineInput.pathViscosity).toBeCloseTo(dynamicViscosity(van.fluid, celsius(50), 0), 12);
  });
});

describe("a fatigue crack", () => {
  const crack: FatigueCrack = {
    kind: "crack",
    halfLength: 2e-3,
    partsAt: 8e-3,
    partsAfter: 3600,
    parisExponent: 3,
    wall: 0.9e-3,
    tubeRadius: 4.5e-3,
    modulus: 205e9,
    poisson: 0.29,
    bendingStress: 60e6,
    restGap: 2e-6,
  };
  const at = (age: number, pressure: number, running: boolean) => {
    const out = closedLeak();
    openingAt(out, crack, age, pressure, running);
    return out;
  };

  it("gapes by pressure and, while running, by bending, on top of what stays open", () => {
    for (const running of [true, false])
      for (const pressure of [0, 4e5]) {
        const stress = (pressure * crack.tubeRadius) / crack.wall + (running ? crack.bendingStress : 0);
        const { halfLength, modulus, tubeRadius, wall, poisson } = crack;
        const gape = crackGap(stress, halfLength, modulus, tubeRadius, wall, poisson);
        expect(at(0, pressure, running)).toMatchObject(
          crackOpening(2 * halfLength, crack.restGap, wall, gape),
        );
      }
    expect(at(0, 4e5, true).viscous).toBeLessThan(at(0, 0, true).viscous);
    expect(at(0, 0, true).viscous).toBeLessThan(at(0, 0, false).viscous);
  });

  it("is a tube of full bore once it has parted, and never tightens before", () => {
    const ages = [0, 600, 1800, 3000, 3500, 3599.9];
    const tight = ages.map((age) => at(age, 4e5, true).inertial);
    tight.forEach((inertial, i) => expect(inertial).toBeLessThan(i === 0 ? Infinity : tight[i - 1]!));
    expect(at(3600, 4e5, true)).toMatchObject(holeOpening(2 * crack.tubeRadius - crack.wall, crack.wall));
    expect(at(3600, 4e5, true).inertial).toBeLessThan(tight.at(-1)!);
  });
});
