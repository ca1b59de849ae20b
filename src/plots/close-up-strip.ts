// A minute or two of driving looked at closely, in seconds before and after what happened.

import * as Plot from "@observablehq/plot";
import { format, ticks } from "d3";
import type { CloseUp, Look } from "../history/record.ts";
import type { HistoryEvent } from "../history/watch.ts";
import { axis, type UnitSystem } from "../units/show.ts";
import { flagsOf, wordsFor } from "./event-words.ts";
import { ink } from "./ink.ts";
import type { Picture } from "./picture.ts";
import { drawStrip, type Panel } from "./strip.ts";
import { namePair, type NamedIn } from "./pair.ts";
import { drawn, mark, type At } from "./words.ts";

/** A close-up, the events around it, and the moment [s since the start of the history] that is second 0. */
export interface CloseUpPicture {
  readonly closeUp: CloseUp;
  readonly events: readonly HistoryEvent[];
  readonly moment: number;
}

/** What is shown before and after the moment [s]. */
export const closeUpWindow = { before: 45, after: 60 } as const;

/** Looks further apart than this [s] have a stand between them: the line is broken there. */
const BROKEN = 5;

/** Speed, submergence, gas, line pressure, capacity, slip and slip heat against seconds. */
export function closeUpStrip({ closeUp, events, moment }: CloseUpPicture, picture: Picture): SVGSVGElement {
  const { before, after } = closeUpWindow;
  const inside = ({ clock }: { clock: number }) => clock >= moment - before && clock <= moment + after;
  const looks = closeUp.looks.filter(inside);
  const last = looks.at(-1)?.clock ?? moment;
  const from = Math.max(-before, (looks[0]?.clock ?? moment) - moment);
  const to = Math.max(from + 10, last - moment, 0.5);
  const see = (y: (look: Look) => number): At[] =>
    looks.map((look) => ({ x: look.clock - moment, y: y(look) }));
  const { system } = picture;
  const reach = { system, from, to, pixels: picture.width };
  const about = wordsFor({ name: closeUp.about });
  return drawStrip(
    {
      says: `${about}: ${looks.length} looks from ${from.toFixed(0)} s to ${to.toFixed(0)} s around it.`,
      from,
      to,
      panels: [
        speeds(see, reach),
        submergence(see, system, from),
        gas(see),
        pressures(see, reach),
        torques(see, reach),
        slipping(see),
        heat(see, system),
      ],
      flags: flagsOf(events.filter(inside), ({ clock }) => clock - moment, (to - from) / 50),
      axes: [
        {
          label: `time from "${about}" [s]`,
          ticks: ticks(from, to, Math.max(3, Math.round(picture.width / 90))).map((at) => ({
            at,
            text: format(",")(at),
          })),
        },
      ],
    },
    picture,
  );
}

type See = (y: (look: Look) => number) => At[];
/** In whose units, and from when to when in a picture so many pixels wide. */
type Reach = Omit<NamedIn, "most"> & Pick<Picture, "system">;

/** A line that is broken where the unit stood. */
function course(points: readonly At[], stroke: string, dashes = ""): Plot.Markish {
  const broken = points.flatMap((point, i) =>
    i > 0 && point.x - points[i - 1]!.x > BROKEN ? [{ x: point.x, y: Number.NaN }, point] : [point],
  );
  return Plot.line(broken, {
    x: "x",
    y: "y",
    stroke,
    strokeWidth: 1.6,
    clip: true,
    ...(dashes === "" ? {} : { strokeDasharray: dashes }),
  });
}

/** Two lines with their names; drawn no higher than the panel. */
function pair(one: At[], oneName: string, other: At[], otherName: string, panel: NamedIn): Plot.Markish[] {
  return [
    course(other, ink.asked, "5 3"),
    course(one, ink.fluid),
    ...namePair(
      { points: one, says: oneName, colour: ink.fluid },
      { points: other, says: otherName, colour: ink.asked },
      panel,
    ),
  ];
}

const highest = (...lines: readonly At[][]): number =>
  Math.max(0, ...lines.flat().map(({ y }) => (Number.isFinite(y) ? y : 0)));

function speeds(see: See, { system, ...across }: Reach): Panel {
  const { factor, unit } = axis("speed", system);
  const driven = see(({ speed }) => speed * factor);
  const asked = see(({ scheduled }) => scheduled * factor);
  const most = Math.max(5, highest(driven, asked)) * 1.15;
  return {
    label: `road speed [${unit}]`,
    domain: [0, most],
    marks: pair(driven, "driven", asked, "wanted", { most, ...across }),
  };
}

function submergence(see: See, system: UnitSystem, from: number): Panel {
  const { factor, unit } = axis("length", system);
  const points = drawn(see((look) => look.submergence * factor));
  const ys = points.map(({ y }) => y);
  const [low, high] = [Math.min(0, ...ys), Math.max(0, ...ys)];
  const room = 0.2 * Math.max(high - low, factor * 0.005);
  return {
    label: `fluid over the pickup's mouth [${unit}]`,
    domain: [low - room, high + room],
    marks: [...mark(from, 0, "mouth", low < -room ? "below" : "above"), course(points, ink.fluid)],
  };
}

function gas(see: See): Panel {
  return {
    label: "gas in what the pump draws [%]",
    domain: [0, 108],
    ticks: [0, 50, 100],
    marks: [course(drawn(see((look) => 100 * look.gas)), ink.fluid)],
  };
}

function pressures(see: See, { system, ...across }: Reach): Panel {
  const { factor, unit } = axis("pressure", system);
  const line = see((look) => look.linePressure * factor);
  const wanted = see((look) => look.setPoint * factor);
  const most = Math.max(1, highest(line, wanted)) * 1.15;
  return {
    label: `line pressure [${unit}]`,
    domain: [0, most],
    marks: pair(line, "line", wanted, "set point", { most, ...across }),
  };
}

function torques(see: See, { system, ...across }: Reach): Panel {
  const { factor, unit } = axis("torque", system);
  const asked = see((look) => look.demand * factor);
  const carried = drawn(see((look) => look.holds * factor));
  // A clutch that can carry far more than is asked tells nothing by how much.
  const most = Math.max(50 * factor, Math.min(1.15 * highest(carried), 5 * highest(asked)));
  const holds = see((look) => Math.min(look.holds * factor, 1.5 * most));
  return {
    label: `torque at the turbine [${unit}]`,
    domain: [0, most],
    marks: pair(holds, "can be carried", asked, "asked", { most, ...across }),
  };
}

function slipping(see: See): Panel {
  const { factor, unit } = axis("angularSpeed", "SI");
  const points = drawn(see((look) => (look.slipHeat > 0 ? look.slip * factor : 0)));
  return {
    label: `slip of the weakest clutch [${unit}]`,
    domain: [0, Math.max(100, highest(points)) * 1.15],
    marks: [course(points, ink.heat)],
  };
}

function heat(see: See, system: UnitSystem): Panel {
  const { factor, unit } = axis("power", system);
  const points = drawn(see((look) => look.slipHeat * factor));
  return {
    label: `slip heat [${unit}]`,
    domain: [0, Math.max(1, highest(points)) * 1.15],
    marks: [
      Plot.areaY(points, { x: "x", y: "y", fill: ink.heat, fillOpacity: 0.18, clip: true }),
      course(points, ink.heat),
    ],
  };
}
