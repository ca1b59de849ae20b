// What happened, in the order of time: when, how far, how much was gone, and what could be seen.

import { atTheLeak } from "../../src/bay/at-the-leak.ts";
import { stickIdling } from "../../src/bay/level-checks.ts";
import { HOT } from "../../src/bay/ready.ts";
import type { History } from "../../src/history/simulate.ts";
import type { HistoryEvent } from "../../src/history/watch.ts";
import type { Case } from "../../src/inputs/case.ts";
import { dateOf } from "../../src/inputs/plan.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { wordsFor } from "../../src/plots/event-words.ts";
import { amount, type Amount, type Cell, type Table } from "./table.ts";

export function eventTable(given: Case, { events }: Pick<History, "events">): Table {
  return {
    title: "What happened",
    columns: [
      { says: "event" },
      { says: "date", whole: true },
      { says: "odometer", right: true },
      { says: "fluid lost", right: true },
      { says: "stick, last hot look", right: true },
      { says: "fluid", right: true },
      { says: "drops/min", right: true },
      { says: "leak", whole: true },
      { says: "what makes it an event", onlyOnPage: true, prose: true },
    ],
    rows: events.map((event) => [...cells(given, events, event), event.condition]),
    grave: (row) => isHarm(events[row]!),
  };
}

/** Harm done, rather than a sign of it to come. */
function isHarm({ name }: HistoryEvent): boolean {
  return name.startsWith("damage") || ["first sustained slip", "line parts", "no drive"].includes(name);
}

function cells(given: Case, events: readonly HistoryEvent[], event: HistoryEvent): Cell[] {
  const { unit, start } = given;
  const opened = events.find(({ name }) => name === "leak opens");
  const { temperature, leakFlow } = event;
  const age = event.running - (opened?.running ?? Infinity);
  const calendar = event.clock - (opened?.clock ?? event.clock);
  const { drops, looks } = atTheLeak(unit, { age, calendar, temperature, flow: leakFlow });
  return [
    wordsFor(event),
    dateOf(given, event.clock),
    amount(start.odometer + event.distance, "distance"),
    amount(volumeOf(given, event.lost), "volume"),
    levelAt(given, event),
    amount(temperature, "temperature"),
    drops === 0 ? "0" : drops < 10 ? drops.toPrecision(2) : drops.toFixed(0),
    looks === "dry" ? "no flow" : looks,
  ];
}

/** Fluid of a mass [kg] as the volume [m³] that it fills at the temperature of the fill. */
export function volumeOf({ unit }: Pick<Case, "unit">, mass: number): number {
  return mass / density(unit.fluid.density15, unit.build.fillTemperature);
}

/** Between these temperatures of the fluid [K] a level is checked hot. */
const CHECK = { from: 338.15, to: 368.15 } as const;

/** What the stick shows of the fluid inside, idling in park: at the temperature of the moment if that is one for a hot check. */
function levelAt(given: Case, { mass, temperature }: HistoryEvent): Amount {
  const { build } = given.unit;
  const shortage = Math.min(build.fill - volumeOf(given, mass), 0.999 * build.fill);
  const hot = temperature >= CHECK.from && temperature <= CHECK.to ? temperature : HOT;
  const { depth, position } = stickIdling({ ...given.unit, leak: null }, shortage, hot);
  return { ...amount(depth, "length"), mark: onStick(position) };
}

/** In a technician's words; a stick is read to about a millimetre, a fifth of the way between its marks. */
function onStick(position: number): string {
  if (position > 1.2) return "above full";
  if (position > 0.8) return "full";
  if (position > 0.2) return "between";
  return position > -0.2 ? "at low" : "below low";
}
