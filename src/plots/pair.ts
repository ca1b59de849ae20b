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

/** The two names for a panel that reaches from 0 to `most` and is so many pixels wide; the lines have points at the same times. */
export function namePair(one: Named, other: Named, most: number, pixels: number): Plot.Markish[] {
  const n = Math.min(one.points.length, other.points.length);
  if (n === 0) return [];
  const i = bestPlace(
    one.points,
    other.points,
    n,
    most,
    Math.max(widthOf(one.says), widthOf(other.says)) / pixels,
  );
  const [a, b] = [inPanel(one.points[i]!, most), inPanel(other.points[i]!, most)];
  const [upper, lower] =
    a.y >= b.y
      ? [
          { ...one, at: a },
          { ...other, at: b },
        ]
      : [
          { ...other, at: b },
          { ...one, at: a },
        ];
  const gap = (upper.at.y - lower.at.y) / most;
  const roomAbove = 1 - upper.at.y / most > NAME;
  const roomBelow = lower.at.y / most > NAME;
  if (!roomBelow && gap < 1.2 * NAME)
    return [
      words(upper.at, upper.says, upper.colour, "above", "end"),
      words(upper.at, lower.says, lower.colour, "above", "start"),
    ];
  if (!roomAbove && gap < 1.2 * NAME)
    return [
      words(lower.at, upper.says, upper.colour, "below", "end"),
      words(lower.at, lower.says, lower.colour, "below", "start"),
    ];
  return [
    words(upper.at, upper.says, upper.colour, roomAbove ? "above" : "below", "middle"),
    words(lower.at, lower.says, lower.colour, roomBelow ? "below" : "above", "middle"),
  ];
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
