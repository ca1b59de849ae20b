// When the leak opened, as a heap of dots: each stands for one of so many cases, all as likely.
// Source: Kay, Kola, Hullman and Munson, When (ish) is my bus?, 2016 (recalled).

import { scaleLinear, select } from "d3";
import type { Spread } from "../lookback/answer/spread.ts";
import { calendarAxes, axisWords, type Calendar } from "./calendar-axes.ts";
import { ink, letters } from "./ink.ts";
import { sealed, sheet, type Picture } from "./picture.ts";
import { drawAxes } from "./strip.ts";

export interface Opening {
  readonly calendar: Calendar;
  /** Quantiles in rising order [s]. */
  readonly dots: readonly number[];
  readonly when: Spread;
}

const ASIDE = 16;
/** Height of the heap [px], and the largest dot. */
const HEAP = 150;
const LARGEST = 7;

/** Stacks of dots: each takes those that lie within its width of the first. */
function stacked(places: readonly number[], radius: number): { x: number; level: number }[] {
  const dots: { x: number; level: number }[] = [];
  for (let i = 0; i < places.length;) {
    const first = places[i]!;
    const stack = places.slice(i).filter((place) => place < first + 2 * radius);
    const x = stack.reduce((sum, place) => sum + place, 0) / stack.length;
    stack.forEach((_, level) => dots.push({ x, level }));
    i += stack.length;
  }
  return dots;
}

/** The heap over dates and odometer, with the middle half and the middle nine tenths under it. */
export function openingDots({ calendar, dots, when }: Opening, picture: Picture): SVGSVGElement {
  const { width, system } = picture;
  const x = scaleLinear([calendar.from ?? 0, calendar.at], [ASIDE, width - ASIDE]).clamp(true);
  const places = dots.map((dot) => x(dot));
  let radius = LARGEST;
  let heap = stacked(places, radius);
  const high = () => (Math.max(0, ...heap.map(({ level }) => level)) + 1) * 2 * radius;
  while (high() > HEAP && radius > 1.5) {
    radius -= 0.5;
    heap = stacked(places, radius);
  }
  const top = letters + 8;
  const floor = top + Math.max(60, high());
  const axes = calendarAxes(calendar, width, system);
  const bottom = floor + 26;
  const svg = sheet(width, bottom + axes.length * (2 * letters + 14) + 4, picture);
  const g = select(svg).append("g");
  for (const { x: at, level } of heap)
    g.append("circle")
      .attr("cx", at)
      .attr("cy", floor - radius - 2 * radius * level)
      .attr("r", radius - 0.5)
      .attr("fill", ink.fluid);
  const stroke = (from: number, to: number, thick: number) =>
    g
      .append("line")
      .attr("x1", x(from))
      .attr("x2", x(to))
      .attr("y1", floor + 12)
      .attr("y2", floor + 12)
      .attr("stroke", ink.fluid)
      .attr("stroke-width", thick);
  stroke(...when.nineTenths, 1.5);
  stroke(...when.half, 6);
  g.append("line")
    .attr("x1", x(when.middle))
    .attr("x2", x(when.middle))
    .attr("y1", floor + 4)
    .attr("y2", floor + 20)
    .attr("stroke", ink.text)
    .attr("stroke-width", 2);
  const write = (at: number, text: string, anchor: "start" | "end") =>
    g
      .append("text")
      .attr("x", at)
      .attr("y", letters)
      .attr("text-anchor", anchor)
      .attr("fill", ink.soft)
      .text(text);
  write(4, calendar.from === undefined ? "last full" : "earlier", "start");
  write(width - 4, "the visit", "end");
  drawAxes(svg, axes, x, bottom, [ASIDE, width - ASIDE]);
  return sealed(
    svg,
    `When the leak opened: ${dots.length} dots over ${axisWords(calendar)}, each as likely as any other.`,
  );
}
