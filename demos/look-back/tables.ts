// The answer as tables: causes, events, clutches, what to look at next, what it rests on.

import { originText } from "../../src/sources/origin.ts";
import type { EventName } from "../../src/history/watch.ts";
import type { Spread } from "../../src/lookback/answer/spread.ts";
import { outOfTwenty } from "../../src/lookback/answer/words.ts";
import { wordsFor } from "../../src/plots/event-words.ts";
import type { ShownKind } from "../../src/units/show.ts";
import { showSpread } from "../../src/units/show-spread.ts";
import { alone, inBoth } from "../report/said.ts";
import type { Cell, Table } from "../report/table.ts";
import { band, banded, bandedIn, percent } from "./bands.ts";
import { toldMoments } from "./events.ts";
import { itemWords } from "./item-words.ts";
import { datesOf, dayIn } from "./moments.ts";
import { itemName, placeWords } from "./place-words.ts";
import { days, named, narrowing, type Telling } from "./told.ts";

export function causeTable({ answer: { causes } }: Telling): Table {
  return {
    title: "What may be behind it, before and after the evidence",
    columns: [
      { says: "cause" },
      { says: "before", right: true },
      { says: "after", right: true },
      { says: "in words", prose: true },
    ],
    rows: causes.flatMap(({ cause, believed, share, says, laws }) => [
      [
        named(cause),
        believed === 0 ? "0 %" : percent(believed),
        percent(share),
        `${says}: ${outOfTwenty(share)}`,
      ],
      // Ways in which something grew that hardly was there tell nothing.
      ...(share < 0.005 ? [] : laws).map((law): Cell[] => [`– ${law.law}`, "", percent(law.share), law.says]),
    ]),
  };
}

/** When it opened by each way of opening: where the dots make two humps, each is another's. Without rows where there is one way only. */
export function openingTable({ read, answer: { opened } }: Telling): Table {
  const ways = opened?.ways ?? [];
  const dates = datesOf(
    read,
    ways.map(({ when }) => when),
  );
  return {
    title: "When it opened, by what it was and how it grew",
    columns: [
      { says: "way" },
      { says: "how likely", right: true },
      { says: "about", whole: true },
      { says: "9 times in 10 between" },
    ],
    rows: (ways.length < 2 ? [] : ways).map(({ cause, law, share }, i) => {
      const { middle, between } = dates[i]!;
      return [law === undefined ? named(cause) : `${named(cause)}, ${law}`, percent(share), middle, between];
    }),
  };
}

export function eventTable(telling: Telling): Table {
  const { read } = telling;
  const { events } = toldMoments(telling);
  // Without a leak nothing came after one.
  const leaks = events.some(({ wait }) => wait !== null);
  return {
    title: "When it happened: middle, and 9 times in 10 between",
    columns: [
      { says: "event" },
      { says: "it came in", right: true },
      { says: "about", whole: true },
      { says: "9 times in 10 between" },
      ...(leaks ? [{ says: "after the leak opened", right: true }] : []),
      { says: read.clock.odometer === null ? "driven about" : "odometer about", right: true },
    ],
    rows: events.map(({ event: { name, clutch, chance }, dates, wait, driven }) => [
      wordsFor({ name: name as EventName, ...(clutch === undefined ? {} : { clutch }) }),
      percent(chance),
      dates?.middle ?? "too seldom to date",
      dates?.between ?? "",
      ...(leaks ? [wait ?? ""] : []),
      driven.US === null ? "" : inBoth((system) => driven[system]!.middle),
    ]),
    grave: (row) => {
      const { name } = events[row]!.event;
      return name.startsWith("damage") || name === "no drive" || name === "first sustained slip";
    },
  };
}

/** Past burnt there is nothing more to lose. */
const damageText = (damage: number): string =>
  damage > 1 ? "over 1" : damage < 0.01 ? "< 0.01" : damage.toFixed(2);

export function clutchTable({ answer: { clutches } }: Telling): Table {
  const walked = clutches.some((clutch) => clutch.walked !== null);
  const chances = clutches.map(({ name, hurt, half, burnt, of }): Cell[] => {
    // Of a handful that were driven a share in a hundred would look surer than it is.
    const told = (chance: number) => (of === null ? percent(chance) : `${Math.round(chance * of)} of ${of}`);
    return [name, told(hurt), told(half), told(burnt)];
  });
  return {
    title: "How likely each clutch has lost a tenth, half, all of what it had to spare",
    columns: [
      { says: "clutch" },
      { says: "a tenth", right: true },
      { says: "half", right: true },
      { says: "burnt", right: true },
      ...(walked
        ? [
            { says: "times it gave way", right: true },
            { says: "hottest steel", right: true },
            { says: "damage, 0 new, 1 burnt", right: true },
            { says: "charred", right: true },
          ]
        : []),
    ],
    rows: chances.map((row, i) => {
      const { walked: fate } = clutches[i]!;
      if (!walked) return row;
      if (fate === null) return [...row, "", "", "", ""];
      return [
        ...row,
        banded(fate.slips, 1),
        bandedIn(fate.hottest, "temperature"),
        band(fate.damage, damageText),
        band(fate.charred, percent),
      ];
    }),
    grave: (row) => clutches[row]!.burnt >= 0.5,
  };
}

