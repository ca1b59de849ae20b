// Before it happens again: how often to look underneath, from how long such leaks can be found before they have burnt a clutch.

import { bestInterval, shareThatFails, type Delays } from "../../src/decisions/inspection.ts";
import { lifeOfSet } from "../../src/decisions/joints.ts";
import { wayCosts, type Prices } from "../../src/decisions/renewal.ts";
import { bestReplacement } from "../../src/decisions/replacement-age.ts";
import type { ReadVisit } from "../../src/inputs/visit.ts";
import type { LookKind } from "../../src/lookback/evidence.ts";
import { delaysUntilHarm, type ComingLeak } from "../../src/lookback/coming.ts";
import { findings } from "../../src/lookback/finding.ts";
import { lookInterval } from "../../src/plots/look-interval.ts";
import type { Picture } from "../../src/plots/picture.ts";
import { axis, type UnitSystem } from "../../src/units/show.ts";
import { amount, type Table } from "../report/table.ts";
import { percent } from "./bands.ts";
import { money } from "./goes-with.ts";

const looks: readonly LookKind[] = ["walk round", "look underneath", "shield taken off"];
/** The most thorough of them. */
const closest: LookKind = "shield taken off";
const mile = 1609.344;
const told = [250, 500, 1000, 2000, 3000, 5000, 10000].map((miles) => miles * mile);
const LONGEST = 10000 * mile;
const POINTS = 40;
/** Fewer leaks than this that did harm tell no shares. */
const FEWEST = 20;

/** Delays of the leaks that do harm [m]. */
const harmful = (leaks: readonly ComingLeak[], look: LookKind): number[] =>
  delaysUntilHarm(leaks, look).filter((delay) => delay < Infinity);

/** Share of the leaks that do harm before a look of a kind finds them, looks so far apart [m]. */
function missed(leaks: readonly ComingLeak[], look: LookKind, interval: number): number {
  const delays = harmful(leaks, look);
  return shareThatFails({ kind: "sample", delays }, interval, findings[look].most);
}

const harmed = (leaks: readonly ComingLeak[]): number =>
  leaks.filter((leak) => leak.harmed < Infinity).length;

/** Whether there are leaks enough to tell anything of them. */
export const tellsOfLooks = (leaks: readonly ComingLeak[]): boolean => harmed(leaks) >= FEWEST;

export function lookTable(leaks: readonly ComingLeak[]): Table {
  return {
    title: "Leaks that burn a clutch before a look finds them, by how far apart the looks are",
    columns: [{ says: "driven between two looks" }, ...looks.map((look) => ({ says: look, right: true }))],
    rows: (tellsOfLooks(leaks) ? told : []).map((interval) => [
      amount(interval, "distance"),
      ...looks.map((look) => percent(missed(leaks, look, interval))),
    ]),
  };
}

export function lookPicture(leaks: readonly ComingLeak[], picture: Picture): SVGSVGElement {
  const intervals = Array.from({ length: POINTS }, (_, i) => ((i + 1) / POINTS) * LONGEST);
  return lookInterval(
    {
      intervals,
      looks: looks.map((look) => ({
        says: look,
        missed: intervals.map((interval) => missed(leaks, look, interval)),
      })),
    },
    picture,
  );
}

/** Shares of leaks that are let through: the interval for each is told. */
const LET_THROUGH = 0.5;
const SHORTEST = 50 * mile;

/** The longest interval at which no more than a share is missed [m]; null where even the shortest misses more. */
function intervalFor(leaks: readonly ComingLeak[], look: LookKind, share: number): number | null {
  if (missed(leaks, look, SHORTEST) > share) return null;
  if (missed(leaks, look, LONGEST) <= share) return LONGEST;
  let [low, high] = [SHORTEST, LONGEST];
  while (high - low > 10 * mile) {
    const middle = 0.5 * (low + high);
    if (missed(leaks, look, middle) <= share) low = middle;
    else high = middle;
  }
  return low;
}

/** A distance to two figures: it is known no closer. */
function roughly(distance: number, system: UnitSystem): string {
  const { factor, unit } = axis("distance", system);
  return `${Number((distance * factor).toPrecision(2)).toLocaleString("en-US")} ${unit}`;
}

/** What a burnt clutch costs, all that goes with it: the last way, and coming back for it. */
const burntCosts = (prices: Prices): number => {
  const { now } = wayCosts([{ share: 1, clutches: true, lockUp: true, burnt: true }], prices).at(-1)!;
  return now + prices.comingBack;
};

const YEAR = 365.25 * 86400;

/** How often to look, and when to renew the lines before they leak, by the prices of the file; nothing where it tells none. */
export function payingSentences(
  { prices, lines }: Pick<ReadVisit, "prices" | "lines">,
  leaks: readonly ComingLeak[],
  system: UnitSystem,
): string[] {
  if (prices === null || !tellsOfLooks(leaks)) return [];
  const { currency, look, oneLeakIn } = prices;
  const burnt = burntCosts(prices);
  const mended = prices.line + prices["fluid and filter"];
  const says: string[] = [];
  if (look !== undefined && oneLeakIn !== undefined) {
    const delays: Delays = { kind: "sample", delays: delaysUntilHarm(leaks, closest) };
    const paid = { faults: 1 / oneLeakIn, failure: burnt, found: mended, look };
    const { interval, costRate, neverLooking } = bestInterval(delays, paid, findings[closest].most);
    const each = 10000 * mile;
    const rate = (perMetre: number) => `${money(perMetre * each)} ${currency}`;
    says.push(
      interval === null
        ? "By the prices of the file looking with the shield off costs more than it saves."
        : `By the prices of the file a look with the shield off pays about every ${roughly(interval, system)}: ${rate(costRate)} in ${roughly(each, system)}, looks and leaks together, against ${rate(neverLooking)} where nobody looks.`,
    );
  }
  if (lines !== null) {
    const burn = harmed(leaks) / leaks.length;
    const set = lifeOfSet(lines.life, lines.joints + 1);
    const { age } = bestReplacement(set, {
      planned: prices["line set"],
      failure: (1 - burn) * (prices["line set"] + mended) + burn * burnt,
    });
    if (age !== null)
      says.push(
        `New lines before they leak are cheapest at about ${Number((age / YEAR).toPrecision(2))} years, by those prices, the life that is assumed of a joint, and as many leaks that burn a clutch as here.`,
      );
  }
  return says;
}

/** For the next owner, in sentences. */
export function lookSentencesFor(leaks: readonly ComingLeak[], system: UnitSystem): string[] {
  if (!tellsOfLooks(leaks))
    return ["Of the leaks that were reckoned through too few burnt a clutch to say how often to look."];
  const interval = intervalFor(leaks, closest, LET_THROUGH);
  const delays = harmful(leaks, closest).sort((a, b) => a - b);
  const at = (share: number) => roughly(delays[Math.floor(share * (delays.length - 1))]!, system);
  return [
    `Of ${leaks.length} leaks such as are believed possible, on this vehicle as it is driven, ${harmed(leaks)} burn a clutch or stop it within two years. With the shield off they can be found for ${at(0.5)} before that by the middle one, and 9 times in 10 for ${at(0.05)} to ${at(0.95)}.`,
    interval === null
      ? "Half of them are gone through before even a look every week would find them: what helps against those is new lines before they are old."
      : `To find every second one in time takes a look with the shield off about every ${roughly(interval, system)}. What opens at once and wide no look finds in time: against that only new lines help, before they are old.`,
    "How large such leaks begin, how they grow and how well a look finds them is assumed: nobody has published it. The table says how the looks compare, rather than how many will burn.",
  ];
}
