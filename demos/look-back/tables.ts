// The answer as tables: causes, events, clutches, what to look at next, what it rests on.

import { originText } from "../../src/sources/origin.ts";
import type { EventName } from "../../src/history/watch.ts";
import type { Spread } from "../../src/lookback/answer/spread.ts";
import { outOfTwenty } from "../../src/lookback/answer/words.ts";
import { wordsFor } from "../../src/plots/event-words.ts";
import { axis, type ShownKind } from "../../src/units/show.ts";
import { alone, inBoth, type Both } from "../report/said.ts";
import { amount, type Cell, type Table } from "../report/table.ts";
import { itemWords } from "./item-words.ts";
import { datesOf, dayIn, odometerIn } from "./moments.ts";
import { days, named, narrowing, type Telling } from "./told.ts";

/** A probability that was computed: no number of guesses makes it 0 or 1. */
const percent = (share: number): string =>
  share > 0.995 ? "> 99 %" : share < 0.005 ? "< 1 %" : `${Math.round(100 * share)} %`;

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
      ...laws.map((law): Cell[] => [`– ${law.law}`, "", percent(law.share), law.says]),
    ]),
  };
}

/** In order of their middle dates, those without one last. Events that nearly never came are left out; damage below burnt stands with the clutches. */
export const toldEvents = ({ answer: { events } }: Telling) =>
  events
    .filter(({ name, chance }) => chance >= 0.01 && name !== "damage 0.1" && name !== "damage 0.5")
    .sort((a, b) => (a.when?.middle ?? Number.MAX_VALUE) - (b.when?.middle ?? Number.MAX_VALUE));

export function eventTable(telling: Telling): Table {
  const { read } = telling;
  return {
    title: "When it happened: middle, and 9 times in 10 between",
    columns: [
      { says: "event" },
      { says: "had come in", right: true },
      { says: "about", whole: true },
      { says: "9 times in 10 between" },
      { says: "odometer about", right: true },
    ],
    rows: toldEvents(telling).map(({ name, clutch, chance, when }) => [
      wordsFor({ name: name as EventName, ...(clutch === undefined ? {} : { clutch }) }),
      percent(chance),
      when === null ? "" : datesOf(read, when).middle,
      when === null ? "" : `${datesOf(read, when).from} and ${datesOf(read, when).to}`,
      when === null ? "" : inBoth((system) => odometerIn(read, when.middle, alone(system))),
    ]),
    grave: (row) => {
      const { name } = toldEvents(telling)[row]!;
      return name.startsWith("damage") || name === "no drive" || name === "first sustained slip";
    },
  };
}

export function clutchTable({ answer: { clutches } }: Telling): Table {
  const walked = clutches.some((clutch) => clutch.walked !== null);
  const chances = clutches.map(({ name, hurt, half, burnt }): Cell[] => [
    name,
    percent(hurt),
    percent(half),
    percent(burnt),
  ]);
  return {
    title:
      "What a teardown would show: how likely each clutch has lost a tenth, half, all of what it had to spare",
    columns: [
      { says: "clutch" },
      { says: "a tenth", right: true },
      { says: "half", right: true },
      { says: "burnt", right: true },
      ...(walked
        ? [
            { says: "times it gave way", right: true },
            { says: "hottest", right: true },
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
        band(fate.slips, (value) => String(Math.round(value))),
        banded(fate.hottest, "temperature"),
        band(fate.damage, (value) => (value < 0.01 ? "< 0.01" : three(value))),
        band(fate.charred, percent),
      ];
    }),
    grave: (row) => clutches[row]!.burnt >= 0.5,
  };
}

/** The middle, and the middle nine tenths in brackets. */
function band({ middle, nineTenths: [low, high] }: Spread, text: (value: number) => string): string {
  const [a, b, c] = [text(low), text(middle), text(high)];
  return a === c ? b : `${b} (${a} to ${c})`;
}

const banded = (spread: Spread, kind: ShownKind): Both =>
  inBoth((system) => {
    const { factor, offset, unit } = axis(kind, system);
    return `${band(spread, (value) => three(value * factor + offset))} ${unit}`;
  });

const three = (value: number): string => String(Number(value.toPrecision(3)));

export function aheadTable({ answer }: Telling): Table {
  return {
    title: "What to look at next, by what it would leave of the doubt about the opening date",
    columns: [
      { says: "look", prose: true },
      { says: "minutes", right: true },
      { says: "known to ± now", right: true },
      { says: "± after it", right: true },
    ],
    rows: narrowing(answer).map(({ says, minutes, now, after }) => [
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
        item.name,
        inBoth((system) => itemWords(item, read, alone(system))),
      ]),
      ...visit.added.map(({ at, volume, error }, i): Cell[] => [
        `topUps[${i}]`,
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
    title: "What the file does not say, and what stands in for it",
    columns: [{ says: "where" }, { says: "assumed", prose: true }, { says: "origin", prose: true }],
    rows: read.assumptions.map(({ path, says, origin }) => [path, says, originText(origin)]),
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
  const cell = (spread: Spread, unit: string, per: number): Cell => {
    const kind = kinds[unit];
    return kind === undefined
      ? `${band(spread, (value) => three(value * per))}${unit === "" ? "" : ` ${unit}`}`
      : banded(spread, kind);
  };
  return {
    title: "What nobody knows: middle and 5 to 95 %, before and after the evidence",
    columns: [
      { says: "unknown" },
      { says: "before", right: true },
      { says: "after", right: true },
      { says: "origin of the first", prose: true },
    ],
    rows: unknowns.map(({ name, law, unit, per, before, after, origin }) => [
      law === undefined ? name : `${law}: ${name}`,
      cell(before, unit, per),
      cell(after, unit, per),
      originText(origin),
    ]),
  };
}

/** Shown in the tables of the page as well: how much the leak runs at now. */
export function flowTable({ answer: { flow } }: Telling): Table | null {
  if (flow === null) return null;
  const row = (says: string, { middle, nineTenths: [low, high] }: Spread): Cell[] => [
    says,
    amount(middle, "leakFlow"),
    amount(low, "leakFlow"),
    amount(high, "leakFlow"),
  ];
  return {
    title: "What the leak runs at, at the visit",
    columns: [
      { says: "when" },
      { says: "about", right: true },
      { says: "9 times in 10 from", right: true },
      { says: "to", right: true },
    ],
    rows: [row("idling hot", flow.hot), row("parked", flow.parked)],
  };
}
