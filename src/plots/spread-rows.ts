// Rows of bands over one shared axis: what is told with its doubt, one thing a row.

import { scaleLinear, select } from "d3";
import { ink, letters, widthOf } from "./ink.ts";
import { sealed, sheet, type Picture } from "./picture.ts";
import { drawAxes, type TimeAxis } from "./strip.ts";

export interface SpreadRow {
  readonly says: string;
  readonly grave?: boolean;
  /** 5, 25, 50, 75, 95 %, on the axis; null lies later than it goes, and runs out at the right. */
  readonly band: readonly (number | null)[];
  /** A value to compare with. */
  readonly ring?: number | null;
  /** What stands at the right. */
  readonly aside: string;
}

export interface SpreadRows {
  readonly says: string;
  readonly rows: readonly SpreadRow[];
  /** What the words at the right are. */
  readonly head: string;
  readonly from: number;
  readonly to: number;
  /** Rows of ticks, for bands that begin so far from the left. */
  readonly axes: (left: number) => readonly TimeAxis[];
}

const ROW = letters + 9;
const RIGHT = 64;

/** Thin the middle nine tenths, thick the middle half, a stroke the median. */
export function spreadRows(
  { says, rows, head, from, to, axes }: SpreadRows,
  picture: Picture,
): SVGSVGElement {
  const { width } = picture;
  // On a phone each name stands over its band, so that both find room.
  const narrow = width < 480;
  const each = narrow ? 2 * ROW - 6 : ROW;
  const left = narrow ? 10 : 12 + Math.max(60, ...rows.map((row) => widthOf(row.says)));
  const x = scaleLinear([from, to], [left, width - RIGHT]).clamp(true);
  const beyond = width - RIGHT + 6;
  const bottom = 24 + rows.length * each;
  const under = axes(left);
  const svg = sheet(width, bottom + under.length * (2 * letters + 14) + 4, picture);
  const g = select(svg).append("g");
  const write = (at: number, y: number, text: string, anchor: "start" | "end", fill: string) =>
    g.append("text").attr("x", at).attr("y", y).attr("text-anchor", anchor).attr("fill", fill).text(text);
  const stroke = (x1: number, x2: number, y: number, thick: number, colour: string) =>
    g
      .append("line")
      .attr("x1", x1)
      .attr("x2", x2)
      .attr("y1", y)
      .attr("y2", y)
      .attr("stroke", colour)
      .attr("stroke-width", thick);
  write(width - 4, 14, head, "end", ink.soft);
  rows.forEach(({ says: name, grave, band, ring, aside }, i) => {
    const y = 24 + (i + 1) * each - 0.5 * ROW;
    const colour = grave === true ? ink.heat : ink.fluid;
    const at = (q: number): number => {
      const value = band[q] ?? null;
      return value === null ? beyond : x(value);
    };
    if (narrow) write(4, y - ROW + 9, name, "start", ink.text);
    else write(left - 8, y + 4, name, "end", ink.text);
    if (band.length > 0) {
      stroke(at(0), at(4), y, 1.5, colour);
      stroke(at(1), at(3), y, 6, colour);
      if ((band[2] ?? null) !== null)
        g.append("line")
          .attr("x1", at(2))
          .attr("x2", at(2))
          .attr("y1", y - 7)
          .attr("y2", y + 7)
          .attr("stroke", ink.text)
          .attr("stroke-width", 2);
    }
    if (ring !== null && ring !== undefined)
      g.append("circle")
        .attr("cx", x(ring))
        .attr("cy", y)
        .attr("r", 3.5)
        .attr("fill", ink.paper)
        .attr("stroke", ink.text);
    write(width - 4, y + 4, aside, "end", ink.text);
  });
  drawAxes(svg, under, x, bottom, [left, width - RIGHT]);
  return sealed(svg, says);
}
