// What the bay reads on the same unit at one shortage after another: a small picture for each test, against its band.

import * as Plot from "@observablehq/plot";
import { format, ticks } from "d3";
import type { BayCard } from "../bay/bay-card.ts";
import type { BayRow, ValueKind } from "../bay/bay-row.ts";
import { retold } from "../units/retold.ts";
import { axis, type UnitSystem } from "../units/show.ts";
import { band as shade, ink, letters } from "./ink.ts";
import { draw, sealed, sheet, type Picture } from "./picture.ts";

/** One test at every shortage: [m³ that it lacks] and the row of the card there. */
interface Rung {
  readonly test: string;
  readonly condition: string;
  readonly kind: ValueKind;
  readonly looks: readonly { readonly shortage: number; readonly row: BayRow }[];
}

const LEFT = 46;
const RIGHT = 16;
const TITLE = 2 * letters + 12;
const HEIGHT = 146;
/** Width that a title needs [px]. */
const LEAST = 310;

/**
 * One panel for each test of the cards. The shaded band is that of a sound unit; a filled dot lies within it, a cross
 * does not; a value that was not reached at all stands as a cross at the upper edge.
 */
export function bayLadder(cards: readonly BayCard[], picture: Picture): SVGSVGElement {
  const rungs = rungsOf(cards);
  const columns = Math.max(1, Math.floor(picture.width / LEAST));
  const width = picture.width / columns;
  const rows = Math.ceil(rungs.length / columns);
  const svg = sheet(picture.width, rows * HEIGHT + 4, picture);
  rungs.forEach((rung, i) => {
    const drawing = rungDrawing(rung, width, picture);
    drawing.setAttribute("x", String((i % columns) * width));
    drawing.setAttribute("y", String(Math.floor(i / columns) * HEIGHT));
    svg.append(drawing);
  });
  const outside = rungs.filter(({ looks }) => looks.some(({ row }) => row.verdict !== "within")).length;
  return sealed(
    svg,
    `${rungs.length} tests of the bay at ${cards.length} fill levels; ${outside} of them leave their band.`,
  );
}

function rungsOf(cards: readonly BayCard[]): Rung[] {
  const rungs = new Map<string, Rung & { looks: { shortage: number; row: BayRow }[] }>();
  for (const { shortage, rows } of cards)
    for (const row of rows) {
      const key = `${row.test}: ${row.condition}`;
      const { test, condition, kind } = row;
      const rung = rungs.get(key) ?? { test, condition, kind, looks: [] };
      rung.looks.push({ shortage, row });
      rungs.set(key, rung);
    }
  return [...rungs.values()];
}

/** Factor, offset and unit for a kind of the card; times and ratios are the same everywhere. */
function scaleOf(
  kind: ValueKind,
  system: UnitSystem,
): { readonly factor: number; readonly offset: number; readonly unit: string } {
  if (kind === "seconds") return { factor: 1, offset: 0, unit: "s" };
  if (kind === "ratio") return { factor: 1, offset: 0, unit: "ratio" };
  return axis(kind, system);
}

function rungDrawing({ test, condition, kind, looks }: Rung, width: number, picture: Picture): SVGSVGElement {
  const { factor, offset, unit } = scaleOf(kind, picture.system);
  const short = axis("volume", picture.system);
  const shown = (value: number) => value * factor + offset;
  const { low, high } = looks[0]!.row.band;
  const ends = [low, high].filter((end) => end !== null).map(shown);
  const values = looks.flatMap(({ row }) => (row.value === null ? [] : [shown(row.value)]));
  const [least, most] = [Math.min(...ends, ...values), Math.max(...ends, ...values)];
  const room = 0.16 * (most - least || Math.abs(most) || 1);
  const domain: [number, number] = [least - room, most + room];
  const xs = looks.map(({ shortage }) => shortage * short.factor);
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const aside = 0.08 * (to - from || 1);
  const points = looks.map(({ shortage, row }) => ({
    x: shortage * short.factor,
    y: row.value === null ? most + 0.5 * room : shown(row.value),
    within: row.verdict === "within",
  }));
  const title = (says: string, dy: number, more: Plot.TextOptions = {}) =>
    Plot.text([says], {
      frameAnchor: "top-left",
      textAnchor: "start",
      lineAnchor: "bottom",
      dx: 4 - LEFT,
      dy,
      ...more,
    });
  return draw(
    {
      width,
      height: HEIGHT,
      marginLeft: LEFT,
      marginRight: RIGHT,
      marginTop: TITLE,
      marginBottom: 2 * letters + 16,
      x: { domain: [from - aside, to + aside], label: null },
      y: { domain, label: null },
      marks: [
        Plot.rect([0], {
          x1: from - aside,
          x2: to + aside,
          y1: low === null ? domain[0] : shown(low),
          y2: high === null ? domain[1] : shown(high),
          fill: shade.fully,
        }),
        Plot.axisY(
          // The highest tick would stand in the title's way.
          ticks(...domain, 3).filter((y) => y < most + 0.6 * room),
          {
            tickSize: 3,
            tickFormat: (y: number) => format(",")(y),
            label: null,
            fill: ink.soft,
            stroke: ink.rule,
          },
        ),
        Plot.axisX(ticks(from, to, Math.min(4, looks.length)), {
          tickSize: 3,
          tickFormat: (x: number) => `${x}`,
          label: null,
          fill: ink.soft,
          stroke: ink.rule,
        }),
        title(`${test} [${unit}]`, -letters - 8, { fontWeight: 600 }),
        title(retold(condition, picture.system), -5, { fill: ink.soft }),
        Plot.text([`short of fluid [${short.unit}]`], {
          frameAnchor: "bottom-right",
          textAnchor: "end",
          lineAnchor: "top",
          dy: letters + 9,
          fill: ink.soft,
        }),
        Plot.line(points, { x: "x", y: "y", stroke: ink.fluid }),
        Plot.dot(
          points.filter(({ within }) => within),
          { x: "x", y: "y", r: 3.5, fill: ink.fluid },
        ),
        Plot.dot(
          points.filter(({ within }) => !within),
          { x: "x", y: "y", r: 4.5, symbol: "times", stroke: ink.heat, strokeWidth: 2 },
        ),
      ],
    },
    picture,
  );
}
