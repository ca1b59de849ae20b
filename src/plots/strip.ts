// A strip: small panels above one another on one shared time axis, with what happened flagged on top.

import * as Plot from "@observablehq/plot";
import { format, scaleLinear, select, ticks } from "d3";
import { drawFlags, placeFlags, rowHeight, type Flag } from "./flags.ts";
import { ink, letters, widthOf } from "./ink.ts";
import { draw, sealed, sheet, type Picture } from "./picture.ts";

/** One panel: what its axis shows, with the unit, and the same for narrow pictures; from where to where; its marks, whose x is time. */
export interface Panel {
  readonly label: string;
  readonly short?: string;
  readonly domain: readonly [number, number];
  readonly marks: readonly Plot.Markish[];
  readonly ticks?: readonly number[];
}

/** A row of ticks under the strip: positions in the strip's time and their texts. */
export interface TimeAxis {
  readonly label: string;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
}

export interface Strip {
  readonly says: string;
  readonly from: number;
  readonly to: number;
  readonly panels: readonly Panel[];
  /** Height of each panel [px]; by the width when missing. */
  readonly height?: number;
  readonly flags: readonly Flag[];
  readonly axes: readonly TimeAxis[];
}

const LEFT = 50;
const RIGHT = 14;
const ABOVE = 20;
const BELOW = 7;

/** Puts a strip together: flags, panels from top to bottom, axes. */
export function drawStrip(strip: Strip, picture: Picture): SVGSVGElement {
  const { width } = picture;
  const { from, to, panels } = strip;
  const x = scaleLinear([from, to], [LEFT, width - RIGHT]);
  const flags = placeFlags(strip.flags, x, 2, width - 2);
  const top = flags.length === 0 ? 0 : (Math.max(...flags.map(({ row }) => row)) + 1) * rowHeight + 2;
  const each = strip.height ?? (width < 480 ? 92 : 104);
  const bottom = top + panels.length * each;
  const svg = sheet(width, bottom + strip.axes.length * (2 * letters + 14) + 4, picture);
  drawFlags(svg, flags, top, bottom);
  panels.forEach((panel, i) => {
    const drawing = panelDrawing(panel, from, to, each, picture);
    drawing.setAttribute("y", String(top + i * each));
    svg.append(drawing);
  });
  drawAxes(svg, strip.axes, x, bottom);
  return sealed(svg, strip.says);
}

function panelDrawing(
  panel: Panel,
  from: number,
  to: number,
  height: number,
  picture: Picture,
): SVGSVGElement {
  const { domain, marks } = panel;
  const label =
    panel.short !== undefined && widthOf(panel.label) * 1.1 > picture.width ? panel.short : panel.label;
  // The highest tick would stand in the label's way.
  const top = domain[1] - (panel.ticks ? 0 : 0.07) * (domain[1] - domain[0]);
  const values = (panel.ticks ?? ticks(...domain, 3)).filter((value) => value >= domain[0] && value <= top);
  return draw(
    {
      width: picture.width,
      height,
      marginLeft: LEFT,
      marginRight: RIGHT,
      marginTop: ABOVE,
      marginBottom: BELOW,
      x: { domain: [from, to], axis: null },
      y: { domain: [...domain], label: null },
      marks: [
        Plot.axisY(values, {
          tickSize: 3,
          tickFormat: (value: number) => format(",")(value),
          label: null,
          fill: ink.soft,
          stroke: ink.rule,
        }),
        Plot.text([label], {
          frameAnchor: "top-left",
          textAnchor: "start",
          lineAnchor: "bottom",
          dx: -LEFT + 2,
          dy: -5,
          fontWeight: 600,
          stroke: ink.paper,
          strokeWidth: 4,
          fill: ink.text,
        }),
        Plot.ruleY([domain[0]], { stroke: ink.rule }),
        ...marks,
      ],
    },
    picture,
  );
}

/** Draws rows of ticks under a drawing, from `left` to `right` of its sheet. */
export function drawAxes(
  svg: SVGSVGElement,
  axes: readonly TimeAxis[],
  x: (at: number) => number,
  bottom: number,
  [left, right]: readonly [number, number] = [LEFT, Number(svg.getAttribute("width")) - RIGHT],
): void {
  axes.forEach(({ label, ticks: marks }, i) => {
    const y = bottom + i * (2 * letters + 14);
    const row = select(svg).append("g");
    row
      .append("line")
      .attr("x1", left)
      .attr("x2", right)
      .attr("y1", y)
      .attr("y2", y)
      .attr("stroke", ink.soft);
    let taken = -Infinity;
    for (const { at, text } of marks) {
      const half = widthOf(text) / 2;
      const middle = x(at);
      row
        .append("line")
        .attr("x1", middle)
        .attr("x2", middle)
        .attr("y1", y)
        .attr("y2", y + 4)
        .attr("stroke", ink.soft);
      const place = Math.max(half + 1, Math.min(middle, Number(svg.getAttribute("width")) - half - 1));
      if (place - half < taken + letters / 2) continue;
      taken = place + half;
      row
        .append("text")
        .attr("x", place)
        .attr("y", y + letters + 4)
        .attr("text-anchor", "middle")
        .attr("fill", ink.soft)
        .text(text);
    }
    row
      .append("text")
      .attr("x", left)
      .attr("y", y + 2 * letters + 8)
      .attr("font-weight", 600)
      .text(label);
  });
}
