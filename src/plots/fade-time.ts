// Slip heat against the time over which the pressure goes, both axes logarithmic: from a valve's stroke to a slow seep.

import * as Plot from "@observablehq/plot";
import { scaleLog } from "d3";
import type { FadeRow } from "../history/fade.ts";
import { axis } from "../units/show.ts";
import { drawFlags, placeFlags, rowHeight } from "./flags.ts";
import { ink, letters, widthOf } from "./ink.ts";
import { draw, sealed, type Picture } from "./picture.ts";
import { words, type At } from "./words.ts";

/** Where something sits on the axis of time [s], and a heat to compare with [J], each in a few words. */
export interface FadePicture {
  readonly rows: readonly FadeRow[];
  readonly places: readonly { readonly time: number; readonly says: string }[];
  readonly heats: readonly { readonly energy: number; readonly says: string }[];
}

const spans = [0.01, 0.1, 1, 10, 60, 600, 3600, 36000];

/** A span of time as people say it: "0.1 s", "10 min", "1 h". */
export function spanText(seconds: number): string {
  if (seconds < 60) return `${seconds} s`;
  return seconds < 3600 ? `${Math.round(seconds / 60)} min` : `${Math.round(seconds / 3600)} h`;
}

/** One line for a pressure that falls once, one for a pressure that comes and goes for as long. */
export function fadeTime({ rows, places, heats }: FadePicture, picture: Picture): SVGSVGElement {
  const { factor, unit } = axis("energy", picture.system);
  const { width } = picture;
  // A heat of nothing has no place on a logarithmic axis: it is left out, as are the gulps shorter than one gulp.
  const of = (kind: FadeRow["kind"]): At[] =>
    rows
      .filter((row) => row.kind === kind && row.energy > 0)
      .map(({ time, energy }) => ({ x: time, y: energy * factor }));
  const [once, gulps] = [of("falls once"), of("comes and goes")];
  const times = rows.map(({ time }) => time);
  const [from, to] = times.length > 0 ? [Math.min(...times), Math.max(...times)] : [0.05, 3600];
  const ys = [...once, ...gulps].map(({ y }) => y);
  const [low, high] = ys.length > 0 ? [Math.min(...ys), Math.max(...ys)] : [factor, 1e3 * factor];
  const [floor, roof] = [low / 2, high * 2];
  const narrow = width < 480;
  const pixel = scaleLog([from, to], [LEFT, width - RIGHT]);
  const flags = placeFlags(
    places
      .filter(({ time }) => time >= from && time <= to)
      .map(({ time, says }) => ({ at: time, says, grave: false })),
    pixel,
    LEFT,
    width - RIGHT,
  );
  const marginTop = 26 + rowHeight * (1 + Math.max(-1, ...flags.map(({ row }) => row)));
  const marginBottom = 42;
  const height = Math.round(Math.min(480, Math.max(340, width * 0.55)));
  const shown = heats.filter(({ energy }) => energy * factor > low && energy * factor < high);

  const pixelY = scaleLog([floor, roof], [height - marginBottom, marginTop]);
  /** Whether a name at a height meets no words at a heat: these take up to two rows on either side of their line. */
  const clearOf = ({ y }: At) =>
    shown.every(({ energy }) => Math.abs(pixelY(y) - pixelY(energy * factor)) > 3.2 * letters);

  const svg = draw(
    {
      width,
      height,
      marginLeft: LEFT,
      marginRight: RIGHT,
      marginTop,
      marginBottom,
      x: { type: "log", domain: [from, to], label: null },
      y: { type: "log", domain: [floor, roof], label: null },
      marks: [
        Plot.axisX(
          spans.filter((t) => t >= from && t <= to),
          { text: (t: number) => spanText(t), label: null, fill: ink.soft, stroke: ink.rule },
        ),
        Plot.axisY({ ticks: 6, tickFormat: amount, label: null, fill: ink.soft, stroke: ink.rule }),
        Plot.text([`slip heat [${unit}]`], {
          frameAnchor: "top-left",
          textAnchor: "start",
          lineAnchor: "bottom",
          dx: -LEFT + 2,
          dy: 16 - marginTop,
          fontWeight: 600,
        }),
        Plot.text(
          [narrow ? "time it takes to go [s, min, h]" : "time over which the pressure goes [s, min, h]"],
          {
            frameAnchor: "bottom-right",
            textAnchor: "end",
            lineAnchor: "bottom",
            dy: 38,
            fontWeight: 600,
          },
        ),
        Plot.ruleY([floor], { stroke: ink.soft }),
        ...shown.flatMap(({ energy, says }) => {
          const y = energy * factor;
          const free = freeBeside(y, [once, gulps], pixel, width);
          return [
            Plot.ruleY([y], { stroke: ink.soft, strokeWidth: 0.75 }),
            free.side === "left"
              ? words({ x: from, y }, broken(says, free.room), ink.soft, "above", "start")
              : words({ x: to, y }, broken(says, free.room), ink.soft, "below", "end"),
          ];
        }),
        Plot.line(gulps, { x: "x", y: "y", stroke: ink.asked, strokeWidth: 2, strokeDasharray: "6 4" }),
        Plot.dot(gulps, { x: "x", y: "y", r: 2.5, fill: ink.asked }),
        Plot.line(once, { x: "x", y: "y", stroke: ink.heat, strokeWidth: 2.5 }),
        Plot.dot(once, { x: "x", y: "y", r: 2.5, fill: ink.heat }),
        ...beside(gulps, "comes and goes", ink.asked, "end", clearOf),
        ...beside(once, "falls once", ink.heat, "start", clearOf),
      ],
    },
    picture,
  );
  drawFlags(svg, flags, marginTop, height - marginBottom);
  // The poles lie under the lines and their names.
  svg.prepend(svg.lastChild!);
  return sealed(
    svg,
    `Slip heat against the time over which the pressure goes, from ${spanText(from)} to ${spanText(to)}, for a pressure ` +
      `that falls once and for one that comes and goes.`,
  );
}

