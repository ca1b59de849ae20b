// What goes with a leak and what each way to renew it costs: worked by hand, and what must hold whatever the prices.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  chancesOf,
  goneWith,
  laterLeakCost,
  parts,
  wayCosts,
  ways,
  type Prices,
  type Ruined,
} from "../../src/decisions/renewal.ts";
import { prices } from "./prices.ts";

const sound: Omit<Ruined, "share"> = { clutches: false, lockUp: false, burnt: false };

describe("parts that go with it", () => {
  test("a burnt clutch takes the converter and the cooler along, a slipping lock-up the converter alone", () => {
    expect(goneWith(sound)).toEqual([]);
    expect(goneWith({ ...sound, clutches: true })).toEqual(["clutches"]);
    expect(goneWith({ ...sound, lockUp: true })).toEqual(["converter"]);
    expect(goneWith({ clutches: true, lockUp: false, burnt: true })).toEqual([
      "cooler",
      "converter",
      "clutches",
    ]);
  });

  test("chances are summed over the cases in which each is gone", () => {
    const cases: Ruined[] = [
      { ...sound, share: 0.5 },
      { clutches: true, lockUp: false, burnt: true, share: 0.3 },
      { ...sound, lockUp: true, share: 0.2 },
    ];
    const { cooler, converter, clutches } = chancesOf(cases);
    expect(cooler).toBeCloseTo(0.3, 12);
    expect(converter).toBeCloseTo(0.5, 12);
    expect(clutches).toBeCloseTo(0.3, 12);
  });
});

describe("what each way costs", () => {
  test("by hand: sound in 7 of 10 cases, burnt in 3", () => {
    const [line, set, half, all] = wayCosts(
      [
        { ...sound, share: 0.7 },
        { clutches: true, lockUp: false, burnt: true, share: 0.3 },
      ],
      prices,
    );
    // Line and fluid, 170; with burnt clutches it comes back for 350 + 240 + 520 + 2400 + 110 of fluid.
    expect(line).toMatchObject({ now: 170, comesBack: 0.3, then: 3620, most: 3790 });
    expect(line!.mean).toBeCloseTo(170 + 0.3 * 3620, 9);
    expect(set).toMatchObject({ now: 290, comesBack: 0.3, then: 3620 });
    // With cooler and converter renewed the clutches are left, and foul both anew.
    expect(half).toMatchObject({ now: 1050, comesBack: 0.3, then: 3620 });
    expect(all).toMatchObject({ now: 3450, comesBack: 0, then: 0, mean: 3450, most: 3450 });
  });

  test("another line that fails brings back what kept the old set, and only that", () => {
    const [line, ...others] = wayCosts([{ ...sound, share: 1 }], prices, { chance: 0.36, burns: 0 });
    // 350 + 180 + 110 in 36 of 100 cases.
    expect(line).toMatchObject({ now: 170, comesBack: 0.36, then: 640, most: 810 });
    expect(line!.mean).toBeCloseTo(170 + 0.36 * 640, 9);
    for (const { comesBack, mean, now } of others) expect([comesBack, mean]).toEqual([0, now]);
  });

  test("where such a leak burns a clutch first in half of the cases, half of all that goes with one is paid then", () => {
    const [line] = wayCosts([{ ...sound, share: 1 }], prices, { chance: 0.36, burns: 0.5 });
    // 640, and half of 240 + 520 + 2400.
    expect(line).toMatchObject({ comesBack: 0.36, then: 2220, most: 170 + 640 + 3160 });
    expect(laterLeakCost(prices, 0)).toBe(640);
    expect(laterLeakCost(prices, 1)).toBe(3800);
  });

  test("a lock-up that is gone by itself fouls nothing: left in, it is the converter alone", () => {
    const [line, , half] = wayCosts([{ ...sound, lockUp: true, share: 1 }], prices);
    expect(line).toMatchObject({ comesBack: 1, then: 350 + 520 + 110 });
    expect(half).toMatchObject({ comesBack: 0, mean: 1050 });
  });

  test("where gone parts bring it back anyway, another line costs the set and no visit of its own", () => {
    const [line] = wayCosts([{ clutches: true, lockUp: false, burnt: true, share: 1 }], prices, {
      chance: 0.5,
      burns: 0.8,
    });
    expect(line).toMatchObject({ comesBack: 1, then: 3620 + 0.5 * 180, most: 170 + 3620 + 180 });
  });

  const money = fc.double({ min: 0, max: 1e5, noNaN: true });
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const anyPrices = fc.record(Object.fromEntries([...parts, "comingBack"].map((name) => [name, money])));
  const anyCases = fc
    .array(
      fc.record({
        share: fc.double({ min: 0.01, max: 1, noNaN: true }),
        clutches: fc.boolean(),
        lockUp: fc.boolean(),
        burnt: fc.boolean(),
      }),
      {
        minLength: 1,
        maxLength: 6,
      },
    )
    .map((cases): Ruined[] => {
      const all = cases.reduce((sum, { share }) => sum + share, 0);
      return cases.map((one) => ({ ...one, share: one.share / all }));
    });

  test("who renews more comes back no more often; what is paid on the mean lies between now and the dearest case", () => {
    fc.assert(
      fc.property(anyCases, anyPrices, fc.record({ chance: share, burns: share }), (cases, some, another) => {
        const costs = wayCosts(cases, some as Prices, another);
        expect(costs.map(({ name }) => name)).toEqual(ways.map(({ name }) => name));
        costs.forEach(({ now, comesBack, then, mean, most }, i) => {
          expect(comesBack).toBeLessThanOrEqual((costs[i - 1]?.comesBack ?? 1) + 1e-12);
          expect(mean).toBeGreaterThanOrEqual(now);
          expect(mean).toBeLessThanOrEqual(most * (1 + 1e-9) + 1e-9);
          expect(now + comesBack * then).toBeCloseTo(mean, 5);
        });
        expect(costs.at(-1)!.comesBack).toBe(0);
      }),
    );
  });

  test("the least stands among the ways whatever is gone, and says to look again", () => {
    expect(ways[0]!.name).toBe("line and fluid now, look again");
    expect(ways[0]!.renews).toEqual(["line", "fluid and filter"]);
  });

  test.each([
    ["shares that do not add up", () => wayCosts([{ ...sound, share: 0.5 }], prices), "shares"],
    ["no case", () => chancesOf([]), "shares"],
    [
      "a share above 1",
      () =>
        chancesOf([
          { ...sound, share: 1.2 },
          { ...sound, share: -0.2 },
        ]),
      "share",
    ],
    ["a price below nothing", () => wayCosts([{ ...sound, share: 1 }], { ...prices, cooler: -1 }), "cooler"],
    [
      "a price that is none",
      () => wayCosts([{ ...sound, share: 1 }], { ...prices, line: Number.NaN }),
      "line",
    ],
    [
      "a chance above 1",
      () => wayCosts([{ ...sound, share: 1 }], prices, { chance: 1.1, burns: 0 }),
      "another leak",
    ],
  ])("%s is refused by name", (_, ask, field) => {
    expect(ask).toThrow(new RegExp(field));
  });
});
