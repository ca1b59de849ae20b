// What happened to the van, in sentences and in rows of a table.

import type { History } from "../../../src/history/simulate.ts";
import type { EventName, HistoryEvent } from "../../../src/history/watch.ts";
import type { Case } from "../../../src/inputs/case.ts";
import { volumeOf } from "../../../src/inputs/plan.ts";
import { density } from "../../../src/physics/fluid/density.ts";
import { surfaceTension } from "../../../src/physics/fluid/surface-tension.ts";
import { dropsPerMinute, dropVolume } from "../../../src/physics/leak/drop.ts";
import { leakWords } from "../../../src/bay/leak-words.ts";
import { conditionIn, oneForEachClutch, wordsFor } from "../../../src/plots/event-words.ts";
import { axis, show, type UnitSystem } from "../../../src/units/show.ts";
import type { Told } from "./sticks.ts";
import type { Settings } from "./van.ts";

/** When and at what reading the history begins, and the unit that it is one of. */
export interface Beginning extends Pick<Case, "unit"> {
  readonly date: string;
  readonly odometer: number;
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
  return `a hole of ${holeText(hole, system)} in the ${place.replace("-", " ")}, van and load ${show(mass, "mass", system)}`;
}

/** The history in a few sentences, to follow "With this hole: ". */
export function storyText(history: History, beginning: Beginning, system: UnitSystem): string {
  const gone = ({ lost }: { lost: number }) => show(volumeOf(beginning, lost), "volume", system);
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
    `stick, hot [${axis("length", system).unit}]`,
    `fluid is at [${axis("temperature", system).unit}]`,
    "drips after the trip",
  ];
}

/** Every event of the history, one for each clutch's damage; the stick as the check proper would show it, the leak as it is seen when the trip is over. */
export function eventRows(history: Told, beginning: Beginning, system: UnitSystem): EventRow[] {
  const midnight = Date.parse(`${beginning.date}T00:00:00Z`);
  return oneForEachClutch(history.events).map((event, i) => ({
    name: wordsFor(event),
    condition: conditionIn(event, system),
    grave: /slip|damage|drive|parts/.test(event.name),
    cells: [
      dateText(midnight + event.clock * 1000),
      plain(beginning.odometer + event.distance, "distance", system, 0),
      plain(volumeOf(beginning, event.lost), "volume", system, 2),
      plain(history.sticks[i]!, "length", system, system === "US" ? 2 : 0),
      plain(event.temperature, "temperature", system, 0),
      leakText(history, event.clock, beginning, system),
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
  const { factor, offset } = axis(kind, system);
  return (value * factor + offset).toLocaleString("en-US", {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
}

/** What would be seen at the leak at the end of the event's trip, idling. */
function leakText(
  { trips }: History,
  clock: number,
  { unit: { fluid, leak } }: Beginning,
  system: UnitSystem,
): string {
  const row = trips.find((trip) => trip.clock >= clock) ?? trips.at(-1);
  if (row === undefined) return "none";
  const drop = dropVolume(
    leak!.dripRadius,
    surfaceTension(row.hottest),
    density(fluid.density15, row.hottest),
  );
  const flow = Math.max(0, row.leakFlow);
  return leakWords(dropsPerMinute(flow, drop), flow, system);
}
