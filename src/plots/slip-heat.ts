// Heat against apply pressure: nothing below kiss, nothing from lock up, and in between what the engine line decides.

import * as Plot from "@observablehq/plot";
import { range } from "d3";
import { capacity } from "../physics/clutch/capacity.ts";
import type { Clutch } from "../physics/clutch/geometry.ts";
import { slipPowerLimiter, slipPowerLine, slipWindow } from "../physics/clutch/slip.ts";
import { axis } from "../units/show.ts";
import { band, ink, widthOf } from "./ink.ts";
import { draw, sealed, type Picture } from "./picture.ts";
import type { At } from "./words.ts";

/**
 * A clutch between an engine and an output of a given speed. `torque` [N m] is what both engine lines give at that
 * speed, so that both lock at one pressure; the one falls to nothing at `freeSpeed`, the other is flat up to it [rad/s].
 */
export interface SlipHeatPicture {
  readonly clutch: Clutch;
  readonly friction: number;
  readonly torque: number;
  readonly outputSpeed: number;
  readonly freeSpeed: number;
  /** A pressure to look at [Pa]. */
  readonly at?: number;
}

/** Slip heat [W] at an apply pressure [Pa] on the straight line that falls to nothing, and on the flat one with a limiter. */
export function slipHeat(
  { clutch, friction, torque, outputSpeed, freeSpeed }: SlipHeatPicture,
  pressure: number,
): { readonly falling: number; readonly flat: number } {
  const carried = capacity(clutch, pressure, friction);
  const torqueAtRest = torque / (1 - outputSpeed / freeSpeed);
  return {
    falling: slipPowerLine({ torqueAtRest, freeSpeed }, outputSpeed, carried),
    flat: slipPowerLimiter({ torque, governedSpeed: freeSpeed }, outputSpeed, carried),
  };
}

/** Both lines over the pressure, with the three regions shaded and named, and the pressures where they meet. */
export function slipHeatAgainstPressure(data: SlipHeatPicture, picture: Picture): SVGSVGElement {
  const { clutch, friction, torque, outputSpeed, freeSpeed } = data;
  const { kiss, lock } = slipWindow(clutch, torque, friction);
  const pressure = axis("pressure", picture.system);
  const power = axis("power", picture.system);
  const end = 1.35 * lock;
  const px = (pascals: number) => pascals * pressure.factor;
  const along = (from: number, to: number, heat: (p: number) => number): At[] =>
    range(0, 161).map((i) => {
      const p = from + ((to - from) * i) / 160;
      return { x: px(p), y: heat(p) * power.factor };
    });
  const falling = along(0, end, (p) => slipHeat(data, p).falling);
  // The flat line ends in a cliff: up to just below lock, straight down, and along the floor.
  const cliff = torque * (freeSpeed - outputSpeed) * power.factor;
  const flat = [
    ...along(0, lock * (1 - 1e-9), (p) => slipHeat(data, p).flat),
    { x: px(lock), y: 0 },
    { x: px(end), y: 0 },
  ];
  const top = cliff * 1.32;
  const middle = (kiss + lock) / 2;
  const peak = slipHeat(data, middle).falling * power.factor;
  const { width } = picture;
  const narrow = width < 480;
  const perPascal = (width - LEFT - RIGHT) / end;

  const svg = draw(
    {
      width,
      height: Math.round(Math.min(460, Math.max(320, width * 0.55))),
      marginLeft: LEFT,
      marginRight: RIGHT,
      marginTop: narrow ? 42 : 26,
      marginBottom: 42,
      x: { domain: [0, px(end)], label: null },
      y: { domain: [0, top], label: null },
      marks: [
        region(0, px(kiss), top, band.released),
        region(px(kiss), px(lock), top, band.partly),
        region(px(lock), px(end), top, band.fully),
        Plot.axisX({ ticks: width < 480 ? 4 : 8, label: null, fill: ink.soft, stroke: ink.rule }),
        Plot.axisY({ ticks: 5, label: null, fill: ink.soft, stroke: ink.rule }),
        title(`slip heat [${power.unit}]`, "top-left", -LEFT + 2, narrow ? -25 : -10),
        title(`apply pressure [${pressure.unit}]`, "bottom-right", 0, 38),
        ...name("released", 0, px(kiss), top, perPascal * kiss, picture),
        ...name("partly applied", px(kiss), px(lock), top, perPascal * (lock - kiss), picture),
        ...name("fully applied", px(lock), px(end), top, perPascal * (end - lock), picture),
        Plot.ruleX([px(kiss), px(lock)], { stroke: ink.soft, strokeDasharray: "2 3" }),
        pole("kiss", px(kiss), top, pressure.unit, "start"), // clear of the axis's name at its left
        pole("lock", px(lock), top, pressure.unit),
        Plot.line(flat, { x: "x", y: "y", stroke: ink.asked, strokeWidth: 2, strokeDasharray: "6 4" }),
        Plot.line(falling, { x: "x", y: "y", stroke: ink.heat, strokeWidth: 2.5 }),
        Plot.ruleY([0], { stroke: ink.soft }),
        narrow
          ? caption(
              { x: px(middle), y: peak },
              ["falling line:", "worst halfway"],
              ink.heat,
              "middle",
              "top",
              8,
            )
          : caption(
              { x: px(middle), y: peak },
              ["engine line that falls", "to nothing: worst halfway"],
              ink.heat,
              "middle",
              "top",
              14,
            ),
        narrow
          ? caption(
              { x: px(kiss), y: cliff * 1.03 },
              ["flat line with a limiter:", "worst just below lock"],
              ink.asked,
              "start",
              "bottom",
              0,
            )
          : caption(
              { x: px(kiss + 0.8 * (lock - kiss)), y: cliff * 0.8 },
              ["flat engine line with a limiter:", "worst just below lock"],
              ink.asked,
              "end",
              "bottom",
              -8,
            ),
        ...looked(data, px, power.factor),
      ],
    },
    picture,
  );
  return sealed(
    svg,
    `Slip heat against apply pressure. Zero up to kiss at ${px(kiss).toFixed(0)} ${pressure.unit} and from lock at ` +
      `${px(lock).toFixed(0)} ${pressure.unit}; between them up to ${peak.toPrecision(3)} ${power.unit} on an engine line ` +
      `that falls to nothing, ${cliff.toPrecision(3)} ${power.unit} on a flat one with a limiter.`,
  );
}

