// What was missing over time, with what was measured of it, as its picture takes it.

import { closeTo, type Calendar } from "../../src/plots/calendar-axes.ts";
import { wayOf } from "../../src/lookback/along.ts";
import type { MissingCurve } from "../../src/plots/missing-curve.ts";
import type { Telling } from "./told.ts";

/** The dates that a picture of the opening and of what followed shows: all since the last full, or the last of them. */
export function calendarOf({ read, answer: { opened, events } }: Telling): Calendar {
  // Where it stood before the visit its miles end at another date in each case: one axis would be wrong for most.
  const stood = events.some(({ name, chance }) => name === "no drive" && chance >= 0.5);
  const calendar = { ...read.clock, way: stood ? null : wayOf(read.visit) };
  return opened === null ? calendar : closeTo(calendar, opened.when.nineTenths[0]);
}

export function curveOf(telling: Telling): MissingCurve {
  const { read, answer } = telling;
  const { missing } = answer;
  return {
    calendar: calendarOf(telling),
    at: missing.at,
    bands: missing.bands,
    measured: read.visit.evidence.flatMap((item) =>
      item.kind === "fluid missing"
        ? [{ at: item.at, volume: item.volume, error: item.error }]
        : item.kind === "known full"
          ? [{ at: item.at, volume: 0, error: item.error }]
          : [],
    ),
    added: read.visit.added.map(({ at }) => at),
  };
}
