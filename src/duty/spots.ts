// What clings under the vehicle and what reaches the ground: the hiding place filled trip by trip, in closed form over driving and standing.

import { hidingStep, type HidingPlace, type HidingStep } from "../physics/leak/hiding.ts";
import { lostAt, type Found } from "./happen.ts";
import { WEEK, type March } from "./course.ts";
import { spread } from "./week.ts";

/** Fluid that makes a spot [kg]. */
const SPOT = 0.001;
/** Far from full, as a share. */
const FAR = 0.95;

/** Where fluid that leaves clings, how much does, and when the hiding place was first full and a spot first on the ground; `week` -1: not yet. */
export interface Spots {
  place: HidingPlace;
  readonly step: HidingStep;
  held: number;
  onGround: number;
  readonly full: Found;
  readonly spot: Found;
}

const nowhere = (): Found => ({ week: -1, trip: 0, time: 0, lost: 0 });

export const newSpots = (): Spots => ({
  place: { capacity: 0, carryOff: 0 },
  step: { held: 0, carriedOff: 0, overflow: 0 },
  held: 0,
  onGround: 0,
  full: nowhere(),
  spot: nowhere(),
});

/** Finds when the hiding place is full and when the first spot lies on the ground, within the weeks that were marched. */
export function findSpots(march: March, weeks: number, spots: Spots): void {
  const { leak, prepared, opensAt, order, startsAt } = march;
  spots.held = 0;
  spots.onGround = 0;
  spots.full.week = spots.spot.week = -1;
  if (leak === null || !(opensAt < Infinity)) return;
  const { density15 } = prepared.unit.fluid;
  spots.place = { capacity: leak.hiding.capacity * density15, carryOff: leak.hiding.carryOff };
  const opensIn = Math.max(0, march.opensIn); // a leak may be older than the plan
  for (let week = opensIn; week < weeks; week++) {
    if (week > opensIn && fillsSlowly(march, spots, week)) continue;
    spread(march, week);
    const { lostAtStart, lostAtEnd } = march;
    let before = march.lost[week]!;
    for (let i = 0; i < order.length; i++) {
      const { kind, stand } = prepared.occurrences[order[i]!]!;
      // It leaks for all of the stand before the trip, or since it opened.
      const open = Math.min(stand, week * WEEK + startsAt[i]! - opensAt);
      if (open > 0) passes(spots, week, i, -open, before, lostAtStart[i]! - before, 0, open);
      before = lostAtStart[i]!;
      if (lostAtEnd[i]! > before) drives(march, spots, week, i, kind);
      before = lostAtEnd[i]!;
      if (spots.spot.week >= 0 && (spots.full.week >= 0 || spots.place.capacity === 0)) return;
    }
  }
}

/** A week that leaves the hiding place far from full: what it loses, lost evenly; true and held if so. */
function fillsSlowly(march: March, spots: Spots, week: number): boolean {
  const { place, held } = spots;
  const more = march.lost[week + 1]! - march.lost[week]!;
  if (held + more > FAR * place.capacity) return false;
  const blown = place.carryOff * march.weekMoves;
  const left = Math.exp(-blown);
  spots.held = held * left + (blown > 1e-9 ? (more * (1 - left)) / blown : more);
  return true;
}

/** A trip at once while nothing can run over, else piece by piece. */
function drives(march: March, spots: Spots, week: number, trip: number, kind: number): void {
  const { lostAtStart, lostAtEnd, prepared } = march;
  const { pieceTimes, pieceMoves, time } = prepared.kinds[kind]!;
  const from = lostAtStart[trip]!;
  const to = lostAtEnd[trip]!;
  const moves = march.moves[kind]!;
  if (spots.held + to - from < spots.place.capacity) {
    passes(spots, week, trip, 0, from, to - from, moves, time - moves);
    return;
  }
  let before = from;
  for (let first = 0; first < pieceMoves.length; first += GROUP) {
    const last = Math.min(first + GROUP, pieceMoves.length);
    const after = last === pieceMoves.length ? to : lostAt(march, week, trip, pieceTimes[last]!);
    const seconds = pieceTimes[last]! - pieceTimes[first]!;
    let groupMoves = 0;
    for (let p = first; p < last; p++) groupMoves += pieceMoves[p]!;
    const still = Math.max(0, seconds - groupMoves);
    if (nothingNew(spots, after - before, still / seconds))
      passes(spots, week, trip, pieceTimes[first]!, before, after - before, groupMoves, still);
    else byPieces(march, spots, week, trip, kind, first, last, before, after);
    before = after;
  }
}

/** Pieces of a trip at once where nothing comes between them. */
const GROUP = 6;

/** Neither does the hiding place fill for the first time nor is there a spot while so much more is lost [kg], of which a share falls still. */
function nothingNew({ place, held, full, onGround }: Spots, more: number, stillShare: number): boolean {
  if (held + more < place.capacity) return true;
  return (full.week >= 0 || place.capacity === 0) && onGround + 2 * more * stillShare < SPOT;
}

function byPieces(
  march: March,
  spots: Spots,
  week: number,
  trip: number,
  kind: number,
  first: number,
  last: number,
  from: number,
  to: number,
): void {
  const { pieceTimes, pieceMoves } = march.prepared.kinds[kind]!;
  let before = from;
  for (let p = first; p < last; p++) {
    const after = p === last - 1 ? to : lostAt(march, week, trip, pieceTimes[p + 1]!);
    const still = pieceTimes[p + 1]! - pieceTimes[p]! - pieceMoves[p]!;
    passes(spots, week, trip, pieceTimes[p]!, before, after - before, pieceMoves[p]!, Math.max(0, still));
    before = after;
  }
}

/** Time passes, first moving, then still, while so much is lost evenly [kg]. */
function passes(
  spots: Spots,
  week: number,
  trip: number,
  time: number,
  lost: number,
  more: number,
  moves: number,
  still: number,
): void {
  const seconds = moves + still;
  if (!(seconds > 0)) return;
  if (moves > 0) part(spots, week, trip, time, lost, (more * moves) / seconds, moves, true);
  if (still > 0)
    part(
      spots,
      week,
      trip,
      time + moves,
      lost + (more * moves) / seconds,
      (more * still) / seconds,
      still,
      false,
    );
}

function part(
  spots: Spots,
  week: number,
  trip: number,
  time: number,
  lost: number,
  more: number,
  seconds: number,
  moving: boolean,
): void {
  const { step, place, full, spot } = spots;
  hidingStep(step, place, spots.held, more / seconds, moving, seconds);
  const share = more > 0 ? 1 - Math.min(1, step.overflow / more) : 0;
  if (full.week < 0 && place.capacity > 0 && step.held >= place.capacity * (1 - 1e-9))
    note(full, week, trip, time + share * seconds, lost + share * more);
  if (!moving && step.overflow > 0) {
    const left = SPOT - spots.onGround;
    if (spot.week < 0 && step.overflow >= left) {
      const at = share + ((1 - share) * left) / step.overflow;
      note(spot, week, trip, time + at * seconds, lost + at * more);
    }
    spots.onGround += step.overflow;
  }
  spots.held = step.held;
}

function note(found: Found, week: number, trip: number, time: number, lost: number): void {
  found.week = week;
  found.trip = trip;
  found.time = time;
  found.lost = lost;
}
