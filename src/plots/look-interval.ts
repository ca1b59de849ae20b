// How many leaks do their harm before a look finds them, by how far apart the looks are.

import * as Plot from "@observablehq/plot";
import { axis } from "../units/show.ts";
import { ink } from "./ink.ts";
import { draw, sealed, type Picture } from "./picture.ts";
import { words } from "./words.ts";

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

/** A line for each kind of look, named at its middle: the more thorough and the closer together, the fewer are missed. */
export function lookInterval({ intervals, looks }: LookIntervals, picture: Picture): SVGSVGElement {
  const { factor, unit } = axis("distance", picture.system);
  const last = intervals.at(-1)! * factor;
  const lines = looks.map(({ says, missed }, i) => ({
    says,
    ...strokes[i]!,
    points: missed.map((share, k) => ({ x: intervals[k]! * factor, y: 100 * share })),
  }));
  const middle = Math.floor(0.55 * intervals.length);
  const svg = draw(
    {
      width: picture.width,
      height: Math.round(Math.min(380, Math.max(280, 0.5 * picture.width))),
      marginLeft: LEFT,
      marginRight: 20,
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
        Plot.text(["leaks that burn a clutch before a look finds them"], {
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
        ...lines.map(({ points, says, stroke }, i) =>
          words(points[middle]!, says, stroke, i === 0 ? "above" : "below", "start"),
        ),
      ],
    },
    picture,
  );
  return sealed(
    svg,
    `Share of leaks that burn a clutch before a look finds them, against the distance driven between two looks, for ${looks.map(({ says }) => says).join(", ")}.`,
  );
}
