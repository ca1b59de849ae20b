// Words at the lines instead of a key of colours.

import * as Plot from "@observablehq/plot";
import { ink } from "./ink.ts";

/** A point in the units of the axes. */
export interface At {
  readonly x: number;
  readonly y: number;
}

/** Words beside a point: above or below it, beginning, centred or ending there. */
export function words(
  at: At,
  says: string,
  colour: string,
  side: "above" | "below",
  anchor: "start" | "middle" | "end" = "start",
): Plot.Markish {
  return Plot.text([at], {
    x: "x",
    y: "y",
    text: () => says,
    fill: colour,
    stroke: ink.paper,
    strokeWidth: 4,
    textAnchor: anchor,
    lineAnchor: side === "above" ? "bottom" : "top",
    dx: anchor === "start" ? 3 : anchor === "end" ? -3 : 0,
    dy: side === "above" ? -4 : 4,
  });
}

/** A line across the panel at a mark, with its name at the left. */
export function mark(
  from: number,
  y: number,
  says: string,
  side: "above" | "below" = "above",
): Plot.Markish[] {
  return [
    Plot.ruleY([y], { stroke: ink.soft, strokeDasharray: "2 3" }),
    words({ x: from, y }, says, ink.soft, side),
  ];
}

/** Keeps the points that can be drawn. */
export const drawn = (points: readonly At[]): At[] =>
  points.filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
