// Bars that are compared: what is behind it, before and after the evidence; what each further look would leave of the doubt.

import { scaleLinear, select } from "d3";
import { ink, letters, widthOf } from "./ink.ts";
import { sealed, sheet, type Picture } from "./picture.ts";

export interface Bar {
  readonly says: string;
  readonly value: number;
  /** Where it was before; a stroke. */
  readonly before: number;
  /** What stands at the right. */
  readonly aside: string;
}

export interface Bars {
  readonly says: string;
  readonly bars: readonly Bar[];
  readonly to: number;
  /** What the axis shows, and its ticks with their texts. */
  readonly label: string;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
}

const ROW = 2 * letters + 14;

/** Each bar under its name, so that long names find room; a stroke where it was before. */
export function shareBars({ says, bars, to, label, ticks }: Bars, picture: Picture): SVGSVGElement {
  const { width } = picture;
  const right = 16 + Math.max(40, ...bars.map(({ aside }) => widthOf(aside)));
  const x = scaleLinear([0, to], [4, width - right]);
  const bottom = 4 + bars.length * ROW;
  const svg = sheet(width, bottom + 2 * letters + 18, picture);
  const g = select(svg).append("g");
  const write = (at: number, y: number, text: string, anchor: "start" | "middle" | "end", fill: string) =>
    g.append("text").attr("x", at).attr("y", y).attr("text-anchor", anchor).attr("fill", fill).text(text);
  for (const { at } of ticks)
    g.append("line")
      .attr("x1", x(at))
      .attr("x2", x(at))
      .attr("y1", 4)
      .attr("y2", bottom)
      .attr("stroke", ink.rule);
  bars.forEach(({ says: name, value, before, aside }, i) => {
    const y = 4 + i * ROW;
    write(4, y + letters, name, "start", ink.text)
      .attr("stroke", ink.paper)
      .attr("stroke-width", 4)
      .attr("paint-order", "stroke");
    g.append("rect")
      .attr("x", x(0))
      .attr("y", y + letters + 6)
      .attr("width", Math.max(1, x(value) - x(0)))
      .attr("height", 10)
      .attr("fill", ink.fluid);
    g.append("line")
      .attr("x1", x(before))
      .attr("x2", x(before))
      .attr("y1", y + letters + 3)
      .attr("y2", y + letters + 19)
      .attr("stroke", ink.heat)
      .attr("stroke-width", 2);
    write(width - 4, y + letters + 15, aside, "end", ink.text);
  });
  g.append("line")
    .attr("x1", x(0))
    .attr("x2", x(to))
    .attr("y1", bottom)
    .attr("y2", bottom)
    .attr("stroke", ink.soft);
  for (const { at, text } of ticks)
    write(x(at), bottom + letters + 3, text, at === 0 ? "start" : "middle", ink.soft);
  write(4, bottom + 2 * letters + 10, label, "start", ink.text).attr("font-weight", 600);
  return sealed(svg, says);
}
