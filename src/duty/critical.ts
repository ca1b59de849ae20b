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

/** Measures that differ by no more than this are one: they tell nothing of how near the event is. */
const SAME = 1e-6;

/**
 * The loss at which an event begins to happen between two that were seen, the second of which is at an index among all that were [kg lacking]. Near it a measure may say nothing on one
 * side (a line that has all of its pressure, a fill that is at its limit): then it goes on from the other side, where it bends as most of them do.
 */
export function beginning(seen: readonly Seen[], at: number, event: number): number {
  const [outer, out, inside, inner] = [seen[at - 2], seen[at - 1]!, seen[at]!, seen[at + 1]];
  const [x0, x1, y0, y1] = [out.lacking, inside.lacking, out.held[event]!, inside.held[event]!];
  const middle = 0.5 * (x0 + x1);
  const isSame = (other: Seen | undefined, value: number) =>
    other !== undefined && Math.abs(other.held[event]! - value) <= SAME;
  const y2 = inner?.held[event] ?? Number.NaN;
  const rises = y2 > y1 && y2 < Infinity;
  const x2 = inner?.lacking ?? Number.NaN;
  const fromInside = rises ? x1 - (y1 * (x2 - x1)) / (y2 - y1) : Number.NaN;
  if (y0 === -1 || !(y0 > -Infinity) || isSame(outer, y0)) {
    if (!rises) return middle;
    // From where it begins such a measure rises as a straight line or as a root.
    const asRoot = x1 - (y1 * y1 * (x2 - x1)) / (y2 * y2 - y1 * y1);
    return asRoot > x0 ? 0.5 * (Math.max(x0, fromInside) + asRoot) : middle;
  }
  if (!(y1 < Infinity) || isSame(inner, y1)) {
    const slope = outer === undefined ? 0 : (y0 - outer.held[event]!) / (x0 - outer.lacking);
    const fromOutside = x0 - y0 / slope;
    return slope > 0 && fromOutside < x1 ? 0.5 * (fromOutside + middle) : middle;
  }
  const straight = x0 - (y0 * (x1 - x0)) / (y1 - y0);
  return fromInside > x0 ? 0.5 * (straight + fromInside) : straight;
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

function add({ seen }: PieceSeen, shown: Seen): void {
  const at = seen.findIndex(({ lacking }) => lacking >= shown.lacking);
  if (at < 0) seen.push(shown);
  else if (seen[at]!.lacking > shown.lacking) seen.splice(at, 0, shown);
}

/**
 * Walks a trip again at a loss [kg lacking], from its beginning to a piece, or only until an event has come; what it shows on the way is seen of every event.
 */
export function walkAgain(
  frozen: Frozen,
  kind: TripKind,
  trip: KindSeen,
  last: number,
  lacking: number,
  longer: number,
  untilComes = -1,
): void {
  beginPiece(frozen, trip, 0, lacking);
  let come = false;
  const told = (piece: number, held: Float64Array, since: Float64Array) => {
    if (come) return;
    add(trip.pieces[piece]!, { lacking, held: held.slice(), since: since.slice() });
    come = held[untilComes]! > 0;
  };
  driveFrozen(frozen, kind, { told, step: () => !come }, 0, last + 1, longer);
}

/**
 * Halves what lies between two losses that were seen until the one at which an event begins or ceases to happen in a piece (`edge`) is known to within a
 * tolerance [kg]. At `happens` it does. The trip is walked to its end, since all of its story changes there. Returns whether it had to be walked at all.
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
): boolean {
  const { seen } = trip.pieces[index]!;
  const last = trip.pieces.length - 1;
  const longer = frozen.severity.lasting[event]! + 1;
  let inside = happens;
  for (let walks = 0; walks < MOST_WALKS; walks++) {
    const outside = seen[seen.indexOf(inside) + (edge === "begins" ? -1 : 1)];
    if (outside === undefined || outside.held[event]! > 0) return walks > 0;
    if (Math.abs(outside.lacking - inside.lacking) <= tolerance) return walks > 0;
    const lacking = 0.5 * (outside.lacking + inside.lacking);
    walkAgain(frozen, kind, trip, last, lacking, longer);
    const shown = seen.find((other) => other.lacking === lacking);
    if (shown === undefined) return false;
    if (shown.held[event]! > 0) inside = shown;
  }
  return true;
}
