// What happened, in the order of time: when, how far, how much was gone, and what could be seen.

import { asRead } from "../../src/bay/as-read.ts";
import { atTheLeak } from "../../src/bay/at-the-leak.ts";
import { hotCheck } from "../../src/bay/hot-check.ts";
import { leakWords } from "../../src/bay/leak-words.ts";
import { HOT } from "../../src/bay/ready.ts";
import type { History } from "../../src/history/simulate.ts";
import type { HistoryEvent } from "../../src/history/watch.ts";
import type { Case } from "../../src/inputs/case.ts";
import { dateOf, volumeOf } from "../../src/inputs/plan.ts";
import { conditionIn, oneForEachClutch, wordsFor } from "../../src/plots/event-words.ts";
import { alone, inBoth } from "./said.ts";
import { amount, type Amount, type Cell, type Table } from "./table.ts";

export function eventTable(given: Case, { events }: Pick<History, "events">): Table {
  const told = oneForEachClutch(events);
  return {
    title: "What happened",
    columns: [
      { says: "event" },
      { says: "date", whole: true },
      { says: "odometer", right: true },
      { says: "fluid lost", right: true },
      {
        says: inBoth((system) => `stick, idling in park at ${alone(system)(HOT, "temperature")}`),
        right: true,
      },
      { says: "fluid is at", right: true },
      { says: "leak runs then", right: true },
      { says: "it looks", whole: true },
      { says: "what makes it an event", onlyOnPage: true, prose: true },
    ],
    rows: told.map((event) => [
      ...cells(given, events, event),
      inBoth((system) => `${conditionIn(event, system)}${marksBefore(given, events, event)}`),
    ]),
    grave: (row) => isHarm(told[row]!),
  };
}

/** Harm done, rather than a sign of it to come. */
function isHarm({ name }: HistoryEvent): boolean {
  return name.startsWith("damage") || ["first sustained slip", "line parts", "no drive"].includes(name);
}

/** When a clutch passed its earlier marks: "; damage 0.1 on 2025-01-14 08:43, 0.5 on 2025-01-14 08:43". */
function marksBefore(given: Case, events: readonly HistoryEvent[], event: HistoryEvent): string {
  const earlier = events.filter(
    ({ name, clutch }) => name.startsWith("damage") && clutch === event.clutch && name < event.name,
  );
  if (!event.name.startsWith("damage") || earlier.length === 0) return "";
  return `; ${earlier.map(({ name, clock }) => `${name} on ${dateOf(given, clock)}`).join(", ")}`;
}

function cells(given: Case, events: readonly HistoryEvent[], event: HistoryEvent): Cell[] {
  const { unit, start } = given;
  const opened = events.find(({ name }) => name === "leak opens");
  const { temperature, leakFlow: flow } = event;
  const age = event.running - (opened?.running ?? Infinity);
  const calendar = event.clock - (opened?.clock ?? event.clock);
  const { drops, looks } = atTheLeak(unit, { age, calendar, temperature, flow });
  return [
    wordsFor(event),
    dateOf(given, event.clock),
    amount(start.odometer + event.distance, "distance"),
    inBoth((system) => asRead(volumeOf(given, event.lost), "volume", system)),
    stickCell(given, event),
    inBoth((system) => asRead(temperature, "temperature", system)),
    inBoth((system) => leakWords(drops, flow, system)),
    looks === "dry" ? "no flow" : looks,
  ];
}

/** What the stick would show of the fluid that is left, in the check proper, whatever the unit does at that moment. */
function stickCell({ unit }: Case, { mass }: HistoryEvent): Amount {
  const { depth, position } = hotCheck(unit, Math.max(mass, 0.01));
  return { ...inBoth((system) => asRead(depth, "length", system)), mark: onStick(position) };
}

/** In a technician's words; a stick is read to about a millimetre, a fifth of the way between its marks. */
function onStick(position: number): string {
  if (position > 1.2) return "above full";
  if (position > 0.8) return "full";
  if (position > 0.2) return "between";
  return position > -0.2 ? "at low" : "below low";
}
