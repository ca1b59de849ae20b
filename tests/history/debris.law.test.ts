// At the end of a history: what each clutch has lost, and how old the fluid is after fresh has been added.
import { beforeAll, describe, expect, it } from "vitest";
import { topUp } from "../../src/history/parked.ts";
import { simulate, type History } from "../../src/history/simulate.ts";
import { newWalk } from "../../src/history/walk.ts";
import { faceArea } from "../../src/physics/clutch/geometry.ts";
import { liningDensity } from "../../src/physics/damage/debris.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { ageAfterTopUp } from "../../src/physics/fluid/ageing.ts";
import { fresh } from "../../src/physics/state.ts";
import { celsius, days, hole, hours, leaking, plan, rounds, van } from "../emerge/van.ts";

const week = rounds([8, 12], { hardness: 1, hilliness: 1, duration: 600 });

describe("lost lining", () => {
  let sound: History;
  let burnt: History;
  beforeAll(() => {
    sound = simulate(plan(van, week, celsius(10), { span: days(2) }));
    burnt = simulate(
      plan({ ...van, leak: leaking("supply-line", hole(0.9e-3)) }, week, celsius(10), { span: days(4) }),
    );
  });

  it("is what wear and char say, clutch by clutch", () => {
    [...van.build.clutches, van.build.lockUp.clutch].forEach((clutch, i) => {
      const { worn, charred, debris } = burnt.clutches[i]!;
      const area = clutch.faces * faceArea(clutch);
      expect(debris.worn).toBeCloseTo(liningDensity * area * worn, 12);
      expect(debris.charred).toBeCloseTo(
        liningDensity * area * (clutch.liningThickness - worn) * charred,
        12,
      );
    });
  });

  it("is more from the clutch that slipped until it no longer drove than from any of a sound unit", () => {
    expect(burnt.endedBy).toBe("no drive");
    const most = ({ clutches }: History) => Math.max(...clutches.map(({ debris }) => debris.least));
    expect(most(burnt)).toBeGreaterThan(10 * most(sound));
    for (const { debris } of sound.clutches) expect(debris.charred).toBeLessThan(1e-6);
  });
});

describe("fluid mixed by a top-up", () => {
  it("is as old as its parts by mass, and books what was poured in", () => {
    const walk = newWalk(van, fresh(van, celsius(40), 2e-3));
    walk.state.fluidAge = 0.4;
    const { mass } = walk.state;
    topUp(walk, 1.5, celsius(10));
    expect(walk.state.fluidAge).toBeCloseTo(ageAfterTopUp(0.4, mass, 1.5), 15);
    expect(walk.ledger.massAdded).toBe(1.5);
  });

  it("in a history is younger than without, and goes on ageing from there", () => {
    const bottle = { at: days(1), volume: 1e-3, temperature: celsius(15) };
    const low = plan(van, week, celsius(10), { span: days(2), fillShort: 1e-3 });
    const without = simulate(low).end.fluidAge;
    const before = simulate({ ...low, span: days(1) - hours(1) }).end;
    const after = simulate({ ...low, topUps: [bottle] }).end.fluidAge;
    const mixed = ageAfterTopUp(
      before.fluidAge,
      before.mass,
      1e-3 * density(van.fluid.density15, celsius(15)),
    );
    expect(after).toBeLessThan(without);
    expect(after).toBeGreaterThan(mixed);
  });
});
