// Before it happens again: how often to look underneath, from how long such leaks can be found before they have burnt a clutch.

import { bestInterval, shareThatFails, type Delays } from "../../src/decisions/inspection.ts";
import { lifeOfSet } from "../../src/decisions/joints.ts";
import { laterLeakCost } from "../../src/decisions/renewal.ts";
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
import { money } from "./money.ts";

/** Leaks that may come, and whether something under the vehicle hides them. */
export interface Coming {
  readonly leaks: readonly ComingLeak[];
  readonly shield: boolean;
}

/** Looks that are told, the most thorough last: without a shield there is none to take off. */
const looksAt = ({ shield }: Coming): readonly LookKind[] =>
  shield ? ["walk round", "look underneath", "shield taken off"] : ["walk round", "look underneath"];
const closestAt = (coming: Coming): LookKind => looksAt(coming).at(-1)!;
const lookWords = ({ shield }: Coming): string => (shield ? "with the shield off" : "underneath");

const mile = 1609.344;
/** How far apart the looks are that are reckoned with where somebody looks again [m]. */
export const LOOKED_AFTER = 1000 * mile;
const told = [250, 500, 1000, 2000, 3000, 5000, 10000].map((miles) => miles * mile);
const LONGEST = 10000 * mile;
const POINTS = 40;
/** Fewer leaks than this that did harm tell no shares. */
const FEWEST = 20;

const harmed = ({ leaks }: Coming): number => leaks.filter((leak) => leak.harmed < Infinity).length;

/** Whether there are leaks enough to tell anything of them. */
export const tellsOfLooks = (coming: Coming): boolean => harmed(coming) >= FEWEST;

const sample = (delays: readonly number[]): Delays => ({ kind: "sample", delays });

/** Delays of the leaks that do harm [m]. */
const harmful = ({ leaks }: Coming, look: LookKind): number[] =>
  delaysUntilHarm(leaks, look).filter((delay) => delay < Infinity);

/** Of the leaks that do harm, the share that does it before a look of a kind finds them, looks so far apart [m]. */
const missed = (coming: Coming, look: LookKind, interval: number): number =>
  shareThatFails(sample(harmful(coming, look)), interval, findings[look].most);

/** Of all leaks, the share that burns a clutch before the closest look finds them, looks so far apart [m]; where none is known of, all may. */
export function burnsFirst(coming: Coming, interval: number): number {
  const look = closestAt(coming);
  return coming.leaks.length === 0
    ? 1
    : shareThatFails(sample(delaysUntilHarm(coming.leaks, look)), interval, findings[look].most);
}

export function lookTable(coming: Coming): Table {
  const looks = looksAt(coming);
  return {
    title: "Of leaks that burn a clutch or stop the vehicle: how many do it before a look finds them",
    columns: [{ says: "driven between two looks" }, ...looks.map((look) => ({ says: look, right: true }))],
    rows: (tellsOfLooks(coming) ? told : []).map((interval) => [
      amount(interval, "distance"),
      ...looks.map((look) => percent(missed(coming, look, interval))),
    ]),
  };
}

export function lookPicture(coming: Coming, picture: Picture): SVGSVGElement {
  const intervals = Array.from({ length: POINTS }, (_, i) => ((i + 1) / POINTS) * LONGEST);
  return lookInterval(
    {
      intervals,
      looks: looksAt(coming).map((look) => ({
        says: look,
        missed: intervals.map((interval) => missed(coming, look, interval)),
      })),
    },
    picture,
  );
}

const HALF = 0.5;
const SHORTEST = 50 * mile;
const NEAR = 10 * mile;

