// Events as they are told: those of a look back in the order in which they came; what leaks then, under a head that says when it is looked at.
import { expect, test } from "vitest";
import { eventColumns, eventRows } from "../../demos/pages/neither-on-nor-off/story.ts";
import { eventTable } from "../../demos/report/event-table.ts";
import { readCase } from "../../src/inputs/case.ts";
import { changed } from "../inputs/shipped.ts";
import { toldEvents } from "../../demos/look-back/events.ts";
import { saidIn, type Said } from "../../demos/report/said.ts";
import type { Told } from "../../demos/pages/neither-on-nor-off/sticks.ts";
import type { HistoryEvent } from "../../src/history/watch.ts";
import { density } from "../../src/physics/fluid/density.ts";
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

test("fluid lost is told at the temperature of the fill, in the report and on the page: all of it gone is the fill", () => {
  const given = readCase(changed());
  const { build, fluid } = given.unit;
  const all = {
    name: "no drive",
    condition: "",
    clock: 0,
    running: 0,
    distance: 0,
    lost: build.fill * density(fluid.density15, build.fillTemperature),
    mass: 0,
    temperature: build.fillTemperature,
    leakFlow: 0,
  } as HistoryEvent;
  const litres = 1000 * build.fill;
  const [row] = eventTable(given, { events: [all] }).rows;
  expect(saidIn(row![3] as Said, "SI")).toBe(`${litres.toFixed(2)} L`);
  const told = { events: [all], trips: [], sticks: [0] } as unknown as Told;
  expect(eventRows(told, { ...given.start, unit: given.unit }, "SI")[0]!.cells[2]).toBe(litres.toFixed(2));
});
