// What happened to the van, in sentences and in rows of a table.

import type { History } from "../../../src/history/simulate.ts";
import type { EventName, HistoryEvent } from "../../../src/history/watch.ts";
import { density } from "../../../src/physics/fluid/density.ts";
import { surfaceTension } from "../../../src/physics/fluid/surface-tension.ts";
import { dropsPerMinute, dropVolume } from "../../../src/physics/leak/drop.ts";
import { wordsFor } from "../../../src/plots/event-words.ts";
import { axis, show, type UnitSystem } from "../../../src/units/show.ts";
import { unbroken } from "../parts/units.ts";
import type { Settings } from "./van.ts";

/** When and at what reading the history begins, and what a litre weighs [kg/m³ at 15 °C]. */
export interface Beginning {
  readonly date: string;
  readonly odometer: number;
  readonly density15: number;
  readonly dripRadius: number;
}

export const eventOf = ({ events }: Pick<History, "events">, name: EventName): HistoryEvent | undefined =>
  events.find((event) => event.name === name);

const hours = (from: HistoryEvent, to: HistoryEvent): string => {
  const span = (to.running - from.running) / 3600;
  return span < 1
    ? `${Math.max(1, Math.round(span * 60))} running minutes`
    : `${span.toPrecision(2)} running hours`;
};

/** A hole's diameter [m] in inches and millimetres, two digits as it was chosen: "0.0047 in (0.12 mm)". */
export function holeText(hole: number, system: UnitSystem): string {
  const [inches, millimetres] = [
    `${Number((hole / 0.0254).toPrecision(2))} in`,
    `${Number((hole * 1e3).toPrecision(2))} mm`,
  ];
  return system === "US" ? `${inches} (${millimetres})` : `${millimetres} (${inches})`;
}

/** "a hole of 0.12 mm (0.0047 in) in the supply line, 2900 kg". */
export function settingsText({ hole, place, mass }: Settings, system: UnitSystem): string {
  return `a hole of ${unbroken(holeText(hole, system))} in the ${place.replace("-", " ")}, van and load ${unbroken(show(mass, "mass", system))}`;
}

/** The history in a few sentences, to follow "With this hole: ". */
export function storyText(history: History, { density15 }: Beginning, system: UnitSystem): string {
  const gone = ({ lost }: { lost: number }) => unbroken(show(lost / density15, "volume", system));
  const opens = eventOf(history, "leak opens");
  const gulp = eventOf(history, "first gulp of air");
  const slip = eventOf(history, "first sustained slip");
  const end = eventOf(history, "no drive");
  const last = history.trips.at(-1);
  if (opens === undefined || last === undefined) return "the hole never opened.";
  const parts = [
    gulp
      ? `the pump drew its first air ${hours(opens, gulp)} after the hole had opened; ${gone(gulp)} were gone by then.`
      : `the pump drew no air: ${gone(last)} were gone in the end.`,
  ];
  if (gulp && slip)
    parts.push(`The first sustained slip came ${hours(gulp, slip)} later, with ${gone(slip)} gone.`);
  if (slip && end) parts.push(`Another ${hours(slip, end)}, and the van no longer drove.`);
  const burnt = history.clutches.filter(({ damage }) => damage >= 1).map(({ name }) => name);
  if (burnt.length > 0) parts.push(`Burnt: ${burnt.join(", ")}.`);
  if (!end) parts.push(`At the end of the days looked at it still drove.`);
  return parts.join(" ");
}

/** One event in the columns of the table, as text in the reader's units. */
export interface EventRow {
  readonly name: string;
  readonly condition: string;
  readonly grave: boolean;
  readonly cells: readonly string[];
}

export function eventColumns(system: UnitSystem): readonly string[] {
  return [
    "date",
    `odometer [${axis("distance", system).unit}]`,
    `fluid lost [${axis("volume", system).unit}]`,
    `level [${axis("length", system).unit}]`,
    `fluid [${axis("temperature", system).unit}]`,
    "drops per minute",
  ];
}

/** Every event of the history; the level is the last that was read on the stick, hot and idling, the drops those that follow. */
export function eventRows(history: History, beginning: Beginning, system: UnitSystem): EventRow[] {
  const midnight = Date.parse(`${beginning.date}T00:00:00Z`);
  return history.events.map((event) => ({
    name: wordsFor(event),
    condition: event.condition,
    grave: /slip|damage|drive|parts/.test(event.name),
    cells: [
      dateText(midnight + event.clock * 1000),
      plain(beginning.odometer + event.distance, "distance", system, 0),
      plain(event.lost / beginning.density15, "volume", system, 2),
      plain(levelAt(history, event.clock), "length", system, system === "US" ? 1 : 0),
      plain(event.temperature, "temperature", system, 0),
      drops(history, event.clock, beginning),
    ],
  }));
}

const dates = new Intl.DateTimeFormat("en-GB", {
  timeZone: "UTC",
  day: "numeric",
  month: "short",
  hour: "2-digit",
  minute: "2-digit",
});
const dateText = (milliseconds: number): string => dates.format(milliseconds);

function plain(value: number, kind: Parameters<typeof axis>[0], system: UnitSystem, digits: number): string {
  if (Number.isNaN(value)) return "not read";
  const { factor, offset } = axis(kind, system);
  return (value * factor + offset).toLocaleString("en-US", {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
}

function levelAt({ trips }: History, clock: number): number {
  let level = Number.NaN;
  for (const row of trips) {
    if (row.clock > clock + 1) break;
    if (row.level !== null) level = row.level;
  }
  return level;
}

/** Drops that would be counted at the end of the event's trip, idling; more than a person can count is a stream. */
function drops({ trips }: History, clock: number, { density15, dripRadius }: Beginning): string {
  const row = trips.find((trip) => trip.clock >= clock) ?? trips.at(-1);
  if (row === undefined) return "0";
  const drop = dropVolume(dripRadius, surfaceTension(row.hottest), density(density15, row.hottest));
  const count = dropsPerMinute(Math.max(0, row.leakFlow), drop);
  if (count === 0) return "0";
  if (count > COUNTABLE) return "stream";
  return count < 10 ? count.toPrecision(2) : count.toFixed(0);
}
const COUNTABLE = 400;