/** The longest interval at which no more than half are missed [m]; null where even the shortest misses more. */
function intervalForHalf(coming: Coming): number | null {
  const isShort = (interval: number) => missed(coming, closestAt(coming), interval) <= HALF;
  if (!isShort(SHORTEST)) return null;
  if (isShort(LONGEST)) return LONGEST;
  let [low, high] = [SHORTEST, LONGEST];
  while (high - low > NEAR) {
    const middle = 0.5 * (low + high);
    if (isShort(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** A distance to two figures: it is known no closer. */
export function roughly(distance: number, system: UnitSystem): string {
  const { factor, unit } = axis("distance", system);
  return `${Number((distance * factor).toPrecision(2)).toLocaleString("en-US")} ${unit}`;
}

/** For the next owner, in sentences. */
export function lookSentencesFor(coming: Coming, system: UnitSystem): string[] {
  if (!tellsOfLooks(coming))
    return ["Of the leaks that were reckoned through too few burnt a clutch to say how often to look."];
  const interval = intervalForHalf(coming);
  const delays = harmful(coming, closestAt(coming)).sort((a, b) => a - b);
  const middle = delays[Math.floor(HALF * (delays.length - 1))]!;
  return [
    `Of ${coming.leaks.length} leaks such as are believed possible, on this vehicle as it is driven, ${harmed(coming)} burn a clutch or stop it within two years. Half of these can be found by a look ${lookWords(coming)} for at least ${roughly(middle, system)} before that.`,
    interval === null
      ? "Half of them are gone through before even a look every week would find them: what helps against those is new lines before they are old."
      : `To find half of them in time, look ${lookWords(coming)} every ${roughly(interval, system)}. What opens at once and wide no look finds in time: against that only new lines help, before they are old.`,
    "How large such leaks begin, how they grow and how well a look finds them is assumed: nobody has published it. The table says how the looks compare, rather than how many will burn.",
  ];
}

const YEAR = 365.25 * 86400;
/** A saving below this share of what is paid without looks is less than some hundred leaks can tell. */
const WORTH = 0.1;

/** How often to look, and when to renew the lines before they leak, by the prices of the file; nothing where it tells none. */
export function payingSentences(
  { prices, lines }: Pick<ReadVisit, "prices" | "lines">,
  coming: Coming,
  system: UnitSystem,
): string[] {
  if (prices === null || !tellsOfLooks(coming)) return [];
  const { currency, look, oneLeakIn } = prices;
  const says: string[] = [];
  if ((look === undefined) !== (oneLeakIn === undefined))
    says.push(
      `How often a look pays is not told: ${look === undefined ? "prices.look" : "prices.oneLeakIn"} is missing in the file.`,
    );
  if (look !== undefined && oneLeakIn !== undefined) {
    const kind = closestAt(coming);
    const paid = {
      faults: 1 / oneLeakIn,
      failure: laterLeakCost(prices, 1),
      found: prices.line + prices["fluid and filter"],
      look,
    };
    const delays = sample(delaysUntilHarm(coming.leaks, kind));
    const { interval, costRate, neverLooking } = bestInterval(delays, paid, findings[kind].most);
    const each = 10000 * mile;
    const rate = (perMetre: number) => `${money(perMetre * each)} ${currency}`;
    says.push(
      interval === null || costRate > (1 - WORTH) * neverLooking
        ? `By the prices of the file looks ${lookWords(coming)} hardly pay: ${interval === null ? "they cost more than they save" : `at best ${rate(costRate)} in ${roughly(each, system)}, looks and leaks together, against ${rate(neverLooking)} where nobody looks`}.`
        : `By the prices of the file a look ${lookWords(coming)} pays about every ${roughly(interval, system)}: ${rate(costRate)} in ${roughly(each, system)}, looks and leaks together, against ${rate(neverLooking)} where nobody looks. Of the leaks that would burn a clutch ${percent(missed(coming, kind, interval))} still do.`,
    );
  }
  if (lines !== null) {
    const planned = prices["line set"] + prices["fluid and filter"];
    const failure = laterLeakCost(prices, harmed(coming) / coming.leaks.length);
    const { age } = bestReplacement(lifeOfSet(lines.life, lines.joints + 1), { planned, failure });
    if (age !== null)
      says.push(
        `New lines before they leak are cheapest at about ${Number((age / YEAR).toPrecision(2))} years, by those prices, the life that is assumed of a joint, and if nobody looks. ${
          lines.age > age
            ? "The other joints here are past that."
            : "The other joints here are not that old yet."
        }`,
      );
  }
  return says;
}
