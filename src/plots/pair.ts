// Where to write the names of two lines that share a panel: where both run flat, well apart, with room beside them.

import type * as Plot from "@observablehq/plot";
import { widthOf } from "./ink.ts";
import { words, type At } from "./words.ts";

/** A line, its name and its colour. */
export interface Named {
  readonly points: readonly At[];
  readonly says: string;
  readonly colour: string;
}

/** Share of the panel's height that a name takes. */
const NAME = 0.24;

/** A panel that reaches from 0 to `most`, and from one time to another in a picture so many pixels wide. */
export interface NamedIn {
  readonly most: number;
  readonly from: number;
  readonly to: number;
  readonly pixels: number;
}

/** The two names in their panel; the lines have points at the same times. */
export function namePair(one: Named, other: Named, panel: NamedIn): Plot.Markish[] {
  const { most, pixels } = panel;
  const n = Math.min(one.points.length, other.points.length);
  if (n === 0) return [];
  const i = bestPlace(
    one.points,
    other.points,
    n,
    most,
    Math.max(widthOf(one.says), widthOf(other.says)) / pixels,
  );
  const stood = (k: number) => {
    const a = { ...one, at: inPanel(one.points[k]!, most) };
    const b = { ...other, at: inPanel(other.points[k]!, most) };
    return a.at.y >= b.at.y ? [a, b] : [b, a];
  };
  const [upper, lower] = stood(i) as [Placed, Placed];
  const gap = (upper.at.y - lower.at.y) / most;
  const roomAbove = 1 - upper.at.y / most > NAME;
  const roomBelow = lower.at.y / most > NAME;
  if (gap < 1.2 * NAME && !(roomAbove && roomBelow)) {
    // Side by side: far enough in that neither leaves the panel.
    const [least, last] = roomFor(upper.says, lower.says, panel);
    const k = nearestWithin(one.points, n, i, least, last);
    const { x, y } = stood(k)[roomBelow ? 1 : 0]!.at;
    const at = { x: Math.max(least, Math.min(last, x)), y };
    const side = roomBelow ? "below" : "above";
    return [
      words(at, upper.says, upper.colour, side, "end"),
      words(at, lower.says, lower.colour, side, "start"),
    ];
  }
  const anchor = ({ at: { x }, says }: Placed): "start" | "middle" | "end" => {
    const half = 0.5 * widthOf(says) * perPixel(panel);
    return x - panel.from < half ? "start" : panel.to - x < half ? "end" : "middle";
  };
  return [
    words(upper.at, upper.says, upper.colour, roomAbove ? "above" : "below", anchor(upper)),
    words(lower.at, lower.says, lower.colour, roomBelow ? "below" : "above", anchor(lower)),
  ];
}

interface Placed extends Named {
  readonly at: At;
}

/** Beside the panel there are axis and edge: so much of the picture is not its [px]. */
const BESIDE = 64;

/** What a pixel stands for along the panel. */
const perPixel = ({ from, to, pixels }: NamedIn): number => (to - from) / Math.max(1, pixels - BESIDE);

/** Between which times two names find room side by side, the one before and the other behind. */
const roomFor = (before: string, behind: string, panel: NamedIn): readonly [number, number] => [
  panel.from + (widthOf(before) + 4) * perPixel(panel),
  panel.to - (widthOf(behind) + 4) * perPixel(panel),
];

/** The index nearest to one whose point lies between two times; that one where none does. */
function nearestWithin(
  points: readonly At[],
  n: number,
  wanted: number,
  least: number,
  last: number,
): number {
  const fits = (k: number) => k >= 0 && k < n && points[k]!.x >= least && points[k]!.x <= last;
  for (let off = 0; off < n; off++) for (const k of [wanted - off, wanted + off]) if (fits(k)) return k;
  return wanted;
}

const inPanel = ({ x, y }: At, most: number): At => ({ x, y: Math.min(y, most) });

/** Index of the flattest place, a `share` of the points wide, where the lines stand well apart, rather in the middle. */
function bestPlace(one: readonly At[], other: readonly At[], n: number, most: number, share: number): number {
  const half = Math.max(1, Math.round(n * Math.min(0.3, 0.55 * share)));
  let best = Math.floor(n / 2);
  let bestScore = -Infinity;
  for (let i = half; i < n - half; i++) {
    const gap = Math.min(0.5, Math.abs(one[i]!.y - other[i]!.y) / most);
    const wander = (unrest(one, i - half, i + half) + unrest(other, i - half, i + half)) / most;
    const score = gap - 1.5 * wander - 0.1 * Math.abs(i / n - 0.5);
    if (score > bestScore) [bestScore, best] = [score, i];
  }
  return best;
}

/** How far a line wanders between two points. */
function unrest(points: readonly At[], from: number, to: number): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = from; i <= to; i++) {
    low = Math.min(low, points[i]!.y);
    high = Math.max(high, points[i]!.y);
  }
  return high - low;
}
