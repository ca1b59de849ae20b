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

/**
 * What each way costs, in the order of `ways`. A part that is gone and left in brings the vehicle back once: the visit, all that is gone by then and fresh fluid, and once
 * more what was renewed without the cooler that still sheds debris into it. `anotherLine` is the probability that another line or joint of the set fails meanwhile
 * (`anotherOf`): where the set was left in, that brings it back too, for the set and fluid. Both may come; neither hangs on the other.
 * Source: expected cost over the cases (Raiffa and Schlaifer 1961, recalled). Errors: a price below 0 or no number, a probability outside 0 to 1, shares that do not add up to 1.
 */
export function wayCosts(cases: readonly Ruined[], prices: Prices, anotherLine = 0): WayCost[] {
  check(cases);
  fraction("probability of another line", anotherLine);
  for (const part of [...parts, "comingBack"] as const) notNegative(part, prices[part]);
  return ways.map((way) => {
    const { renews } = way;
    const sum = (some: readonly Part[]) => some.reduce((all, part) => all + prices[part], 0);
    const now = sum(renews);
    const line = renews.includes("line set") ? 0 : anotherLine;
    const forTheLine = prices.comingBack + prices["line set"] + prices["fluid and filter"];
    let [comesBack, later] = [0, 0];
    let most = now;
    for (const one of cases) {
      const gone = goneWith(one);
      const left = gone.filter((part) => !renews.includes(part));
      const dirty = left.includes("cooler")
        ? renews.filter((part) => part === "clutches" || part === "converter")
        : [];
      const forParts =
        left.length === 0 ? 0 : prices.comingBack + sum(left) + sum(dirty) + prices["fluid and filter"];
      comesBack += one.share * (left.length > 0 ? 1 : line);
      later += one.share * (forParts + line * forTheLine);
      if (one.share > 0) most = Math.max(most, now + forParts + (line > 0 ? forTheLine : 0));
    }
    return { ...way, now, comesBack, then: comesBack > 0 ? later / comesBack : 0, mean: now + later, most };
  });
}

/** Shares are sums of weights: they add up to 1 but for rounding. */
const ROUNDING = 1e-6;

function check(cases: readonly Ruined[]): void {
  for (const { share } of cases)
    if (!(share >= 0 && share <= 1 + ROUNDING)) impossible("share", share, "0 to 1");
  const all = cases.reduce((sum, { share }) => sum + share, 0);
  if (!(Math.abs(all - 1) < ROUNDING)) impossible("shares", all, "shares that add up to 1");
}
