// How many leaks do their harm before a look finds them, by how far apart the looks are.

import * as Plot from "@observablehq/plot";
import { axis } from "../units/show.ts";
import { ink } from "./ink.ts";
import { draw, sealed, type Picture } from "./picture.ts";

/** One kind of look: its name, and by each interval [m] the share of leaks that it misses (0 to 1). */
export interface LookLine {
  readonly says: string;
  readonly missed: readonly number[];
}

export interface LookIntervals {
  /** Rising, from above 0 [m]. */
  readonly intervals: readonly number[];
  /** From the least thorough look to the most; three at most. */
  readonly looks: readonly LookLine[];
}

const LEFT = 52;
const strokes = [
  { stroke: ink.heat, strokeDasharray: "2 3" },
  { stroke: ink.asked, strokeDasharray: "7 4" },
  { stroke: ink.fluid, strokeDasharray: "" },
] as const;

/** A line for each kind of look: the more thorough and the closer together, the fewer are missed. */
export function lookInterval({ intervals, looks }: LookIntervals, picture: Picture): SVGSVGElement {
  const { factor, unit } = axis("distance", picture.system);
  const last = intervals.at(-1)! * factor;
  const lines = looks.map(({ says, missed }, i) => ({
    says,
    ...strokes[i]!,
    points: missed.map((share, k) => ({ x: intervals[k]! * factor, y: 100 * share })),
  }));
  // What rises leaves its lower right corner free: the names stand there, each beside a piece of its line.
  const [from, to] = picture.width < 480 ? [0.4, 0.52] : [0.66, 0.74];
  const names = lines.map(({ says, stroke, strokeDasharray }, i) => ({
    says,
    stroke,
    strokeDasharray,
    y: 10 * (lines.length - i) - 3,
  }));
  const svg = draw(
    {
      width: picture.width,
      height: Math.round(Math.min(380, Math.max(280, 0.5 * picture.width))),
      marginLeft: LEFT,
      marginRight: 28,
      marginTop: 30,
      marginBottom: 44,
      x: { domain: [0, last], label: null },
      y: { domain: [0, 100], label: null },
      marks: [
        Plot.axisX({
          ticks: picture.width < 480 ? 4 : 8,
          label: null,
          fill: ink.soft,
          stroke: ink.rule,
          tickFormat: (x: number) => x.toLocaleString("en-US"),
        }),
        Plot.axisY({
          ticks: 5,
          label: null,
          fill: ink.soft,
          stroke: ink.rule,
          tickFormat: (y: number) => `${y} %`,
        }),
        Plot.gridY({ ticks: 5, stroke: ink.rule, strokeOpacity: 0.6 }),
        Plot.text(["burnt before a look finds them"], {
          frameAnchor: "top-left",
          textAnchor: "start",
          lineAnchor: "bottom",
          dx: -LEFT + 2,
          dy: -12,
          fontWeight: 600,
        }),
        Plot.text([`driven between two looks [${unit}]`], {
          frameAnchor: "bottom-right",
          textAnchor: "end",
          lineAnchor: "bottom",
          dy: 40,
          fontWeight: 600,
        }),
        Plot.ruleY([0], { stroke: ink.soft }),
        ...lines.map(({ points, stroke, strokeDasharray }) =>
          Plot.line(points, { x: "x", y: "y", stroke, strokeDasharray, strokeWidth: 2.2 }),
        ),
        ...names.flatMap(({ says, stroke, strokeDasharray, y }) => [
          Plot.ruleY([y], { x1: from * last, x2: to * last, stroke, strokeDasharray, strokeWidth: 2.2 }),
          Plot.text([{ x: to * last, y }], {
            x: "x",
            y: "y",
            dx: 6,
            text: () => says,
            textAnchor: "start",
            fill: stroke,
          }),
        ]),
      ],
    },
    picture,
  );
  return sealed(
    svg,
    `Share of leaks that burn a clutch before a look finds them, against the distance driven between two looks, for ${looks.map(({ says }) => says).join(", ")}.`,
  );
}
