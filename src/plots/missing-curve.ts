// How much was missing over time, as bands, with what was measured of it.

import * as Plot from "@observablehq/plot";
import { axis } from "../units/show.ts";
import { calendarAxes, type Calendar } from "./calendar-axes.ts";
import { ink } from "./ink.ts";
import type { Picture } from "./picture.ts";
import { drawStrip } from "./strip.ts";

/** A measurement of what was missing: when [s], how much [m³], and its standard error. */
export interface Measured {
  readonly at: number;
  readonly volume: number;
  readonly error: number;
}

export interface MissingCurve {
  readonly calendar: Calendar;
  readonly at: readonly number[];
  /** 5, 25, 50, 75, 95 % at each of those moments [m³]. */
  readonly bands: readonly (readonly [number, number, number, number, number])[];
  readonly measured: readonly Measured[];
  /** When fluid was added [s]. */
  readonly added: readonly number[];
}

interface Row {
  readonly x: number;
  readonly band: readonly number[];
}

/** The rows from a moment on, the first on a straight line between its neighbours. */
function shownFrom(from: number, rows: readonly Row[]): Row[] {
  const first = rows.findIndex(({ x }) => x >= from);
  const [before, after] = [rows[first - 1], rows[first]];
  if (before === undefined || after === undefined) return [...rows];
  const share = (from - before.x) / (after.x - before.x);
  const band = after.band.map((value, i) => before.band[i]! + share * (value - before.band[i]!));
  return [{ x: from, band }, ...rows.slice(first)];
}

/** Pale, nine cases of ten; darker, half of them; line, the middle; dots with two standard errors, what was measured; dashes, fluid added. */
export function missingCurve(
  { calendar, at, bands, measured, added }: MissingCurve,
  picture: Picture,
): SVGSVGElement {
  const { from = 0 } = calendar;
  const volume = axis("volume", picture.system);
  const rows = shownFrom(
    from,
    at.map((x, i) => ({ x, band: bands[i]!.map((value) => value * volume.factor) })),
  );
  const shown = measured.filter(({ at: when }) => when >= from);
  const points = shown.map(({ at: x, volume: y, error }) => ({
    x,
    y: y * volume.factor,
    low: (y - 2 * error) * volume.factor,
    high: (y + 2 * error) * volume.factor,
  }));
  const least = Math.min(0, ...rows.map(({ band }) => band[0]!), ...points.map(({ low }) => low));
  const most = Math.max(0.1, ...rows.map(({ band }) => band[4]!), ...points.map(({ high }) => high));
  const area = (low: number, high: number, opacity: number) =>
    Plot.areaY(rows, {
      x: "x",
      y1: ({ band }: (typeof rows)[number]) => band[low]!,
      y2: ({ band }: (typeof rows)[number]) => band[high]!,
      fill: ink.fluid,
      fillOpacity: opacity,
    });
  return drawStrip(
    {
      says: "Fluid missing up to the visit, as bands: middle nine tenths, middle half, middle; dots with two standard errors are what was measured.",
      from,
      to: calendar.at,
      panels: [
        {
          label: `fluid missing [${volume.unit}]`,
          domain: [least, most * 1.15],
          marks: [
            Plot.ruleX(
              added.filter((when) => when >= from),
              { stroke: ink.asked, strokeDasharray: "3 3" },
            ),
            area(0, 4, 0.18),
            area(1, 3, 0.3),
            Plot.line(rows, {
              x: "x",
              y: ({ band }: (typeof rows)[number]) => band[2]!,
              stroke: ink.fluid,
              strokeWidth: 1.8,
            }),
            Plot.ruleX(points, { x: "x", y1: "low", y2: "high", stroke: ink.text, strokeWidth: 1.5 }),
            Plot.dot(points, { x: "x", y: "y", r: 4, fill: ink.text, stroke: ink.paper }),
          ],
        },
      ],
      height: 190,
      flags: [],
      axes: calendarAxes(calendar, picture.width, picture.system),
    },
    picture,
  );
}
