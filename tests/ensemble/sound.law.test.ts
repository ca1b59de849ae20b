// Draws are units that somebody would have built: full and tight they feed their cooler and keep their pickup covered.
import { describe, expect, it } from "vitest";
import { members, variable } from "../../src/ensemble/members.ts";
import { isSound } from "../../src/ensemble/sound.ts";
import { simulate } from "../../src/history/simulate.ts";
import { caseData } from "../../src/inputs/files.ts";
import { planOf } from "../../src/inputs/plan.ts";
import type { Build } from "../../src/physics/build.ts";
import { caseFile } from "../inputs/shipped.ts";
import { taxi, van } from "../emerge/van.ts";

describe.each([van, taxi])("the $build.name", (unit) => {
  const { build } = unit;
  const { pickup, pan } = build.sump;
  const changed = (parts: Partial<Build>) => isSound({ ...unit, build: { ...build, ...parts } });

  it("is sound", () => expect(isSound(unit)).toBe(true));

  it("is not with a pump too small, a leaky clutch circuit, or too little fluid", () => {
    expect(changed({ pump: { ...build.pump, displacement: 0.6 * build.pump.displacement } })).toBe(false);
    expect(
      changed({ clutchCircuit: { ...build.clutchCircuit, laminar: 5 * build.clutchCircuit.laminar } }),
    ).toBe(false);
    expect(changed({ fill: build.fill - 2.2e-3 })).toBe(false);
  });

  it("is not with its pickup in a corner or near the surface", () => {
    const moved = (more: Partial<typeof pickup>) =>
      changed({ sump: { ...build.sump, pickup: { ...pickup, ...more } } });
    expect(moved({ x: pan.length, y: pan.width })).toBe(false);
    expect(moved({ x: 0, y: 0 })).toBe(false);
    expect(moved({ height: 0.04 })).toBe(false);
  });

  it("stays sound with less asked of the pan: a wider pickup rim and a lower mouth", () => {
    expect(
      changed({
        sump: { ...build.sump, pickup: { ...pickup, height: 0.5 * pickup.height, rim: 1.2 * pickup.rim } },
      }),
    ).toBe(true);
  });
});

describe("members", () => {
  const demo = caseData(caseFile("demo"));
  const [n, seed] = [30, 4];
  const drawn = members(demo, n, seed);
  const all = members(demo, n, seed, { unsoundToo: true });

  it("are sound, every one, and what was passed over is counted", () => {
    const { at } = variable(demo);
    for (const { values } of drawn.members) expect(isSound(at(values)!.unit)).toBe(true);
    expect(drawn.unsound).toBeGreaterThan(0);
    expect(drawn.members.at(-1)!.point + 1).toBe(n + drawn.refused + drawn.unsound);
    expect(all.unsound).toBe(0);
    expect(
      drawn.members.every(
        ({ point, values }) => point >= n || same(all.members[point - all.refused]!.values, values),
      ),
    ).toBe(true);
  });

  it("show nothing in a tight week, but for a few, where of all draws a third do", () => {
    const ails = (of: typeof drawn) => {
      const { at } = variable(demo);
      return of.members.filter(({ values }) => {
        const given = at(values)!;
        const { events } = simulate(
          planOf({ ...given, unit: { ...given.unit, leak: null }, span: 7 * 86400 }),
        );
        return events.length > 0;
      }).length;
    };
    const [kept, before] = [ails(drawn), ails(all)];
    expect(before).toBeGreaterThan(0.2 * n);
    expect(kept).toBeLessThanOrEqual(0.15 * n);
  }, 120_000);

  it("are all kept where the unit as written is not sound itself", () => {
    const small = structuredClone(demo) as { build: { pump: { displacement: unknown } } };
    small.build.pump.displacement = "12 cm3/rev";
    expect(members(small, 5, 1).unsound).toBe(0);
  });
});

const same = (a: Float64Array, b: Float64Array) => a.every((x, i) => x === b[i]);
