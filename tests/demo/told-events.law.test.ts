// Events as they are told: those of a look back in the order in which they came; what leaks then, under a head that says when it is looked at.
import { expect, test } from "vitest";
import { eventColumns } from "../../demos/pages/neither-on-nor-off/story.ts";
import { eventTable } from "../../demos/report/event-table.ts";
import { readCase } from "../../src/inputs/case.ts";
import { changed } from "../inputs/shipped.ts";
import { toldEvents } from "../../demos/look-back/events.ts";
import type { Telling } from "../../demos/look-back/told.ts";

const event = (name: string, chance: number, middle: number | null) => ({
  name,
  chance,
  when: middle === null ? null : { middle, half: [middle, middle], nineTenths: [middle, middle] },
});

test("stand by their middle dates, those that have none last; what nearly never came is left out", () => {
  const events = [
    event("hiding place full", 1, 30),
    event("cooler flow below half", 0.02, null),
    event("no drive", 0.001, 1),
    event("level below the low mark", 1, 20),
    event("first gulp of air", 0.9, 40),
  ];
  const named = (shield: boolean) =>
    toldEvents({ read: { visit: { shield } }, answer: { events } } as unknown as Telling).map(
      ({ name }) => name,
    );
  // Without a shield a bare underside is wet within minutes, which is no news.
  expect(named(false)).not.toContain("hiding place full");
  expect(named(true)).toEqual([
    "level below the low mark",
    "hiding place full",
    "first gulp of air",
    "cooler flow below half",
  ]);
});

test("what leaks has two heads: as it runs at that moment in the report, as it drips after the trip on the page", () => {
  const report = eventTable(readCase(changed()), { events: [] }).columns.map(({ says }) => says);
  const page = eventColumns("US");
  expect(report).toContain("leak runs then");
  expect(page.at(-1)).toBe("drips after the trip");
  expect([...report, ...page]).not.toContain("at the leak");
});
