// The critical loss of an event: how much must be lacking for it to happen in a given piece of a given trip. Levels bracket it,
// pieces walked again close the bracket; whatever a piece shows on the way serves every event.

import { driveFrozen, type Frozen } from "./frozen.ts";
import type { TripKind } from "./kinds.ts";
import type { PieceSeen, Seen, WeekSeen } from "./levels.ts";
import { levelStep } from "./prepared.ts";
import { fullMass, restore } from "./snapshot.ts";

/** A moment that may be the first: the piece, and what is known of its critical loss [kg]. */
export interface Bracketed {
  readonly kind: number;
  readonly piece: number;
  /** Index of the first seen loss at which it happens. */
  readonly upper: number;
  readonly estimate: number;
}

/** Most times that a piece is walked again for one event. */
const MOST_WALKS = 14;

/** Pieces in which the event happens at some level, by rising estimate of the loss that it takes. */
export function bracketed(seen: WeekSeen, event: number): Bracketed[] {
  const found: Bracketed[] = [];
  seen.forEach((pieces, kind) =>
    pieces.forEach((piece, index) => {
      const known = estimateOf(piece, event);
      if (known !== undefined) found.push({ kind, piece: index, ...known });
    }),
  );
  return found.sort((a, b) => a.estimate - b.estimate);
}

/** What is known of a piece and an event, from so much lacking on [kg]: the first seen loss at which it happens, and where the loss that it takes may lie. */
export function estimateOf(
  { seen }: PieceSeen,
  event: number,
  from = 0,
): { upper: number; estimate: number } | undefined {
  const upper = seen.findIndex(({ lacking, held }) => lacking >= from && held[event]! > 0);
  if (upper < 0) return undefined;
  return {
    upper,
    estimate: upper === 0 ? seen[0]!.lacking : crossing(seen[upper - 1]!, seen[upper]!, event),
  };
}

/** A straight line where both ends have a measure; else the middle. -1 stands for a measure that does not apply. */
function crossing(low: Seen, high: Seen, event: number): number {
  const [a, b] = [low.held[event]!, high.held[event]!];
  const share = a > -1 && a <= 0 && b < Infinity ? a / (a - b) : 0.5;
  return low.lacking + (high.lacking - low.lacking) * share;
}

/** Steels of two levels that differ by more than this [K] tell of a slip at one of them. */
const SAME_PLATE = 15;
/** So do linings that differ by more than this in what is charred and glazed. */
const SAME_LINING = 0.01;
/** A vehicle this far under its schedule [m/s] has not kept up. */
const KEPT_UP = 0.5;

