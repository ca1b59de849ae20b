// An ensemble on one page: the curves as bands, and when each event comes.

import * as Plot from "@observablehq/plot";
import { ticks } from "d3";
import type { CurveBands, EventBand } from "../ensemble/bands.ts";
import type { CurveName } from "../ensemble/outcome.ts";
import type { Band } from "../ensemble/quantiles.ts";
import { axis } from "../units/show.ts";
import { wordsFor } from "./event-words.ts";
import { ink } from "./ink.ts";
import type { Picture } from "./picture.ts";
import { spreadRows, type SpreadRow } from "./spread-rows.ts";
import { drawStrip, type Panel } from "./strip.ts";
import { runningAxis } from "./time-axes.ts";

/** One more curve, drawn dashed into its panel: the case as written. */
export type Written = Readonly<
  Record<"level" | "lost" | "slipEnergy" | "damage", readonly (number | null)[]>
>;

export interface EnsemblePicture {
  /** Over running time. */
  readonly curves: CurveBands;
  readonly asWritten: Written;
  /** The stick's low mark [m]. */
  readonly low: number;
}

interface BandRow {
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

/** Level, fluid lost, heat of slips and damage over running time: the middle nine tenths, the middle half, the median, and the case as written. */
export function ensembleStrip({ curves, asWritten, low }: EnsemblePicture, picture: Picture): SVGSVGElement {
  const { system } = picture;
  const to = Math.max(3600, curves.times.at(-1) ?? 0);
  const length = axis("length", system);
  const volume = axis("volume", system);
  const energy = axis("energy", system); // BTU or kJ
  const panel = (
    name: keyof Written,
    label: string,
    factor: number,
    colour: string,
    most = Infinity,
  ): Panel => {
    const draw = (value: number) => Math.min(most, value * factor);
    const top = curves.bands[name].reduce((high, band) => Math.max(high, draw(band[4] ?? 0)), 0);
    return {
      label,
      domain: [0, (top || 1) * 1.15],
      marks: [
        ...bandMarks(curves, name, draw, colour),
        Plot.line(
          curves.times.flatMap((time, i) => {
            const value = asWritten[name][i] ?? null;
            return value === null ? [] : [{ x: time / 3600, y: draw(value) }];
          }),
          { x: "x", y: "y", stroke: ink.text, strokeWidth: 1.2, strokeDasharray: "4 3" },
        ),
      ],
    };
  };
  const level = panel(
    "level",
    `level over the pan's floor, hot, idling [${length.unit}]`,
    length.factor,
    ink.fluid,
  );
  return drawStrip(
    {
      says: "Level, fluid lost, slip heat and damage over running time as bands over the members: middle nine tenths, middle half, median; dashed, the case as written.",
      from: 0,
      to: to / 3600,
      panels: [
        {
          ...level,
          marks: [
            ...level.marks,
            Plot.ruleY([low * length.factor], { stroke: ink.soft, strokeDasharray: "2 3" }),
          ],
        },
        panel("lost", `fluid lost [${volume.unit}]`, volume.factor, ink.fluid),
        panel(
          "slipEnergy",
          `slip heat so far [${system === "US" ? "1000 BTU" : "MJ"}]`,
          energy.factor / 1000,
          ink.heat,
        ),
        panel("damage", "damage of the worst clutch [0 new, 1 burnt]", 1, ink.heat, 1.2),
      ],
      flags: [],
      axes: [runningAxis(0, to, picture.width)],
    },
    picture,
  );
}

function bandMarks(
  { times, bands }: CurveBands,
  name: CurveName,
  draw: (value: number) => number,
  colour: string,
): Plot.Markish[] {
  const between = (from: number, to: number): BandRow[] =>
    times.flatMap((time, i) => {
      const band: Band = bands[name][i]!;
      const [low, high] = [band[from] ?? null, band[to] ?? null];
      return low === null || high === null ? [] : [{ x: time / 3600, low: draw(low), high: draw(high) }];
    });
  const area = (rows: readonly BandRow[], opacity: number) =>
    Plot.areaY(rows, { x: "x", y1: "low", y2: "high", fill: colour, fillOpacity: opacity });
  return [
    area(between(0, 4), 0.18),
    area(between(1, 3), 0.3),
    Plot.line(between(2, 2), { x: "x", y: "low", stroke: colour, strokeWidth: 1.8 }),
  ];
}

/** When events come, one a row, over the running time: what is null lies later than the end, and runs out at the right. */
export interface EventRows {
  readonly events: readonly EventBand[];
  /** Running time of each event in the case as written, by its key; null where it never comes. */
  readonly asWritten: Readonly<Record<string, number | null>>;
  /** The latest end of a history [s of running]. */
  readonly to: number;
}

/** Thin the middle nine tenths, thick the middle half, a stroke the median, a ring the case as written; with the share of members at the right. */
export function eventRows({ events, asWritten, to }: EventRows, picture: Picture): SVGSVGElement {
  const hours = Math.max(1, to / 3600);
  const inHours = (value: number | null | undefined) =>
    value === null || value === undefined ? null : value / 3600;
  return spreadRows(
    {
      says: `When ${events.length} events come, as bands over the members.`,
      rows: events.map((event): SpreadRow => ({
        says: wordsFor(event),
        grave: event.name.startsWith("damage") || event.name === "no drive",
        band: [0, 1, 2, 3, 4].map((q) => inHours(event.running[q])),
        ring: inHours(asWritten[event.key]),
        aside: `${Math.round(100 * event.share)} %`,
      })),
      head: "happens in",
      from: 0,
      to: hours,
      axes: (left) => [
        {
          label: "running time [h]",
          ticks: ticks(0, hours, Math.max(2, Math.round((picture.width - left) / 110))).map((at) => ({
            at,
            text: String(at),
          })),
        },
      ],
    },
    picture,
  );
}
