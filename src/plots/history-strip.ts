// A whole history on one page: what each trip showed, from before the first drip to burnt.

import * as Plot from "@observablehq/plot";
import type { History } from "../history/simulate.ts";
import type { TripRow } from "../history/record.ts";
import { axis } from "../units/show.ts";
import { flagsOf } from "./event-words.ts";
import { ink } from "./ink.ts";
import { namePair } from "./pair.ts";
import type { Picture } from "./picture.ts";
import { drawStrip, type Panel } from "./strip.ts";
import { odometerAxis, runningAxis } from "./time-axes.ts";
import { drawn, mark, words, type At } from "./words.ts";

/** A history with the marks of its build: stick marks [m], what the controller may learn [Pa], odometer at the start [m]. */
export interface HistoryPicture {
  readonly history: Pick<History, "trips" | "events">;
  readonly low: number;
  readonly full: number;
  readonly trimLimit: number;
  readonly odometer: number;
  /** Running time from which it is drawn [s], to look at the end more closely; 0 when missing. */
  readonly from?: number;
}

/** Most that a margin is drawn to: beyond three times what is asked nothing is told. */
const MOST_MARGIN = 3;

/** Level, gas, line pressure and trim, clutch margin, slip energy, temperatures and damage, one point a trip. */
export function historyStrip(data: HistoryPicture, picture: Picture): SVGSVGElement {
  const { events } = data.history;
  const start = data.from ?? 0;
  const trips = data.history.trips.filter(({ running }) => running >= start);
  const from = start / 3600;
  const to = Math.max(trips.at(-1)?.running ?? 0, events.at(-1)?.running ?? 0, 3600) / 3600;
  return drawStrip(
    {
      says: spoken(data),
      from,
      to,
      panels: [
        level(trips, data, picture),
        gas(trips),
        pressure(trips, data, picture, [from, to]),
        margin(trips, from),
        slip(trips, picture),
        temperature(trips, picture),
        damage(trips, from),
      ],
      flags: flagsOf(
        events.filter(({ running }) => running >= start),
        ({ running }) => running / 3600,
        (to - from) / 100,
      ),
      axes: [
        runningAxis(start, to * 3600, picture.width),
        odometerAxis(
          start > 0 ? trips : [{ running: 0, distance: 0 }, ...trips],
          data.odometer,
          picture.width,
          picture.system,
        ),
      ],
    },
    picture,
  );
}

function spoken({ history: { trips, events } }: HistoryPicture): string {
  const last = trips.at(-1);
  const hours = ((last?.running ?? 0) / 3600).toFixed(1);
  return `${trips.length} trips in ${hours} running hours, with ${events.length} events; the table below lists them.`;
}

const at = (trips: readonly TripRow[], y: (row: TripRow) => number): At[] =>
  drawn(trips.map((row) => ({ x: row.running / 3600, y: y(row) })));

/** A line through the trips, with a dot for each while there are few. */
function course(points: readonly At[], stroke: string, dashes = ""): Plot.Markish[] {
  return [
    Plot.line(points, {
      x: "x",
      y: "y",
      stroke,
      strokeWidth: 1.6,
      ...(dashes === "" ? {} : { strokeDasharray: dashes }),
    }),
    ...(points.length < 150 && dashes === ""
      ? [Plot.dot(points, { x: "x", y: "y", r: 1.8, fill: stroke })]
      : []),
  ];
}

function level(
  trips: readonly TripRow[],
  { low, full, from = 0 }: HistoryPicture,
  { system }: Picture,
): Panel {
  const { factor, unit } = axis("length", system);
  const points = at(trips, (row) => (row.level === null ? Number.NaN : row.level * factor));
  const top = Math.max(full * factor, ...points.map(({ y }) => y));
  // The name keeps clear of the line: under the mark while the level is over it, and the other way round.
  const side = (points[0]?.y ?? top) < low * factor ? "above" : "below";
  return {
    label: `level over the pan's floor, hot, idling [${unit}]`,
    short: `level, hot, idling [${unit}]`,
    domain: [0, top * 1.12],
    marks: [...mark(from / 3600, low * factor, "low mark", side), ...course(points, ink.fluid)],
  };
}

