// What goes with the leak: which parts are gone how likely, what each way to renew them costs, and how much fluid goes in.

import { someFails } from "../../src/decisions/joints.ts";
import { chancesOf, wayCosts, type WayCost } from "../../src/decisions/renewal.ts";
import { outOfTwenty } from "../../src/lookback/answer/words.ts";
import { partTable } from "../report/part-table.ts";
import type { Table } from "../report/table.ts";
import { percent } from "./bands.ts";
import type { Telling } from "./told.ts";

/** Of a handful of guesses that were driven a share in a hundred would look surer than it is. */
function toldChance(telling: Telling, chance: number): string {
  const of = fewDriven(telling);
  return of === null ? percent(chance) : `${Math.round(chance * of)} of ${of}`;
}

/** How likely it was a line or fitting, and a cooler that leaks inside the radiator. */
function leaksFrom({ answer: { causes } }: Telling): { line: number; cooler: number } {
  const share = (...names: readonly string[]) =>
    causes.reduce((sum, { cause, share }) => sum + (names.includes(cause) ? share : 0), 0);
  return {
    line: share("slow leak", "older leak", "line let go"),
    cooler: share("cooler leaks into the coolant"),
  };
}

export function goneTable(telling: Telling): Table {
  const { cooler, converter, clutches } = chancesOf(telling.answer.ruined);
  const leaks = leaksFrom(telling);
  const another = anotherLine(telling);
  return partTable("What goes with the leak, and how likely it is gone", {
    line: percent(leaks.line),
    joints: another === null ? "not told" : percent(another),
    cooler: toldChance(telling, Math.max(leaks.cooler, cooler)),
    converter: toldChance(telling, converter),
    clutches: toldChance(telling, clutches),
  });
}

/** The ways to renew it are those of a leaking line: told where it was one more likely than not. */
const LIKELY = 0.5;

/** What each way costs; null where the file gives no prices, or where it hardly was a line. */
export function costsOf(telling: Telling): readonly WayCost[] | null {
  const { read, answer } = telling;
  if (read.prices === null || leaksFrom(telling).line < LIKELY) return null;
  return wayCosts(answer.ruined, read.prices, anotherLine(telling) ?? 0);
}

/** How likely another of the joints leaks within the time that they are to hold; null where nothing was told of them. */
function anotherLine({ read: { lines } }: Telling): number | null {
  if (lines === null) return null;
  const { joints, age, toHold, life } = lines;
  return someFails(
    Array.from({ length: joints }, () => ({ life, age })),
    toHold,
  );
}

/** So many losses driven trip by trip are all that is known of what is gone; null where all guesses tell of it. */
const fewDriven = ({ answer }: Telling): number | null => answer.clutches[0]?.of ?? null;

export const money = (value: number): string => Math.round(value).toLocaleString("en-US");

/** Without rows where the file gives no prices. */
export function costTable(telling: Telling): Table {
  const costs = costsOf(telling) ?? [];
  const currency = telling.read.prices?.currency ?? "";
  const least = fewDriven(telling) === null ? Math.min(...costs.map(({ mean }) => mean)) : Number.NaN;
  return {
    title: `What each way costs [${currency}], by the prices of the file`,
    columns: [
      { says: "way" },
      { says: "now", right: true },
      { says: "comes back", right: true },
      { says: "costs then", right: true },
      { says: "both, on the mean", right: true },
      { says: "at most", right: true },
    ],
    rows: costs.map(({ name, now, comesBack, then, mean, most }) => [
      mean === least ? `${name} (least on the mean)` : name,
      money(now),
      comesBack === 0 ? "never" : percent(comesBack),
      comesBack === 0 ? "" : money(then),
      money(mean),
      money(most),
    ]),
  };
}

const noPrices =
  "What it costs is not told: give prices in the file, in your own money (prices: line, line set, fluid and filter, cooler, converter, clutches, coming back).";

/** What the tables come to, in sentences. */
export function goesWithSentences(telling: Telling): string[] {
  const costs = costsOf(telling);
  const of = fewDriven(telling);
  const few =
    of === null
      ? []
      : [
          `How likely cooler, converter and clutches are gone rests on ${of} such losses that were driven trip by trip: so few tell no odds, and not which way is the cheapest. Look at pan and magnet before anything is ordered.`,
        ];
  if (costs === null)
    return [
      ...few,
      leaksFrom(telling).line < LIKELY
        ? "It hardly was a line: what the ways to renew one cost is not told."
        : noPrices,
    ];
  const [first] = costs;
  const best = costs.reduce((least, way) => (way.mean < least.mean ? way : least));
  const { currency } = telling.read.prices!;
  const told = ({ name, now, comesBack, then }: WayCost) =>
    `${name}, ${money(now)} ${currency} now` +
    (comesBack === 0
      ? ", and nothing that was left in brings it back"
      : `; it comes back ${outOfTwenty(comesBack)}, and costs some ${money(then)} more then`);
  return [
    ...few,
    ...(of === null ? [`Least on the mean of all cases: ${told(best)}.`] : []),
    ...(of === null && best === first ? [] : [`Least now: ${told(first!)}.`]),
    ...unseen(costs),
    "Where it comes back it costs the visit, all that is gone by then, fresh fluid, and once more what was renewed beside a cooler that still shed debris.",
  ];
}

/** From how many cases on it pays to renew the clutches unseen, against line set and fluid alone. */
function unseen(costs: readonly WayCost[]): string[] {
  const [, lines, , all] = costs;
  if (lines === undefined || all === undefined || !(lines.then > 0)) return [];
  const share = (all.now - lines.now) / lines.then;
  return share < 1
    ? [
        `To renew cooler, converter and clutches unseen pays where they are gone ${outOfTwenty(share)} or more.`,
      ]
    : ["To renew cooler, converter and clutches unseen never pays by these prices: look inside first."];
}
