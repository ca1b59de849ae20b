// The trips of a week by kind: the same schedule after the same stand is one kind, however often the week brings it.

import { tripTime, type Week } from "../driving/pattern.ts";
import type { Ticks } from "../driving/trace.ts";
import { idleFirst } from "../history/plan.ts";

/** After so long a stand [s] everything has cooled and drained: how much longer it was no longer matters to the trip. */
export const COLD_AFTER = 12 * 3600;
/** Shortest piece of a trip that is looked at by itself [s]. */
const PIECE = 60;
const WEEK = 7 * 86400;

/** One kind of trip. Times in seconds; `pieces` are indices of ticks at which a piece begins, with the number of ticks at the end. */
export interface TripKind {
  readonly ticks: Ticks;
  /** Running time of the trip with its idling. */
  readonly time: number;
  /** How long the unit stood before it, and the kind of trip before that. */
  readonly stand: number;
  readonly before: number;
  readonly pieces: readonly number[];
  /** Running seconds since the start of the trip at the beginning of each piece, and at the end. */
  readonly pieceTimes: readonly number[];
  /** Metres driven at the same moments, if the schedule is followed. */
  readonly pieceDistances: readonly number[];
  /** Seconds that the vehicle moves in each piece, if it follows the schedule. */
  readonly pieceMoves: readonly number[];
}

/** A trip of the week: its kind, when it starts [s since Monday, 0 h] and how long the unit stood before [s]. */
export interface Occurrence {
  readonly kind: number;
  readonly startsAt: number;
  readonly stand: number;
  /** Which of the week's kinds of stands that is. */
  readonly standKind: number;
}

/** Stands of one length [s] after one kind of trip, which leaves the unit warm or hot; how much of that is walked [s], and how often the week has them. */
export interface StandKind {
  readonly before: number;
  readonly stand: number;
  readonly walked: number;
  readonly times: number;
}

export interface Kinds {
  readonly kinds: readonly TripKind[];
  readonly occurrences: readonly Occurrence[];
  readonly standKinds: readonly StandKind[];
  /** Where a kind's pieces begin among all of them, one more at the end; and how often the week has the kind. */
  readonly firstPiece: Int32Array;
  readonly times: Int32Array;
}

/** Sorts the trips of a week into kinds. A week without trips has none. */
export function kindsOf(week: Week): Kinds {
  const trips = week.days.flatMap((day, d) =>
    day.map((trip) => ({ trip, startsAt: d * 86400 + trip.startsAt })),
  );
  const names = new Map<string, number>();
  const schedules = new Map<Ticks, number>();
  const nameOf: string[] = [];
  const kinds: TripKind[] = [];
  const occurrences: Occurrence[] = [];
  const standBefore = (i: number) => {
    const last = trips[(i + trips.length - 1) % trips.length]!;
    const ended = last.startsAt + idleFirst + tripTime(last.trip) - (i === 0 ? WEEK : 0);
    return Math.max(0, trips[i]!.startsAt - ended);
  };
  // A short stand ties a trip to the one before it, whose kind must be known: the walk begins after a long stand if there is one.
  const first = Math.max(
    0,
    trips.findIndex((_, i) => standBefore(i) >= COLD_AFTER),
  );
  const order = trips.map((_, i) => (first + i) % trips.length);
  for (const i of order) {
    const { ticks } = trips[i]!.trip;
    if (!schedules.has(ticks)) schedules.set(ticks, schedules.size);
    const stand = standBefore(i);
    const last = (i + trips.length - 1) % trips.length;
    const after = stand >= COLD_AFTER ? "cold" : `${Math.round(stand)} after ${nameOf[last] ?? "?"}`;
    nameOf[i] = `${schedules.get(ticks)!} ${after}`;
  }
  for (const i of order) {
    const name = nameOf[i]!;
    if (names.has(name)) continue;
    names.set(name, names.size);
  }
  for (const i of order) {
    const index = names.get(nameOf[i]!)!;
    if (index < kinds.length) continue;
    const before = names.get(nameOf[(i + trips.length - 1) % trips.length]!)!;
    kinds.push(kindOf(trips[i]!.trip.ticks, walkedOf(standBefore(i)), before));
  }
  const standKinds: { before: number; stand: number; walked: number; times: number }[] = [];
  trips.forEach(({ startsAt }, i) => {
    const [kind, stand] = [names.get(nameOf[i]!)!, standBefore(i)];
    const before = names.get(nameOf[(i + trips.length - 1) % trips.length]!)!;
    const isSame = (other: StandKind) => other.before === before && Math.abs(other.stand - stand) < 1;
    let standKind = standKinds.findIndex(isSame);
    if (standKind < 0) standKind = standKinds.push({ before, stand, walked: walkedOf(stand), times: 0 }) - 1;
    standKinds[standKind]!.times++;
    occurrences.push({ kind, startsAt, stand, standKind });
  });
  const firstPiece = new Int32Array(kinds.length + 1);
  const times = new Int32Array(kinds.length);
  kinds.forEach(({ pieces }, k) => (firstPiece[k + 1] = firstPiece[k]! + pieces.length - 1));
  for (const { kind } of occurrences) times[kind]!++;
  return { kinds, occurrences, standKinds, firstPiece, times };
}

/** How much of a stand is walked [s]: the rest of it is as its end. */
const walkedOf = (stand: number): number => Math.min(stand, 2 * COLD_AFTER);

function kindOf(ticks: Ticks, stand: number, before: number): TripKind {
  const pieces: number[] = [0];
  const pieceTimes: number[] = [0];
  const pieceDistances: number[] = [0];
  const pieceMoves: number[] = [];
  let [time, distance, speed, moves] = [idleFirst, 0, 0, 0];
  for (let i = 0; i < ticks.count; i++) {
    if (time - pieceTimes.at(-1)! >= PIECE) {
      pieces.push(i);
      pieceTimes.push(time);
      pieceDistances.push(distance);
      pieceMoves.push(moves);
      moves = 0;
    }
    time += ticks.dt[i]!;
    distance += 0.5 * (speed + ticks.speed[i]!) * ticks.dt[i]!;
    if (speed > 0 || ticks.speed[i]! > 0) moves += ticks.dt[i]!;
    speed = ticks.speed[i]!;
  }
  pieces.push(ticks.count);
  pieceTimes.push(time);
  pieceDistances.push(distance);
  pieceMoves.push(moves);
  return { ticks, time, stand, before, pieces, pieceTimes, pieceDistances, pieceMoves };
}