export function aheadTable({ answer }: Telling): Table {
  return {
    title: "What each look would still leave of the doubt about the opening date",
    columns: [
      { says: "look", whole: true },
      { says: "what is done", prose: true },
      { says: "minutes", right: true },
      { says: "known to ± now", right: true },
      { says: "± after it", right: true },
    ],
    rows: narrowing(answer).map(({ name, says, minutes, now, after }) => [
      name,
      says,
      String(minutes),
      days(now),
      days(after),
    ]),
  };
}

export function evidenceTable({ read }: Telling): Table {
  const { visit } = read;
  return {
    title: "What was seen and told",
    columns: [{ says: "item" }, { says: "what it says", prose: true }],
    rows: [
      ...visit.evidence.map((item): Cell[] => [
        itemName(item),
        inBoth((system) => itemWords(item, read, alone(system))),
      ]),
      ...visit.added.map(({ at, volume, error }, i): Cell[] => [
        `top-up ${i + 1}`,
        inBoth(
          (system) =>
            `${alone(system)(volume, "volume")} added on ${dayIn(read, at)}, right to ${alone(system)(error, "volume")}`,
        ),
      ]),
    ],
  };
}

export function assumptionTable({ read }: Telling): Table {
  return {
    title: "What is not told, and what stands in for it",
    columns: [{ says: "of what" }, { says: "assumed", prose: true }, { says: "origin", prose: true }],
    rows: read.assumptions.map(({ path, says, origin }) => [
      placeWords(path, read),
      says,
      originText(origin),
    ]),
  };
}

const kinds: Readonly<Record<string, ShownKind>> = {
  L: "volume",
  qt: "volume",
  mm: "length",
  µm: "length",
  MPa: "pressure",
};

export function unknownTable({ answer: { unknowns } }: Telling): Table {
  const cell = (spread: Spread, unit: string, per: number, size: number): Cell => {
    const kind = kinds[unit];
    if (kind !== undefined) return bandedIn(spread, kind, size);
    const scaled = ([from, to]: readonly [number, number]) => [from * per, to * per] as const;
    const { middle, half, nineTenths } = spread;
    const text = banded({ middle: middle * per, half: scaled(half), nineTenths: scaled(nineTenths) });
    return unit === "" ? text : `${text} ${unit === "d" ? "days" : unit}`;
  };
  return {
    title: "What nobody knows: middle and 5 to 95 %, before and after the evidence",
    columns: [
      { says: "unknown" },
      { says: "before", right: true },
      { says: "after", right: true },
      { says: "where the first comes from", prose: true },
    ],
    rows: unknowns.map(({ name, law, unit, per, before, after, origin }) => {
      // Both in the same unit: the finer of the two.
      const size = Math.min(
        ...[before, after].map(({ nineTenths }) => Math.max(...nineTenths.map(Math.abs))),
      );
      return [
        law === undefined ? name : `${named(law)}: ${name}`,
        cell(before, unit, per, size),
        cell(after, unit, per, size),
        originText(origin),
      ];
    }),
  };
}

/** How much the leak runs at now. */
export function flowTable({ answer: { flow } }: Telling): Table | null {
  if (flow === null) return null;
  const row = (says: string, spread: Spread): Cell[] => {
    const told = (say: (texts: readonly string[]) => string) =>
      inBoth((system) => {
        const { texts, unit } = showSpread(spread, "leakFlow", system);
        const said = say(texts);
        return said === "0" ? "none" : `${said} ${unit}`;
      });
    const span = ([, low, high]: readonly string[]) => (low === high ? high! : `${low!} to ${high!}`);
    return [says, told(([middle]) => middle!), told(span)];
  };
  return {
    title: "What the leak runs at, at the visit",
    columns: [{ says: "when" }, { says: "about", right: true }, { says: "9 times in 10", right: true }],
    rows: [row("idling hot", flow.hot), row("parked, a quarter of an hour after stopping", flow.parked)],
  };
}
