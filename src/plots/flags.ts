// Labels over a time axis, each on its own pole, so that no two touch and no pole runs through a label.

import { ink, letters, widthOf } from "./ink.ts";
import { select } from "d3";

/** Something that happened: when (in the units of the axis), in few words, and whether it is harm. */
export interface Flag {
  readonly at: number;
  readonly says: string;
  readonly grave: boolean;
}

/** A label in place: pole at `x`, words to its left or right, so many rows above the panels (0 is lowest). */
export interface PlacedFlag extends Flag {
  readonly x: number;
  readonly side: "left" | "right";
  readonly row: number;
}

export const rowHeight = letters + 4;
const GAP = 5;

/**
 * Places labels in rows between the pixels `left` and `right`. Those before the widest gap fly to the right of their
 * pole, those after it to the left, unless there is no room; a label that flies over the poles of others goes above theirs.
 */
export function placeFlags(
  flags: readonly Flag[],
  toPixel: (at: number) => number,
  left: number,
  right: number,
): PlacedFlag[] {
  const sorted = [...flags].sort((a, b) => a.at - b.at).map((flag) => ({ ...flag, x: toPixel(flag.at) }));
  const cut = widestGap(
    sorted.map(({ x }) => x),
    left,
    right,
  );
  const sided = sorted.map((flag) => ({ ...flag, side: sideOf(flag, cut, left, right) }));
  // From the outside in: each label then only has to clear those that are placed.
  const order = [
    ...sided.filter(({ side }) => side === "right").reverse(),
    ...sided.filter(({ side }) => side === "left"),
  ];
  const placed: PlacedFlag[] = [];
  for (const flag of order) {
    const [from, to] = span(flag);
    let row = 0;
    for (const other of placed) if (other.x > from && other.x < to) row = Math.max(row, other.row + 1);
    const hits = (r: number) =>
      placed.some((other) => {
        const [low, high] = span(other);
        return other.row === r && low < to && high > from;
      });
    while (hits(row)) row++;
    placed.push({ ...flag, row });
  }
  return placed.sort((a, b) => a.x - b.x);
}

/** Pixels that a label covers, with a gap at its end. */
export function span({ x, side, says }: Pick<PlacedFlag, "x" | "side" | "says">): readonly [number, number] {
  const width = widthOf(says) + 2 * GAP;
  return side === "right" ? [x, x + width] : [x - width, x];
}

function widestGap(xs: readonly number[], left: number, right: number): number {
  let cut = (left + right) / 2;
  let widest = 0;
  for (let i = 1; i < xs.length; i++) {
    const gap = xs[i]! - xs[i - 1]!;
    if (gap > widest) {
      widest = gap;
      cut = (xs[i]! + xs[i - 1]!) / 2;
    }
  }
  return cut;
}

function sideOf(flag: Flag & { x: number }, cut: number, left: number, right: number): "left" | "right" {
  const width = widthOf(flag.says) + GAP;
  if (flag.x + width > right) return "left";
  if (flag.x - width < left) return "right";
  return flag.x < cut ? "right" : "left";
}

/** Draws the poles from their label's row down to `bottom`; row 0 stands on the line `top`. */
export function drawFlags(
  svg: SVGSVGElement,
  flags: readonly PlacedFlag[],
  top: number,
  bottom: number,
): void {
  const all = select(svg).append("g");
  for (const { x, side, says, row, grave } of flags) {
    const y = top - row * rowHeight;
    all
      .append("line")
      .attr("x1", x)
      .attr("x2", x)
      .attr("y1", y - letters)
      .attr("y2", bottom)
      .attr("stroke", grave ? ink.heat : ink.soft)
      .attr("stroke-width", grave ? 1 : 0.75)
      .attr("stroke-opacity", 0.75);
    all
      .append("text")
      .attr("x", side === "right" ? x + GAP : x - GAP)
      .attr("y", y - 2)
      .attr("text-anchor", side === "right" ? "start" : "end")
      .attr("fill", grave ? ink.heat : ink.text)
      .text(says);
  }
}
