// The bands and the rankings as tables.

import type { EventBand, Measure } from "../../src/ensemble/bands.ts";
import type { Ensemble } from "../../src/ensemble/ensemble.ts";
import { keyOf } from "../../src/ensemble/outcome.ts";
import type { Band } from "../../src/ensemble/quantiles.ts";
import type { RankTable } from "../../src/ensemble/ranks.ts";
import type { VarianceTable } from "../../src/ensemble/variance.ts";
import type { Case } from "../../src/inputs/case.ts";
import { dateOf } from "../../src/inputs/plan.ts";
import { wordsFor } from "../../src/plots/event-words.ts";
import { inputWords } from "../report/input-words.ts";
import { inBoth } from "../report/said.ts";
import type { Table } from "../report/table.ts";
import { axis, type ShownKind } from "../../src/units/show.ts";
import { lastPlace, toPlace } from "../../src/units/show-spread.ts";

/** Later than the end of a member's history; a note says so. */
const LATER = "later";

/** Damage marks below burnt, and those of single clutches, are left to the page's other tables. */
export const isTold = ({ name, clutch }: EventBand): boolean =>
  clutch === undefined && name !== "damage 0.1" && name !== "damage 0.5";

export function bandTable(given: Case, { events, asWritten, outcomes }: Ensemble): Table {
  const dates = (band: Band) => threeOf(band, (clock) => dateOf(given, clock).slice(0, 10));
  const latest = (measure: Measure) => Math.max(...outcomes.map(({ end }) => end[measure]));
  const [running, lost, odometer] = [latest("running"), latest("lost"), latest("odometer")];
  const written = new Map(asWritten.events.map((event) => [keyOf(event), event]));
  return {
    title: `When it happens in ${outcomes.length} members: median, and from 5 to 95 %`,
    columns: [
      { says: "event" },
      { says: "happens in", right: true },
      { says: "date", whole: true },
      { says: "running hours", right: true },
      { says: headed("fluid lost", "volume"), right: true },
      { says: headed("odometer", "distance"), right: true, onlyOnPage: true },
      { says: "as written [h]", right: true },
    ],
    rows: events
      .filter(isTold)
      .map((event) => [
        wordsFor(event),
        `${Math.round(100 * event.share)} %`,
        dates(event.clock),
        toldBand(event.running, running, 1 / 3600, 0.1),
        spanIn(event.lost, lost, "volume", 0.01),
        spanIn(event.odometer, odometer, "distance", 1),
        hoursText(written.get(event.key)?.running),
      ]),
    grave: (row) => {
      const { name } = events.filter(isTold)[row]!;
      return name.startsWith("damage") || name === "no drive" || name === "first sustained slip";
    },
  };
}

const hoursText = (running: number | undefined): string =>
  running === undefined ? LATER : (running / 3600).toFixed(1);

/** "median (5 % to 95 %)". */
function threeOf(band: Band, text: (value: number) => string): string {
  const one = (value: number | null | undefined) =>
    value === null || value === undefined ? LATER : text(value);
  const [low, middle, high] = [one(band[0]), one(band[2]), one(band[4])];
  return low === high ? low : `${middle} (${low} to ${high})`;
}

/**
 * A band times a factor, told no finer than its width warrants, nor than a last place. What is later than the end has no width; where only one end of a band is
 * known, that reaches at least to the latest end of all.
 */
export function toldBand(band: Band, latest: number, factor: number, least: number): string {
  const known = [band[0], band[2], band[4]].filter((value) => typeof value === "number");
  const ends = known.length === 1 ? [...known, latest] : known;
  const width = ends.length === 0 ? 0 : Math.max(...ends) - Math.min(...ends);
  const place = lastPlace(width * factor, least);
  return threeOf(band, (value) => toPlace([value * factor], place)[0]!);
}

/** Numbers only: their unit stands in the head of the column. */
const spanIn = (band: Band, latest: number, kind: ShownKind, least: number) =>
  inBoth((system) => toldBand(band, latest, axis(kind, system).factor, least));

const headed = (says: string, kind: ShownKind) => inBoth((system) => `${says} [${axis(kind, system).unit}]`);

type Clutches = Parameters<typeof inputWords>[1];

/** An input in words, with its place in the case file for who wants to narrow it. */
function namedInput(path: string, clutches: Clutches): string {
  const [says, owner] = inputWords(path, clutches);
  return `${says}${owner === null ? "" : `, ${owner}`}: ${path}`;
}

const MOST = 8;
const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** The inputs that bear most on an event. */
export function rankTable(
  { inputs, chance, members, later }: RankTable,
  says: string,
  clutches: Clutches,
): Table {
  return {
    title: `What "${says}" hangs on: ${members} members, in ${later} of them it had not happened by the end; chance alone reaches ${chance.toFixed(2)}`,
    columns: [
      { says: "input" },
      { says: "rank correlation", right: true },
      { says: "in nine of ten", right: true },
      { says: "alone explains", right: true },
      { says: "what it means" },
    ],
    rows: inputs
      .slice(0, MOST)
      .map(({ path, correlation, interval: [low, high], share, class: told }) => [
        namedInput(path, clutches),
        correlation.toFixed(2),
        `${low.toFixed(2)} to ${high.toFixed(2)}`,
        percent(share),
        told !== "matters"
          ? told
          : Math.abs(correlation) > chance
            ? `larger means ${correlation > 0 ? "later" : "sooner"}`
            : "matters, not one way throughout",
      ]),
  };
}

export function varianceTable(table: VarianceTable, says: string, clutches: Clutches): Table {
  const { rows, ended, logarithmic, inputs } = table;
  return {
    title: `Where the doubt about "${says}" comes from: ${rows} rows${logarithmic ? ", of the logarithm" : ""}; ${ended} histories ended before it and count with their end`,
    columns: [
      { says: "input" },
      { says: "alone", right: true },
      { says: "nine tenths", right: true },
      { says: "with others", right: true },
      { says: "nine tenths", right: true },
    ],
    rows: inputs
      .slice(0, MOST)
      .map(({ path, first, firstInterval, total, totalInterval }) => [
        namedInput(path, clutches),
        percent(first),
        firstInterval.map(percent).join(" to "),
        percent(total),
        totalInterval.map(percent).join(" to "),
      ]),
  };
}
