// Cold fluid: at equal pressure a viscous leak is slower and an inertial one equal; on the pressure side of a cold cooler the
// higher pressure can reverse this.
import { describe, expect, it } from "vitest";
import { holdAt, idling } from "../../src/bay/ready.ts";
import { idleInNeutral } from "../../src/history/idle.ts";
import type { LeakOpening, LeakPlace } from "../../src/physics/build.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { dynamicViscosity } from "../../src/physics/fluid/fluid.ts";
import { closedLeak, openingAt } from "../../src/physics/leaking.ts";
import { leakFlow } from "../../src/physics/leak/flow.ts";
import { celsius, gap, hole, leaking, van } from "./van.ts";

const { fluid } = van;
const pressure = 150e3;
const cold = celsius(0);
const hot = celsius(90);

/** Flow out of an opening at one pressure and a temperature [m³/s]. */
function atEqualPressure(opening: LeakOpening, temperature: number): number {
  const out = closedLeak();
  openingAt(out, opening, 0, pressure, true);
  const viscosity = dynamicViscosity(fluid, temperature, 0);
  return leakFlow(out, pressure, viscosity, density(fluid.density15, temperature));
}

/** Flow out of an opening on the idling van, with the pressure that there is there [m³/s, Pa]. */
function inPlace(place: LeakPlace, opening: LeakOpening, temperature: number) {
  const walk = idling({ ...van, leak: leaking(place, opening) }, 0, temperature);
  walk.state.leakAge = 0;
  idleInNeutral(walk, 2, van.build.engine.idleSpeed, () => holdAt(walk, temperature));
  return { flow: walk.now.leakFlow, pressure: walk.now.line.leakPressure };
}

const viscous = gap(15e-6);
const inertial = hole(1e-3, 0.3e-3);

describe("at equal pressure", () => {
  it("a leak through a fine gap is slower cold, by the viscosity", () => {
    const thinner = dynamicViscosity(fluid, cold, 0) / dynamicViscosity(fluid, hot, 0);
    const ratio = atEqualPressure(viscous, hot) / atEqualPressure(viscous, cold);
    expect(thinner).toBeGreaterThan(20);
    expect(ratio / thinner).toBeGreaterThan(0.95);
    expect(ratio / thinner).toBeLessThanOrEqual(1);
  });

  it("a leak through a wide thin hole is equal but for the root of the density, the wider the nearer", () => {
    const lighter = Math.sqrt(density(fluid.density15, cold) / density(fluid.density15, hot));
    const excess = [1e-3, 2e-3, 4e-3, 16e-3].map((diameter) => {
      const opening = hole(diameter, 0.1 * diameter);
      return atEqualPressure(opening, hot) / atEqualPressure(opening, cold) / lighter - 1;
    });
    for (let i = 1; i < excess.length; i++) expect(excess[i]!).toBeLessThan(excess[i - 1]!);
    expect(lighter).toBeLessThan(1.05);
    expect(excess.at(-1)!).toBeGreaterThan(0);
    expect(excess.at(-1)!).toBeLessThan(0.02);
  });

  it("the colder, the slower, whatever the opening", () => {
    for (const opening of [viscous, inertial, hole(0.3e-3)]) {
      const flows = [-20, 0, 20, 40, 60, 80, 100].map((t) => atEqualPressure(opening, celsius(t)));
      for (let i = 1; i < flows.length; i++) expect(flows[i]!).toBeGreaterThan(flows[i - 1]!);
    }
  });
});

describe("in the line before a cold cooler", () => {
  it("the pressure is several times as high cold as hot", () => {
    const before = inPlace("supply-line", viscous, cold).pressure;
    expect(before).toBeGreaterThan(3 * inPlace("supply-line", viscous, hot).pressure);
  });

  it("that reverses a hole: it loses more cold", () => {
    expect(inPlace("supply-line", inertial, cold).flow).toBeGreaterThan(
      1.3 * inPlace("supply-line", inertial, hot).flow,
    );
  });

  it("and slows a fine gap less than its viscosity would, but slows it", () => {
    const slowing = inPlace("supply-line", viscous, hot).flow / inPlace("supply-line", viscous, cold).flow;
    expect(slowing).toBeGreaterThan(1.5);
    expect(slowing).toBeLessThan(0.5 * (atEqualPressure(viscous, hot) / atEqualPressure(viscous, cold)));
  });
});