/** A moment at which the two levels around a loss differ by little more than that loss: nothing has slipped lately at either. */
function isCalm({ starts }: PieceSeen, level: number): boolean {
  const [low, high] = [starts[level]!, starts[Math.min(starts.length - 1, level + 1)]!];
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

/**
 * Lets the unit begin at a piece with so much lacking, between the two levels around it, or as far before it as a slip reaches back;
 * returns the piece at which it stands.
 */
export function beginPiece(
  frozen: Frozen,
  pieces: readonly PieceSeen[],
  index: number,
  lacking: number,
): number {
  const last = pieces[index]!.starts.length - 1;
  const level = Math.min(Math.floor(lacking / levelStep), Math.max(0, last - 1));
  let from = index;
  while (from > 0 && !isCalm(pieces[from]!, level)) from--;
  const { starts, moreTrim } = pieces[from]!;
  const high = Math.min(last, level + 1);
  const share = high > level ? lacking / levelStep - level : 0;
  restore(frozen.walk, starts[level]!, starts[high]!, share);
  const { state, unit } = frozen.walk;
  state.trim += moreTrim[level]! + (moreTrim[high]! - moreTrim[level]!) * share;
  state.mass = Math.max(0, fullMass(unit) - lacking);
  return from;
}

/** Walks a piece with so much lacking and adds what it and every piece on the way show to what is known. */
function walkPiece(
  frozen: Frozen,
  kind: TripKind,
  index: number,
  pieces: readonly PieceSeen[],
  lacking: number,
  longer: number,
): void {
  const from = beginPiece(frozen, pieces, index, lacking);
  driveFrozen(
    frozen,
    kind,
    {
      told: (piece, held, since) =>
        add(pieces[piece]!, { lacking, held: held.slice(), since: since.slice() }),
      untilBurnt: true,
    },
    from,
    index - from + 1,
    longer,
  );
}

function add({ seen }: PieceSeen, shown: Seen): void {
  const at = seen.findIndex(({ lacking }) => lacking >= shown.lacking);
  if (at < 0) seen.push(shown);
  else if (seen[at]!.lacking > shown.lacking) seen.splice(at, 0, shown);
}

/** Tries whether the event happens in a piece with so much lacking; after a slip the rest of the trip is walked as well. */
export function happensAt(
  frozen: Frozen,
  kind: TripKind,
  index: number,
  pieces: readonly PieceSeen[],
  event: number,
  lacking: number,
): boolean {
  const longer = frozen.severity.lasting[event]! + 1;
  const { seen } = pieces[index]!;
  const known = seen.find(({ lacking: other }) => Math.abs(other - lacking) < 1e-9);
  if (known !== undefined) return known.held[event]! > 0;
  const last = pieces.length - 1;
  const level = Math.min(Math.floor(lacking / levelStep), Math.max(0, pieces[index]!.starts.length - 2));
  walkPiece(frozen, kind, isCalm(pieces[index]!, level) ? index : last, pieces, lacking, longer);
  return seen.some(({ lacking: other, held }) => other <= lacking + 1e-9 && held[event]! > 0);
}

/** A critical loss, the larger loss beyond which the event no longer happens (Infinity: none is known) [kg], and when it happens [s]. */
export interface Window {
  readonly critical: number;
  readonly until: number;
  readonly time: number;
}

/** How closely the end of a window is found [kg]. */
const ENDS_WITHIN = 0.01;

/**
 * The critical loss [kg] from so much lacking on, to within a tolerance [kg], and when within the trip it happens there [s]; undefined
 * where it never does. More fluid lost may undo it (a longer slip has taught the controller, an earlier one has slowed the vehicle).
 */
export function criticalLoss(
  frozen: Frozen,
  kind: TripKind,
  index: number,
  pieces: readonly PieceSeen[],
  event: number,
  tolerance: number,
  from = 0,
): Window | undefined {
  const longer = frozen.severity.lasting[event]! + 1;
  const piece = pieces[index]!;
  let last = Number.NaN;
  for (let walks = 0; ; walks++) {
    const known = estimateOf(piece, event, from);
    if (known === undefined) return undefined;
    const high = piece.seen[known.upper]!;
    const low = piece.seen[known.upper - 1];
    const width = low === undefined ? 0 : high.lacking - low.lacking;
    const settled = Math.abs(known.estimate - last) < 0.5 * tolerance && width < 20 * tolerance;
    if (low === undefined || width <= tolerance || settled || walks >= MOST_WALKS)
      return {
        critical: known.estimate,
        until: windowEnd(frozen, kind, index, pieces, event, high.lacking),
        time: high.since[event]!,
      };
    last = known.estimate;
    // The straight line, kept off the ends; every third time the middle, so that the bracket closes from both sides.
    const kept = Math.min(high.lacking - 0.05 * width, Math.max(low.lacking + 0.05 * width, known.estimate));
    walkPiece(
      frozen,
      kind,
      index,
      pieces,
      walks % 3 === 2 ? 0.5 * (low.lacking + high.lacking) : kept,
      longer,
    );
  }
}

/** Up to which loss the event still happens, from one at which it does [kg]. */
function windowEnd(
  frozen: Frozen,
  kind: TripKind,
  index: number,
  pieces: readonly PieceSeen[],
  event: number,
  from: number,
): number {
  const { seen } = pieces[index]!;
  const longer = frozen.severity.lasting[event]! + 1;
  for (let walks = 0; ; walks++) {
    const end = seen.findIndex(({ lacking, held }) => lacking > from && !(held[event]! > 0));
    if (end < 0) return Infinity;
    const [low, high] = [seen[end - 1]!.lacking, seen[end]!.lacking];
    if (high - low <= ENDS_WITHIN || walks >= MOST_WALKS) return 0.5 * (low + high);
    walkPiece(frozen, kind, index, pieces, 0.5 * (low + high), longer);
  }
}
