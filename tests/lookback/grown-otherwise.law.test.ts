// What a stated interval is worth when the leak grew otherwise than it was taken to. Made-up visits by the loss alone, fifty a law.
import { beforeAll, describe, expect, test } from "vitest";
import { heldWhenGrownOtherwise, warningsIn } from "../../src/lookback/answer/warnings.ts";
import { explanationsOf } from "../../src/lookback/causes.ts";
import type { Bench } from "../../src/lookback/question.ts";
import { weigh } from "../../src/lookback/weigh.ts";
import { lawsOf, lossShop, madeUp, nineTenths } from "./grown-otherwise.ts";

const EACH = 50;
let shop: Bench;
/** Share of the visits by law of the truth: held by all laws averaged, and by "steady" alone. */
const averaged = new Map<string, number>();
const alone = new Map<string, number>();

beforeAll(() => {
  shop = lossShop();
  const laws = lawsOf(shop);
  // A hole that stays as it is stands first: what is told of one law alone is told of that.
  expect(laws[0]!.law).toBe("steady");
  for (const truth of laws) {
    let [all, one] = [0, 0];
    for (let seed = 1; seed <= EACH; seed++) {
      const { evidence, age } = madeUp(shop, truth, seed);
      const holds = ([low, high]: readonly [number, number]) => age >= low && age <= high;
      const told = nineTenths(shop, laws, evidence, seed);
      if (holds(told.averaged)) all++;
      if (holds(told.alone)) one++;
    }
    averaged.set(truth.law!, all / EACH);
    alone.set(truth.law!, one / EACH);
  }
  console.log(
    "held by all laws",
    Object.fromEntries(averaged),
    "by a steady hole alone",
    Object.fromEntries(alone),
  );
}, 900_000);

describe("200 made-up visits, however the leak grew", () => {
  test("averaged over the ways of growing, nine in ten means about nine in ten", () => {
    const all = [...averaged.values()].reduce((sum, share) => sum + share, 0) / averaged.size;
    // 200 fair intervals of nine in ten: 0.84 to 0.96 with probability 0.995 (binomial).
    expect(all).toBeGreaterThan(0.84);
    expect(all).toBeLessThan(0.965);
  });

  test("no law of the truth is held in under three of four", () => {
    for (const [law, share] of averaged) expect(share, law).toBeGreaterThan(0.74);
  });

  test("a hole that stays as it is, taken for granted, holds others too seldom, and its answer warns of that", () => {
    const others = [...alone]
      .filter(([law]) => law !== "steady" && law !== "cracking")
      .map(([, share]) => share);
    expect(Math.min(...others)).toBeLessThan(0.8);
    // The number that the warning tells is the worst of them, to what fifty visits can tell (three standard deviations).
    expect(Math.abs(Math.min(...others) - heldWhenGrownOtherwise["steady"]!)).toBeLessThan(0.21);
  });
});

test("an answer warns when one way of growing alone was allowed, and not otherwise", () => {
  const posterior = (laws: Readonly<Record<string, number>>) =>
    weigh(shop, explanationsOf(shop.visit, { laws }), []);
  expect(warningsIn(posterior({ creeping: 0, cracking: 0, rusting: 0 }))[0]).toMatch(
    /Only one way of growing/,
  );
  expect(warningsIn(posterior({}))).toEqual([]);
});
