// The critical loss of an event: how much must be lacking for it to happen in a given piece of a given trip. Levels bracket it,
// pieces walked again close the bracket; whatever a piece shows on the way serves every event.

import { driveFrozen, type Frozen } from "./frozen.ts";
import type { TripKind } from "./kinds.ts";
import { learnedBy, learnedRange, teach } from "./learned.ts";
import type { KindSeen, PieceSeen, Seen } from "./levels.ts";
import { fullMass, restore } from "./snapshot.ts";

/** Most times that a trip is walked again for one event. */
const MOST_WALKS = 4;

/** What a straight line says of the loss between two at which an event crosses; else the middle. -1 stands for a measure that does not apply. */
export function crossing(low: Seen, high: Seen, event: number): number {
  const a = low.held[event]!;
  const b = high.held[event]!;
  const share = a > -1 && b > -1 && a < Infinity && b < Infinity && a !== b ? a / (a - b) : 0.5;
  return low.lacking + (high.lacking - low.lacking) * Math.min(1, Math.max(0, share));
}

/** Steels of two levels that differ by more than this [K] tell of a slip at one of them. */
const SAME_PLATE = 15;
/** So do linings that differ by more than this in what is charred and glazed. */
const SAME_LINING = 0.01;
/** A vehicle this far under its schedule [m/s] has not kept up. */
const KEPT_UP = 0.5;

/** A moment at which the two levels around a loss differ by little more than that loss: nothing has slipped lately at either. */
function isCalm({ starts }: PieceSeen, level: number): boolean {
  const low = starts[level]!;
  const high = starts[Math.min(starts.length - 1, level + 1)]!;
  for (const { state, heldUp, scheduled } of [low, high])
    if (state.slipping || state.entering >= 0 || heldUp || Math.abs(scheduled - state.speed) > KEPT_UP)
      return false;
  return low.state.plate.every(
    (plate, i) =>
      Math.abs(plate - high.state.plate[i]!) < SAME_PLATE &&
      Math.abs(low.state.char[i]! - high.state.char[i]!) +
        Math.abs(low.state.glaze[i]! - high.state.glaze[i]!) <
        SAME_LINING,
  );
}

/** The level at or under a loss, as far as levels go on above it. */
function levelAt(levels: readonly number[], lacking: number): number {
  let level = 0;
  while (level < levels.length - 2 && levels[level + 1]! <= lacking) level++;
  return level;
}

/**
 * Lets the unit begin at a piece with so much lacking, between the two levels around it, or as far before it as a slip reaches back;
 * returns the piece at which it stands.
 */
export function beginPiece(
  frozen: Frozen,
  { levels, pieces }: KindSeen,
  index: number,
  lacking: number,
): number {
  const level = levelAt(levels, lacking);
  let from = index;
  while (from > 0 && !isCalm(pieces[from]!, level)) from--;
  const { starts, moreLearned } = pieces[from]!;
  const high = Math.min(levels.length - 1, level + 1);
  const share = high > level ? (lacking - levels[level]!) / (levels[high]! - levels[level]!) : 0;
  restore(frozen.walk, starts[level]!, starts[high]!, share);
  const { state, unit } = frozen.walk;
  const [before, more, moreAbove] = [learnedBy(state), moreLearned[level]!, moreLearned[high]!];
  teach(state, learnedRange(unit), (i) => before[i]! + more[i]! + (moreAbove[i]! - more[i]!) * share);
  state.mass = Math.max(0, fullMass(unit) - lacking);
  return from;
}

/** Walks on from a piece at which the unit stands to the end of another and adds what they show to what is known. */
function walkPieces(
  frozen: Frozen,
  kind: TripKind,
  pieces: readonly PieceSeen[],
  from: number,
  index: number,
  lacking: number,
  longer: number,
): void {
  const told = (piece: number, held: Float64Array, since: Float64Array) =>
    add(pieces[piece]!, { lacking, held: held.slice(), since: since.slice() });
  driveFrozen(frozen, kind, { told }, from, index - from + 1, longer);
}

function add({ seen }: PieceSeen, shown: Seen): void {
  const at = seen.findIndex(({ lacking }) => lacking >= shown.lacking);
  if (at < 0) seen.push(shown);
  else if (seen[at]!.lacking > shown.lacking) seen.splice(at, 0, shown);
}

/**
 * Walks a trip again from its beginning to a piece until the loss at which the event begins or ceases to happen there (`edge`), between
 * two that were seen, is known to within a tolerance [kg]. At `happens` it does; one that `jumps` tells nothing of how near it is, and the trip is
 * walked to its end, since all of its story changes there. Returns whether it had to be walked at all.
 */
export function closeIn(
  frozen: Frozen,
  kind: TripKind,
  trip: KindSeen,
  index: number,
  event: number,
  edge: "begins" | "ceases",
  happens: Seen,
  tolerance: number,
  jumps: boolean,
): boolean {
  const { seen } = trip.pieces[index]!;
  const last = jumps ? trip.pieces.length - 1 : index;
  const longer = frozen.severity.lasting[event]! + 1;
  let inside = happens;
  let estimated = Number.NaN;
  for (let walks = 0; walks < MOST_WALKS; walks++) {
    const outside = seen[seen.indexOf(inside) + (edge === "begins" ? -1 : 1)];
    if (outside === undefined || outside.held[event]! > 0) return walks > 0;
    const [low, high] = edge === "begins" ? [outside, inside] : [inside, outside];
    const width = high.lacking - low.lacking;
    const estimate = jumps ? Number.NaN : crossing(low, high, event);
    if (width <= tolerance || (Math.abs(estimate - estimated) < tolerance && width < 30 * tolerance))
      return walks > 0;
    estimated = estimate;
    // The straight line, kept off the ends; every third time the middle, so that the bracket closes from both sides.
    const kept = Math.min(high.lacking - 0.05 * width, Math.max(low.lacking + 0.05 * width, estimate));
    const lacking = jumps || walks % 3 === 2 ? 0.5 * (low.lacking + high.lacking) : kept;
    beginPiece(frozen, trip, 0, lacking);
    walkPieces(frozen, kind, trip.pieces, 0, last, lacking, longer);
    const shown = seen.find((other) => other.lacking === lacking);
    if (shown === undefined) return false;
    if (shown.held[event]! > 0) inside = shown;
  }
  return true;
}
