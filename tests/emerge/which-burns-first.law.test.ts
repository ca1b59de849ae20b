// Which clutch burns first follows from its margin, its duty and its area; nothing favours one in advance.
import { describe, expect, it, test } from "vitest";
import { nedcExtraUrban, nedcUrban } from "../../src/driving/nedc.ts";
import { everyDay, weekOf, type Week } from "../../src/driving/pattern.ts";
import { margins } from "../../src/history/margin.ts";
import { simulate } from "../../src/history/simulate.ts";
import type { Unit } from "../../src/physics/build.ts";
import type { Clutch } from "../../src/physics/clutch/geometry.ts";
import { temperColour, tintGrowth, tints, tintTimeRatio } from "../../src/physics/damage/tint.ts";
import { celsius, days, hole, leaking, named, plan, rounds, van } from "./van.ts";

const rated = margins(van);
const place = (name: string) => {
  const i = van.build.clutches.findIndex((clutch) => clutch.name === name);
  if (i < 0) throw new Error(`the van has no ${name}`);
  return i;
};

/** The van with some of its clutches changed. */
function withClutches(change: (clutch: Clutch, index: number) => Clutch): Unit {
  return { ...van, build: { ...van.build, clutches: van.build.clutches.map(change) } };
}

/** The van with given margins, by friction alone: area, mass, piston and passages stay as they are. */
function withMargins(margin: Readonly<Record<string, number>>, others: number): Unit {
  return withClutches((clutch, i) => {
    const factor = (margin[clutch.name] ?? others) / rated[i]!;
    const { base, rise } = clutch.friction;
    return { ...clutch, friction: { ...clutch.friction, base: base * factor, rise: rise * factor } };
  });
}

const leak = leaking("supply-line", hole(0.8e-3));
const town = rounds([8], { hardness: 1, hilliness: 1, duration: 2400 });

/** The clutch that is first at its end, in a unit that leaks fast. */
function firstBurnt(unit: Unit, week: Week): string | undefined {
  const history = simulate(plan({ ...unit, leak }, week, celsius(15), { span: days(4) }));
  return named(history, "damage 1")?.clutch;
}

describe("margin", () => {
  test.each([
    ["front clutch", "forward clutch"],
    ["band brake", "front clutch"],
    ["front brake", "forward clutch"],
  ])("whichever of %s and %s has the smaller one burns first", (one, other) => {
    expect(firstBurnt(withMargins({ [one]: 1.2, [other]: 2.4 }, 2.4), town)).toBe(one);
    expect(firstBurnt(withMargins({ [one]: 2.4, [other]: 1.2 }, 2.4), town)).toBe(other);
  });
});

describe("duty", () => {
  const week = (trace: typeof nedcUrban) =>
    weekOf(Array.from({ length: 12 }, (_, i) => ({ trace, startsAt: 28800 + 600 * i, days: everyDay })));

  it("a clutch that no driven gear asks for never burns, however weak", () => {
    const history = simulate(
      plan({ ...withMargins({ "reverse clutch": 1.01 }, 1.5), leak }, town, celsius(15)),
    );
    expect(named(history, "damage 1")?.clutch).toBeDefined();
    const reverse = history.clutches[place("reverse clutch")]!;
    expect(reverse.slips).toBe(0);
    expect(reverse.slipEnergy).toBe(0);
    expect(reverse.damage).toBeLessThan(0.01);
  });

  it("the weakest clutch of the high gears burns first out of town, and in town another does", () => {
    const weak = withMargins({ "direct clutch": 1.1 }, 1.6);
    expect(firstBurnt(weak, week(nedcExtraUrban))).toBe("direct clutch");
    const inTown = firstBurnt(weak, week(nedcUrban));
    expect(inTown).toBeDefined();
    expect(inTown).not.toBe("direct clutch");
  });
});

describe("area", () => {
  const index = place("front clutch");
  /** The front clutch with a share of its faces and steels, and as much more friction: what it carries stays. */
  const smaller = (share: number) =>
    withClutches((clutch, i) => {
      if (i !== index) return clutch;
      const { faces, steelMass, coolingArea, friction } = clutch;
      return {
        ...clutch,
        faces: faces * share,
        steelMass: steelMass * share,
        coolingArea: coolingArea * share,
        friction: { ...friction, base: friction.base / share, rise: friction.rise / share },
      };
    });
  const fate = (share: number) => {
    const history = simulate(plan(smaller(share), town, celsius(15), { span: days(3) }));
    return history.clutches[index]!;
  };

  it("leaves the margin as it was", () => {
    expect(margins(smaller(0.5))[index]!).toBeCloseTo(rated[index]!, 9);
  });

  it("half of it runs hotter and wears twice as fast by the same shifts", () => {
    const [whole, half] = [fate(1), fate(0.5)];
    expect(half.hottest).toBeGreaterThan(whole.hottest + 10);
    expect(half.worn / whole.worn).toBeGreaterThan(1.8);
    expect(half.worn / whole.worn).toBeLessThan(2.2);
  });
});

describe("heat tint", () => {
  it("tells temperature: every colour is another one", () => {
    const seen = tints.map(({ temperature }) => temperColour(temperature + 0.1, 300));
    expect(new Set(seen).size).toBe(tints.length);
  });

  it("and not the date: what 50 K do, two or three hundred times as long may do", () => {
    const ratio = (power: number) => tintTimeRatio(celsius(300), celsius(250), power);
    expect(ratio(tintGrowth.timePowerHigh) / ratio(tintGrowth.timePowerLow)).toBeGreaterThan(100);
  });

  it("a slow leak and a fast one leave the same colour on the steel, days apart", () => {
    const burnt = [0.8e-3, 0.4e-3].map((diameter) => {
      const slower = leaking("supply-line", hole(diameter));
      const history = simulate(plan({ ...van, leak: slower }, town, celsius(15), { span: days(14) }));
      return {
        at: named(history, "damage 1")!.clock,
        hottest: Math.max(...history.clutches.map(({ hottest }) => hottest)),
      };
    });
    expect(burnt[1]!.at).toBeGreaterThan(burnt[0]!.at + days(1));
    const [fast, slow] = burnt.map(({ hottest }) => temperColour(hottest, 60));
    expect(fast).not.toBe("bright");
    expect(slow).toBe(fast);
  });
});