const LEFT = 62;
const RIGHT = 14;

/**
 * Where words at a height cross no line, and how many pixels there are: lines rise to the right, so it is above the height before the first
 * of them gets there, or below it behind the last.
 */
function freeBeside(
  y: number,
  lines: readonly (readonly At[])[],
  pixel: (time: number) => number,
  width: number,
): { readonly side: "left" | "right"; readonly room: number } {
  const crossings = lines.flatMap((line) => {
    const under = line.findLast((point) => point.y < y);
    const over = line.find((point) => point.y >= y);
    return [under, over].filter((point) => point !== undefined).map(({ x }) => pixel(x));
  });
  const left = Math.min(width - RIGHT, ...crossings) - LEFT;
  const right = width - RIGHT - Math.max(LEFT, ...crossings);
  return left >= right ? { side: "left", room: left } : { side: "right", room: right };
}

/** Words in one row where they fit, else in two. */
function broken(says: string, room: number): string {
  if (widthOf(says) < room) return says;
  const gap = says.indexOf(" ", says.length / 2);
  return gap < 0 ? says : `${says.slice(0, gap)}\n${says.slice(gap + 1)}`;
}

/** Powers of ten in plain figures where they are short. */
function amount(value: number): string {
  const power = Math.log10(value);
  if (Math.abs(power - Math.round(power)) > 1e-6) return "";
  return value >= 1e6 ? `${value / 1e6} M` : value.toLocaleString("en-US", { maximumFractionDigits: 9 });
}

/** The name of a line near its middle, where it is clear of other words if it can be. */
function beside(
  points: readonly At[],
  says: string,
  colour: string,
  anchor: "start" | "end",
  clear: (at: At) => boolean,
): Plot.Markish[] {
  const shares = anchor === "start" ? [0.45, 0.3, 0.6, 0.2] : [0.4, 0.55, 0.7, 0.85];
  const at = (share: number) => points[Math.floor(points.length * share)];
  const point = shares.map(at).find((one) => one !== undefined && clear(one)) ?? at(shares[0]!);
  return point === undefined
    ? []
    : [words(point, says, colour, anchor === "start" ? "below" : "above", anchor)];
}