const LEFT = 46;
const RIGHT = 12;

const region = (x1: number, x2: number, y2: number, fill: string) =>
  Plot.rect([0], { x1, x2, y1: 0, y2, fill });

const title = (says: string, frameAnchor: "top-left" | "bottom-right", dx: number, dy: number) =>
  Plot.text([says], {
    frameAnchor,
    textAnchor: frameAnchor === "top-left" ? "start" : "end",
    lineAnchor: "bottom",
    dx,
    dy,
    fontWeight: 600,
  });

/** The region's name at its top: along it where it fits, down its middle where it does not. */
function name(
  says: string,
  x1: number,
  x2: number,
  top: number,
  pixels: number,
  { width }: Picture,
): Plot.Markish[] {
  const fits = widthOf(says) < pixels - 6;
  if (pixels < 15) return [];
  return [
    Plot.text([{ x: (x1 + x2) / 2, y: fits ? top : top * 0.97 }], {
      x: "x",
      y: "y",
      text: () => says,
      fontWeight: 600,
      fill: ink.soft,
      ...(fits ? { lineAnchor: "top", dy: 6 } : { rotate: -90, textAnchor: "end" }),
      fontSize: width < 480 ? 11 : 12,
    }),
  ];
}

const pole = (
  says: string,
  x: number,
  top: number,
  unit: string,
  textAnchor: "start" | "middle" = "middle",
) =>
  Plot.text([{ x, y: top }], {
    textAnchor,
    x: "x",
    y: "y",
    text: () => `${says} ${x.toFixed(0)} ${unit}`,
    lineAnchor: "bottom",
    dy: -4,
    fill: ink.text,
    stroke: ink.paper,
    strokeWidth: 4,
  });

/** A few words at a line, in short rows so that they fit a narrow picture. */
function caption(
  at: At,
  rows: readonly string[],
  fill: string,
  textAnchor: "start" | "middle" | "end",
  lineAnchor: "top" | "bottom",
  dy: number,
): Plot.Markish {
  const dx = { start: 4, middle: 0, end: -8 }[textAnchor];
  return Plot.text([at], {
    x: "x",
    y: "y",
    text: () => rows.join("\n"),
    fill,
    stroke: band.partly,
    strokeWidth: 4,
    lineAnchor,
    textAnchor,
    dx,
    dy,
  });
}

/** The pressure that is looked at: a pole and a dot on each line. */
function looked(data: SlipHeatPicture, px: (pascals: number) => number, factor: number): Plot.Markish[] {
  const { at } = data;
  if (at === undefined) return [];
  const { falling, flat } = slipHeat(data, at);
  return [
    Plot.ruleX([px(at)], { stroke: ink.text, strokeWidth: 1.5 }),
    Plot.dot([{ x: px(at), y: flat * factor }], {
      x: "x",
      y: "y",
      r: 5,
      fill: ink.paper,
      stroke: ink.asked,
      strokeWidth: 2,
    }),
    Plot.dot([{ x: px(at), y: falling * factor }], {
      x: "x",
      y: "y",
      r: 5,
      fill: ink.heat,
      stroke: ink.paper,
    }),
  ];
}
