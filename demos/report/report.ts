// All that a run has to say, before it becomes text on a screen or a page.

import type { History } from "../../src/history/simulate.ts";
import { planOf } from "../../src/inputs/plan.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { bayTable } from "./bay-table.ts";
import { booksText } from "./books.ts";
import { cautions } from "./cautions.ts";
import { clutchTable, liningTable } from "./clutch-table.ts";
import type { Computed } from "./compute.ts";
import { drivenText, remarksText } from "./driven.ts";
import { eventTable } from "./event-table.ts";
import { fadeTable } from "./fade-table.ts";
import { leakText } from "./leak-words.ts";
import { aboutIn, type Loaded } from "./load-case.ts";
import { page } from "./page.ts";
import { goneIn, partTable, refillTable } from "./part-table.ts";
import { firstLow } from "./first-low.ts";
import { drawnAt, type Drawing } from "./frame.ts";
import { drawings } from "./pictures.ts";
import { rangesTable } from "./ranges-table.ts";
import { standAlone } from "./slim-svg.ts";
import { endingText, story } from "./story.ts";
import { alone, linesInBoth, withOther, type Both, type Tell } from "./said.ts";
import { stretched } from "./stretched.ts";
import { tableText, type Table } from "./table.ts";

export interface Report {
  readonly name: string;
  readonly about: string;
  /** For the page, each sentence in either system; for the screen, the chosen one with the other in brackets. */
  readonly story: readonly Both[];
  readonly storyOnScreen: readonly string[];
  readonly books: readonly Both[];
  /** What has to be said beside the bay card. */
  readonly bayNotes: readonly string[];
  readonly tables: Readonly<Record<"events" | "clutches" | "linings" | "bay" | "fades" | "ranges", Table>>;
  /** Parts and fluid that go with the leak; without one nothing does. */
  readonly goesWith: readonly Table[];
  readonly pictures: readonly Drawing[];
}

export function reportOf({ given, data }: Loaded, computed: Computed, system: UnitSystem): Report {
  const history: History = computed.history;
  const harm = history.events.find(({ name }) => name === "first sustained slip" || name === "damage 1");
  const low = firstLow(given.unit, history, harm?.clock);
  const { weekday } = planOf(given);
  const told = (tell: Tell) => [
    ...(given.unit.leak === null ? [] : [leakText(given.unit.leak, tell)]),
    ...remarksText(given.remarks),
    ...drivenText(given.week, weekday, history, tell),
    ...story(given, history, low, tell),
    endingText(given, history, tell),
  ];
  return {
    name: given.name,
    about: aboutIn(data),
    story: linesInBoth((each) => told(alone(each))),
    storyOnScreen: told(withOther(system)),
    books: linesInBoth((each) => [booksText(history), ...stretched(history.outside, each)]),
    bayNotes: [...new Set(computed.cards.flatMap(({ notes }) => notes))],
    tables: {
      events: eventTable(given, history),
      clutches: clutchTable(given, history),
      linings: liningTable(history),
      bay: bayTable(computed.cards),
      fades: fadeTable(computed),
      ranges: rangesTable(given),
    },
    goesWith:
      given.unit.leak === null
        ? []
        : [
            partTable("What goes with the leak, at the end", goneIn(history.clutches)),
            refillTable(given.unit),
          ],
    pictures: drawings(given, computed),
  };
}

/** What has to be said beside the tables. */
export const leakNote =
  "What the leak runs then, and how it looks, are those of that very moment, under way. When the pump draws air or the cooler's line starves, " +
  "the leak itself slows down or stops: that is no sign of healing. With the engine off nothing is counted.";
export const tintNote =
  "Damage is 0 when new and 1 when the clutch no longer carries its rated torque at rated pressure. Temper tints tell how " +
  "hot the steel became, and only if it was bright before; they tell no date.";

/** What is printed. */
export function screenText(
  { name, about, storyOnScreen, books, bayNotes, tables, goesWith }: Report,
  system: UnitSystem,
): string {
  const { events, clutches, linings, bay, fades } = tables;
  return [
    name,
    "",
    ...(about === "" ? [] : [about, ""]),
    ...storyOnScreen,
    "",
    tableText(events, system),
    leakNote,
    "",
    ...books.map((text) => text[system]),
    "",
    tableText(clutches, system),
    tableText(linings, system),
    tintNote,
    "",
    ...goesWith.map((table) => tableText(table, system)),
    tableText(fades, system),
    tableText(bay, system),
    ...bayNotes.flatMap((note) => [note, ""]),
    "Before anything is done about it",
    ...cautions.map((caution) => `  ${caution}`),
    "",
  ].join("\n");
}

/** The files of the report: the page, and each picture in the chosen units. */
export function filesOf(report: Report, system: UnitSystem): Map<string, string> {
  return new Map([
    ["report.html", page(report, system)],
    ...report.pictures.map(
      ({ name, draw }) => [`${name}.svg`, standAlone(draw(system, drawnAt.wide))] as const,
    ),
  ]);
}
