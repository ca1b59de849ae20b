// The two bar pictures, from the answer.

import { ticks } from "d3";
import type { Answer } from "../../src/lookback/answer/answer.ts";
import type { Picture } from "../../src/plots/picture.ts";
import { shareBars } from "../../src/plots/share-bars.ts";
import { days, named, narrowing } from "./told.ts";

const percents = [0, 0.25, 0.5, 0.75, 1].map((at) => ({ at, text: `${100 * at} %` }));

export const causeBars = ({ causes }: Answer, picture: Picture): SVGSVGElement =>
  shareBars(
    {
      says: `Shares of ${causes.length} causes after the evidence, with strokes where they were before.`,
      bars: causes.map(({ cause, share, believed }) => ({
        says: named(cause),
        value: share,
        before: believed,
        aside: share < 0.005 ? "< 1 %" : share > 0.995 ? "> 99 %" : `${Math.round(100 * share)} %`,
      })),
      to: 1,
      label: "share of all cases like this",
      ticks: percents,
    },
    picture,
  );

/** The looks that help most. */
const MOST = 5;
const DAY = 86400;

export function nextLookBars(answer: Answer, picture: Picture): SVGSVGElement {
  const shown = narrowing(answer).slice(0, MOST);
  const to = Math.max(1, ...shown.map(({ now }) => now / DAY));
  return shareBars(
    {
      says: `How closely the opening date would be known after each of ${shown.length} looks.`,
      bars: shown.map(({ name, minutes, now, after }) => ({
        says: `${name}, ${minutes} min`,
        value: after / DAY,
        before: now / DAY,
        aside: `then ± ${days(after)}`,
      })),
      to,
      label: "opening date known to ± [days]",
      ticks: ticks(0, to, 4).map((at) => ({ at, text: String(at) })),
    },
    picture,
  );
}
