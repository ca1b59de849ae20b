// What goes with the leak: which parts are gone how likely, what each way to renew them costs, and how much fluid goes in.

import { someFails } from "../../src/decisions/joints.ts";
import { chancesOf, wayCosts, type WayCost } from "../../src/decisions/renewal.ts";
import { outOfTwenty } from "../../src/lookback/answer/words.ts";
import { partTable } from "../report/part-table.ts";
import { linesInBoth, type Both } from "../report/said.ts";
import type { Table } from "../report/table.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { percent } from "./bands.ts";
import { burnsFirst, LOOKED_AFTER, roughly, type Coming } from "./looking-again.ts";
import { money } from "./money.ts";
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
  const another = leaks.line < LIKELY ? null : anotherLine(telling);
  return partTable(
    leaks.line < LIKELY
      ? "What is gone, and how likely"
      : "What goes with the leak, and how likely it is gone",
    {
      line: percent(leaks.line),
      ...(another === null ? {} : { joints: percent(another), ofJoints: jointWords(telling) }),
      cooler: toldChance(telling, Math.min(1, leaks.cooler + cooler)),
      converter: toldChance(telling, converter),
      clutches: toldChance(telling, clutches),
    },
  );
}

/** "3 joints, 9 years old". */
function jointWords({ read: { lines } }: Telling): string {
  if (lines === null) return "";
  const { joints, age, toHold } = lines;
  return `${joints === 1 ? "1 joint" : `${joints} joints`} ${years(age)} old: how likely one of them leaks within ${years(toHold)}`;
}

const YEAR = 365.25 * 86400;
const years = (time: number): string => {
  const count = Number((time / YEAR).toPrecision(2));
  return count === 1 ? "1 year" : `${count} years`;
};

/** The ways to renew it are those of a leaking line: told where it was one more likely than not. */
const LIKELY = 0.5;

/** What each way costs; null where the file gives no prices, or where it hardly was a line. */
export function costsOf(telling: Telling, coming: Coming): readonly WayCost[] | null {
  const { read, answer } = telling;
  if (read.prices === null || leaksFrom(telling).line < LIKELY) return null;
  const another = { chance: anotherLine(telling) ?? 0, burns: burnsFirst(coming, LOOKED_AFTER) };
  return wayCosts(answer.ruined, read.prices, another);
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

/** Without rows where the file gives no prices. */
export function costTable(telling: Telling, coming: Coming): Table {
  const costs = costsOf(telling, coming) ?? [];
  const currency = telling.read.prices?.currency ?? "";
  const least = fewDriven(telling) === null ? Math.min(...costs.map(({ mean }) => mean)) : Number.NaN;
  return {
    title: `What each way costs [${currency}], by the prices of the file`,
    columns: [
      { says: "way" },
      { says: "now", right: true },
      { says: "comes back", right: true },
      { says: "costs then", right: true },
      { says: "both, on average", right: true },
      { says: "at most", right: true },
    ],
    rows: costs.map(({ name, now, comesBack, then, mean, most }) => [
      mean === least ? `${name} (least on average)` : name,
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
export function goesWithSentences(telling: Telling, coming: Coming, system: UnitSystem): string[] {
  const costs = costsOf(telling, coming);
  const of = fewDriven(telling);
  const few =
    of === null
      ? []
      : [
          `How likely cooler, converter and clutches are gone rests on ${of} such losses that were driven trip by trip: so few tell no odds, and not which way is the cheapest. Look at pan and magnet before anything is ordered.`,
        ];
  if (leaksFrom(telling).line < LIKELY)
    return [
      ...few,
      "It hardly was a line: bring the fluid to its level, look again, and renew what is found; what the ways to renew a line cost is not told.",
    ];
  if (costs === null) return [...few, noPrices];
  const [first] = costs;
  const best = costs.reduce((least, way) => (way.mean < least.mean ? way : least));
  const { currency } = telling.read.prices!;
  const told = ({ name, now, comesBack, then }: WayCost) =>
    `${name}, ${money(now)} ${currency} now` +
    (comesBack === 0
      ? ", and nothing that was left in brings it back"
      : `; it comes back ${outOfTwenty(comesBack)}, and costs some ${money(then)} more then`);
  const { cooler } = chancesOf(telling.answer.ruined);
  return [
    ...few,
    ...(of === null ? [`Least on average: ${told(best)}.`] : []),
    ...(of === null && best === first ? [] : [`Least now: ${told(first!)}.`]),
    ...((anotherLine(telling) ?? 0) > 0 && coming.leaks.length > 0
      ? [
          `Of another leak it is reckoned that somebody looks every ${roughly(LOOKED_AFTER, system)}, and that ${percent(burnsFirst(coming, LOOKED_AFTER))} of such leaks burn a clutch all the same.`,
        ]
      : []),
    ...unseen(costs),
    ...(cooler < 0.01
      ? []
      : [
          "Where a clutch had burnt and was left in, all that goes with it is paid once more, for its debris fouls what was renewed beside it.",
        ]),
  ];
}

/** For the page, in either system. */
export const goesWithSaid = (telling: Telling, coming: Coming): Both[] =>
  linesInBoth((system) => goesWithSentences(telling, coming, system));

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
