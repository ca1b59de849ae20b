// The report as one page that needs nothing else: style and pictures stand in it, and no script.

import type { UnitSystem } from "../../src/units/show.ts";
import { cautionSection, figure, framed, paragraphs, section } from "./frame.ts";
import { tableHtml } from "./table.ts";
import { leakNote, tintNote, type Report } from "./report.ts";

export function page(report: Report, system: UnitSystem): string {
  const { name, about, story, books, bayNotes, tables, goesWith, pictures } = report;
  const figures = (...names: readonly RegExp[]) =>
    pictures
      .filter((picture) => names.some((wanted) => wanted.test(picture.name)))
      .map(figure)
      .join("\n");
  const closeUps = figures(/^close-up/);
  return framed({
    kind: "Fluid loss in an automatic transmission: what happened, and when",
    title: name,
    name,
    about,
    system,
    sections: [
      section("In short", paragraphs(story)),
      cautionSection(),
      section(
        "What happened",
        `${figures(/^history$/)}\n${tableHtml(tables.events)}\n${paragraphs([leakNote])}\n${figures(/^last-part$/)}`,
      ),
      ...(closeUps === "" ? [] : [section("The moments that matter", closeUps)]),
      section(
        "What a teardown would find",
        `${tableHtml(tables.clutches)}\n${tableHtml(tables.linings)}\n${paragraphs([tintNote])}`,
      ),
      ...(goesWith.length === 0 ? [] : [section("What goes with it", goesWith.map(tableHtml).join("\n"))]),
      section(
        "No pressure, no clutch, no harm?",
        `<p>True at the left end of the picture, where a valve takes the pressure away at once. A leak takes it away over minutes
and hours, and the clutch is neither on nor off all that time.</p>
${figures(/^fade$/)}
${tableHtml(tables.fades)}
${figures(/^clutch-states$/, /^slip-heat$/)}`,
      ),
      section(
        "What the bay would have measured",
        `${figures(/^bay-ladder$/)}\n${tableHtml(tables.bay)}\n${paragraphs(bayNotes)}`,
      ),
      section(
        "How far to trust this",
        `${paragraphs(books)}
${tables.ranges.rows.length > 0 ? tableHtml(tables.ranges) : "<p>No input of this case says within which range it is known.</p>"}`,
        "ranges",
      ),
    ],
  });
}
