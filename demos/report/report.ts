// All that a run has to say, before it becomes text on a screen or a page.

import type { History } from "../../src/history/simulate.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { bayTable } from "./bay-table.ts";
import { booksText } from "./books.ts";
import { cautions } from "./cautions.ts";
import { clutchTable } from "./clutch-table.ts";
import type { Computed } from "./compute.ts";
import { eventTable } from "./event-table.ts";
import { fadeTable } from "./fade-table.ts";
import { leakText } from "./leak-words.ts";
import { isRecord, type Loaded } from "./load-case.ts";
import { page } from "./page.ts";
import { drawings, type Drawing } from "./pictures.ts";
import { rangesTable } from "./ranges-table.ts";
import { standAlone } from "./slim-svg.ts";
import { endingText, story } from "./story.ts";
import { tableText, type Table } from "./table.ts";

export interface Report {
  readonly name: string;
  readonly about: string;
  /** The leak in words. */
  readonly leak: string;
  readonly story: readonly string[];
  readonly ending: string;
  readonly books: readonly string[];
  readonly tables: Readonly<Record<"events" | "clutches" | "bay" | "fades" | "ranges", Table>>;
  readonly pictures: readonly Drawing[];
}

export function reportOf({ given, data }: Loaded, computed: Computed, system: UnitSystem): Report {
  const history: History = computed.history;
  const about = isRecord(data) ? data["about"] : undefined;
  return {
    name: given.name,
    about: typeof about === "string" ? about : "",
    leak: leakText(given.unit.leak, system) ?? "",
    story: story(given, history, system),
    ending: endingText(given, history, system),
    books: booksText(history),
    tables: {
      events: eventTable(given, history),
      clutches: clutchTable(history.clutches),
      bay: bayTable(computed.cards, system),
      fades: fadeTable(computed),
      ranges: rangesTable(given, data),
    },
    pictures: drawings(given, computed),
  };
}

/** What has to be said beside the tables. */
export const leakNote =
  "Drops a minute and the look of the leak are those of that moment. When the pump draws air or the cooler's line starves, " +
  "the leak itself slows down or stops: that is no sign of healing. With the engine off nothing is counted.";
export const tintNote =
  "Damage is 0 when new and 1 when the clutch no longer carries its rated torque at rated pressure. Temper tints tell how " +
  "hot the steel became, and only if it was bright before; they tell no date.";

/** What is printed. */
export function screenText({ name, leak, story, ending, books, tables }: Report, system: UnitSystem): string {
  const { events, clutches, bay, fades } = tables;
  return [
    name,
    "",
    ...(leak === "" ? [] : [leak, ""]),
    ...story,
    "",
    tableText(events, system),
    leakNote,
    "",
    ending,
    ...books,
    "",
    tableText(clutches, system),
    tintNote,
    "",
    tableText(fades, system),
    tableText(bay, system),
    "Before anything is done about it",
    ...cautions.map((caution) => `  ${caution}`),
    "",
  ].join("\n");
}

/** The files of the report: the page, and each picture in the chosen units. */
export function filesOf(report: Report, system: UnitSystem): Map<string, string> {
  return new Map([
    ["report.html", page(report, system)],
    ...report.pictures.map(({ name, draw }) => [`${name}.svg`, standAlone(draw(system))] as const),
  ]);
}
