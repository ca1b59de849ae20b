// What goes with the leak: the ways to renew it, what each costs now, and what it costs where a part that was left in brings the vehicle back.

import { fraction, impossible, notNegative } from "../errors.ts";

/** What may be renewed at one visit. The cooler: renewed, or flushed until its return runs clean and as freely as it should. */
export const parts = ["line", "line set", "fluid and filter", "cooler", "converter", "clutches"] as const;
export type Part = (typeof parts)[number];

/** A way to renew it. */
export interface Way {
  readonly name: string;
  readonly renews: readonly Part[];
}

/** From the least to the most; the least always stands among them. */
export const ways: readonly Way[] = [
  { name: "line and fluid now, look again", renews: ["line", "fluid and filter"] },
  { name: "line set and fluid", renews: ["line set", "fluid and filter"] },
  {
    name: "line set, coolers and converter",
    renews: ["line set", "fluid and filter", "cooler", "converter"],
  },
  {
    name: "clutches too",
    renews: ["line set", "fluid and filter", "cooler", "converter", "clutches"],
  },
];

/** Cases that are alike in what the loss has ruined, and their share of all (0 to 1). */
export interface Ruined {
  readonly share: number;
  /** A clutch or brake of the gears has lost half of what it had to spare; so has the lock-up clutch; one of either has burnt. */
  readonly clutches: boolean;
  readonly lockUp: boolean;
  readonly burnt: boolean;
}

/**
 * What each part costs, fitted and with its labour, when it is renewed at one visit with the others; and what a vehicle costs that comes back for a
 * part that was left in: tow, diagnosis, opening it again. All in one currency, 0 or more.
 */
export type Prices = Readonly<Record<Part, number>> & { readonly comingBack: number };

export interface WayCost extends Way {
  /** What is paid at this visit. */
  readonly now: number;
  /** Probability that it comes back for what was left in, and what that costs then, on the mean; 0 where it never does. */
  readonly comesBack: number;
  readonly then: number;
  /** Both together, on the mean of all cases, and in the dearest of them. */
  readonly mean: number;
  readonly most: number;
}

/**
 * Parts of a case that no longer serve, beside line and fluid: clutches that lost half of what they had to spare; the converter where its lock-up
 * clutch is so, or where a clutch has burnt, since it holds the debris; then the cooler too. Source: general repair pages, 2002 to 2024 (common practice); the mark
 * of one half is assumed.
 */
export function goneWith({ clutches, lockUp, burnt }: Omit<Ruined, "share">): Part[] {
  return [
    ...(burnt ? (["cooler"] as const) : []),
    ...(lockUp || burnt ? (["converter"] as const) : []),
    ...(clutches ? (["clutches"] as const) : []),
  ];
}

/** How likely each part is gone, beside line and fluid, over all cases (0 to 1). Errors: shares that are none or do not add up to 1. */
export function chancesOf(
  cases: readonly Ruined[],
): Readonly<Record<"cooler" | "converter" | "clutches", number>> {
  check(cases);
  const chance = (part: Part) =>
    Math.min(
      1,
      cases.reduce((sum, one) => sum + (goneWith(one).includes(part) ? one.share : 0), 0),
    );
  return { cooler: chance("cooler"), converter: chance("converter"), clutches: chance("clutches") };
}

/** Another line or joint of the set: how likely it leaks while it is to hold (`someFails`), and how many such leaks burn a clutch before anybody finds them (`shareThatFails`). */
export interface AnotherLeak {
  readonly chance: number;
  readonly burns: number;
}

/** What a leak costs that comes later: coming back, the set and fluid; where it burns a clutch first, with a probability `burns`, all that goes with one too. */
export function laterLeakCost(prices: Prices, burns: number): number {
  checkPrices(prices);
  fraction("burns", burns);
  const { cooler, converter, clutches, comingBack } = prices;
  return (
    comingBack + prices["line set"] + prices["fluid and filter"] + burns * (cooler + converter + clutches)
  );
}

/**
 * What each way costs, in the order of `ways`. A part that is gone and left in brings the vehicle back once: coming back, fresh fluid and what was left; where a clutch has burnt, all that goes with it,
 * since its debris fouls what was renewed beside it. Where the set was left in, `another` leak may bring the vehicle back too, whatever else is gone (`laterLeakCost`); where it comes back for parts anyway the
 * set goes in then. Source: expected cost over the cases (Raiffa and Schlaifer 1961, recalled). Errors: a price below 0 or no number, a probability outside 0 to 1, shares that do not add up to 1.
 */
export function wayCosts(
  cases: readonly Ruined[],
  prices: Prices,
  another: AnotherLeak = { chance: 0, burns: 0 },
): WayCost[] {
  check(cases);
  checkPrices(prices);
  fraction("chance of another leak", another.chance);
  const sum = (some: readonly Part[]) => some.reduce((all, part) => all + prices[part], 0);
  const visit = prices.comingBack + prices["fluid and filter"];
  const leakLater = laterLeakCost(prices, another.burns);
  const dearest = laterLeakCost(prices, another.burns > 0 ? 1 : 0);
  return ways.map((way) => {
    const { renews } = way;
    const now = sum(renews);
    const line = renews.includes("line set") ? 0 : another.chance;
    let [comesBack, later, most] = [0, 0, now];
    for (const one of cases) {
      const { share, burnt } = one;
      const gone = goneWith(one);
      const left = gone.filter((part) => !renews.includes(part));
      const forParts = left.length > 0 ? visit + sum(burnt ? gone : left) : 0;
      comesBack += share * (left.length > 0 ? 1 : line);
      later += share * (forParts + line * (left.length > 0 ? prices["line set"] : leakLater));
      const forTheLine = line > 0 ? (left.length > 0 ? prices["line set"] : dearest) : 0;
      if (share > 0) most = Math.max(most, now + forParts + forTheLine);
    }
    return { ...way, now, comesBack, then: comesBack > 0 ? later / comesBack : 0, mean: now + later, most };
  });
}

function checkPrices(prices: Prices): void {
  for (const part of [...parts, "comingBack"] as const) notNegative(part, prices[part]);
}

/** Shares are sums of weights: they add up to 1 but for rounding. */
const ROUNDING = 1e-6;

function check(cases: readonly Ruined[]): void {
  for (const { share } of cases)
    if (!(share >= 0 && share <= 1 + ROUNDING)) impossible("share", share, "0 to 1");
  const all = cases.reduce((sum, { share }) => sum + share, 0);
  if (!(Math.abs(all - 1) < ROUNDING)) impossible("shares", all, "shares that add up to 1");
}
