// Dates and odometer readings under a picture whose time is counted in seconds from a first date.

import { format, scaleUtc, ticks, utcFormat } from "d3";
import { axis, type UnitSystem } from "../units/show.ts";
import type { TimeAxis } from "./strip.ts";

/** Both clocks of a visit. */
export interface Calendar {
  /** ISO date whose midnight is second 0. */
  readonly date: string;
  /** The visit [s], and the distance driven until then [m]. */
  readonly at: number;
  readonly distance: number;
  /** Odometer at second 0 [m]; null when nobody read it: distances count from there. */
  readonly odometer: number | null;
  /** Share of that distance driven by a moment, rising from 0 to 1; evenly when missing; null where no date has a reading of its own: only dates are shown then. */
  readonly way?: ((at: number) => number) | null;
  /** The first moment that is shown [s]; second 0 when missing. What lies before it stands at the edge. */
  readonly from?: number;
}

/** A calendar that begins late enough for a band near the visit to be seen, where that is a small part of the whole time. */
export function closeTo(calendar: Calendar, earliest: number): Calendar {
  const from = calendar.at - WIDER * (calendar.at - earliest);
  return from > LATE * calendar.at ? { ...calendar, from } : calendar;
}
/** So much wider than the band, and only from so far into the time. */
const WIDER = 1.5;
const LATE = 0.7;

const whole = utcFormat("%Y-%m-%d");
const dayOnly = utcFormat("%-d %b");
const hour = utcFormat("%-d %b %H:%M");
/** Shorter spans are told by the hour [s]. */
const BY_HOURS = 4 * 86400;

/** Round dates between the first moment and the visit; the year is told with the first. */
export function dateAxis({ date, at, from = 0 }: Calendar, width: number): TimeAxis {
  const first = Date.parse(`${date}T00:00:00Z`);
  const scale = scaleUtc().domain([first + from * 1000, first + at * 1000]);
  const marks = scale.ticks(Math.max(2, Math.round(width / 110)));
  const years = new Set(marks.map((mark) => mark.getUTCFullYear()));
  return {
    label: years.size > 1 ? "date" : `date, ${[...years][0] ?? date.slice(0, 4)}`,
    ticks: marks.map((mark) => ({
      at: (mark.getTime() - first) / 1000,
      text: at - from < BY_HOURS ? hour(mark) : years.size > 1 ? whole(mark) : dayOnly(mark),
    })),
  };
}

/** Round readings of the odometer, or distances since the last full. */
function distanceAxis(
  { at, distance, odometer, from: shown = 0 }: Calendar,
  way: (at: number) => number,
  width: number,
  system: UnitSystem,
): TimeAxis {
  const { factor, unit } = axis("distance", system);
  const from = (odometer ?? 0) * factor;
  const far = distance * factor;
  return {
    label: odometer === null ? `driven since the last full [${unit}]` : `odometer [${unit}]`,
    ticks: ticks(from + far * way(shown), from + far, Math.max(2, Math.round(width / 150))).map((value) => ({
      at: reached(way, (value - from) / far, at),
      text: format(",.10~g")(value),
    })),
  };
}

/** The first moment by which a share of the way is driven, by halving. */
function reached(way: (at: number) => number, share: number, end: number): number {
  let [low, high] = [0, end];
  for (let i = 0; i < 50; i++) {
    const middle = 0.5 * (low + high);
    if (way(middle) >= share) high = middle;
    else low = middle;
  }
  return high;
}

/** What the rows are, for a picture that is read aloud. */
export const axisWords = ({ way }: Calendar): string => (way === null ? "dates" : "dates and odometer");

/** Both rows, or that of the dates alone. */
export function calendarAxes(calendar: Calendar, width: number, system: UnitSystem): TimeAxis[] {
  const { at, way = (moment) => moment / at } = calendar;
  const dates = dateAxis(calendar, width);
  return way === null ? [dates] : [dates, distanceAxis(calendar, way, width, system)];
}