function gas(trips: readonly TripRow[]): Panel {
  return {
    label: "most gas in what the pump drew [%]",
    domain: [0, 108],
    ticks: [0, 50, 100],
    marks: course(
      at(trips, (row) => 100 * row.mostGas),
      ink.fluid,
    ),
  };
}

function pressure(
  trips: readonly TripRow[],
  { trimLimit }: HistoryPicture,
  { width: pixels }: Picture,
  [from, to]: readonly [number, number],
): Panel {
  const told = trips.filter(({ leastPressure }) => Number.isFinite(leastPressure));
  const line = at(told, (row) => 100 * row.leastPressure);
  const trim = at(told, (row) => (100 * row.trim) / trimLimit);
  const most = 115;
  return {
    label: "lowest line pressure [% of set point], learned trim [% of its limit]",
    short: "pressure, trim [% of set point, limit]",
    domain: [0, most],
    ticks: [0, 50, 100],
    marks: [
      ...course(trim, ink.asked, "5 3"),
      ...course(line, ink.fluid),
      ...namePair(
        { points: line, says: "lowest line pressure", colour: ink.fluid },
        { points: trim, says: "learned trim", colour: ink.asked },
        { most, from, to, pixels },
      ),
    ],
  };
}

function margin(trips: readonly TripRow[], from: number): Panel {
  const points = at(trips, (row) => Math.min(MOST_MARGIN, row.leastMargin));
  return {
    label: "weakest clutch: what it can carry over what is asked [ratio]",
    short: "weakest clutch: can carry / asked [ratio]",
    domain: [0, Math.max(2, ...points.map(({ y }) => y)) * 1.1],
    ticks: [0, 1, 2, 3],
    marks: [...mark(from, 1, "slips below this", "below"), ...course(points, ink.fluid)],
  };
}

function slip(trips: readonly TripRow[], { system }: Picture): Panel {
  const { factor, unit } = axis("energy", system);
  const points = at(trips, (row) => row.slipEnergy * factor);
  return {
    label: `slip heat of each trip [${unit}]`,
    domain: [0, Math.max(1, ...points.map(({ y }) => y)) * 1.1],
    marks: [
      Plot.ruleX(points, { x: "x", y1: 0, y2: "y", stroke: ink.heat, strokeWidth: 2.5 }),
      Plot.dot(
        points.filter(({ y }) => y > 0),
        { x: "x", y: "y", r: 2.2, fill: ink.heat },
      ),
    ],
  };
}

function temperature(trips: readonly TripRow[], { system }: Picture): Panel {
  const { factor, offset, unit } = axis("temperature", system);
  const fluid = at(trips, (row) => row.hottest * factor + offset);
  const plate = at(trips, (row) => row.hottestPlate * factor + offset);
  const [low, high] = [
    Math.min(...fluid.map(({ y }) => y)),
    Math.max(...plate.map(({ y }) => y), ...fluid.map(({ y }) => y)),
  ];
  const some = fluid.length > 0;
  return {
    label: `hottest fluid and hottest clutch plate [${unit}]`,
    domain: some ? [low - 0.35 * (high - low), high + 0.15 * (high - low)] : [0, 1],
    marks: [
      ...course(plate, ink.heat),
      ...course(fluid, ink.fluid),
      ...(some
        ? [
            words({ x: plate[0]!.x, y: plate[0]!.y }, "plate", ink.heat, "above"),
            words({ x: fluid[0]!.x, y: fluid[0]!.y }, "fluid", ink.fluid, "below"),
          ]
        : []),
    ],
  };
}

function damage(trips: readonly TripRow[], from: number): Panel {
  const points = at(trips, (row) => Math.min(1.5, row.worstDamage));
  return {
    label: "damage of the worst clutch [0 new, 1 no longer carries its rated torque]",
    short: "damage, worst clutch [0 new, 1 burnt]",
    domain: [0, 1.6],
    ticks: [0, 0.5, 1, 1.5],
    marks: [...mark(from, 1, "burnt"), ...course(points, ink.heat)],
  };
}
