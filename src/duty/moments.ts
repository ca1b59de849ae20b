// The moments of a week at which an event can come: pieces of trips, each with the losses at which it happens there.

import { beginning, closeIn, crossing, walkAgain } from "./critical.ts";
import type { Frozen } from "./frozen.ts";
import type { Kinds, TripKind } from "./kinds.ts";
import { BEYOND, BEYOND_OTHERS, type KindSeen, type PieceSeen, type Seen } from "./levels.ts";
import type { Candidate } from "./prepared.ts";

/** Losses at which an event happens in a piece [kg lacking], and when within the trip at the least of them [s]. */
interface Window {
  readonly kind: number;
  readonly piece: number;
  readonly critical: number;
  readonly until: number;
  readonly time: number;
  readonly follows: boolean;
  /** The first and last loss at which it was seen to happen. */
  readonly least: Seen;
  readonly most: Seen;
}

/** How closely a loss at which something begins or ceases is found [kg]: what hangs on the fluid alone, and what comes of slips. */
const FOUND_WITHIN = 0.001;
const JUMPS_WITHIN = 0.004;
/** What was found is made sure of by a walk so far beside it, where it was seen on one side of so wide a span alone [kg]. */
const SURE = 0.01;
const SURE_WITHIN = 0.03;
const MOST_TURNS = 4;
/** Most times that a trip is walked again for the least loss of one event. */
const MOST_WALKS = 16;

/**
 * Every window of an event in a piece; one that `jumps` with what slipped before it has no nearness, and changes halfway between two losses. More fluid lost may undo it (a longer slip has taught the controller, an earlier one has slowed the vehicle).
 * Where it `follows` a burnt clutch at some losses and comes of itself at others, these are windows of their own.
 */
function windowsOf(
  { seen }: PieceSeen,
  event: number,
  kind: number,
  piece: number,
  jumps: boolean,
  follows: (shown: Seen) => boolean,
): Window[] {
  const found: Window[] = [];
  const edge = (at: number, begins: boolean) => {
    const [low, high] = [seen[at - 1]!, seen[at]!];
    const bothCome = low.held[event]! > 0 && high.held[event]! > 0;
    if (jumps || bothCome) return 0.5 * (low.lacking + high.lacking);
    return begins ? beginning(seen, at, event) : crossing(low, high, event);
  };
  let last = -1;
  for (let i = 0; i < seen.length; i++) {
    if (i <= last || !(seen[i]!.held[event]! > 0)) continue;
    const late = follows(seen[i]!);
    last = i;
    while (last + 1 < seen.length && seen[last + 1]!.held[event]! > 0 && follows(seen[last + 1]!) === late)
      last++;
    found.push({
      kind,
      piece,
      critical: i === 0 ? seen[i]!.lacking : edge(i, true),
      until: last + 1 < seen.length ? edge(last + 1, false) : Infinity,
      time: seen[i]!.since[event]!,
      follows: late,
      least: seen[i]!,
      most: seen[last]!,
    });
  }
  return found;
}

const ofItself = () => false;

/** Windows of a kind of trip that no earlier piece covers, by rising loss; `follows`: whether a clutch has burnt before the event as the trip was seen. */
export function firstWindows(
  pieces: readonly PieceSeen[],
  event: number,
  kind: number,
  jumps = false,
  follows: (shown: Seen) => boolean = ofItself,
): Window[] {
  const found: Window[] = [];
  pieces.forEach((piece, index) => {
    for (const window of windowsOf(piece, event, kind, index, jumps, follows))
      if (
        !found.some(
          ({ critical, until, follows }) =>
            critical <= window.critical && until >= window.until && follows === window.follows,
        )
      )
        found.push(window);
  });
  return found.sort((a, b) => a.critical - b.critical);
}

/** When a clutch first burns in a trip [s since its start], by each loss at which it was seen [kg lacking]; a loss at which none does is missing. */
function firstBurns({ burns }: Frozen, { pieces }: KindSeen): ReadonlyMap<number, number> {
  const first = new Map<number, number>();
  for (const { seen } of pieces)
    for (const { lacking, held, since } of seen)
      for (const burn of burns)
        if (held[burn]! > 0 && !(first.get(lacking)! <= since[burn]!)) first.set(lacking, since[burn]!);
  return first;
}

/** Events that hang on the fluid and on what a few shifts teach, not on earlier slips: their critical losses are found by walking trips again. */
const SMOOTH = [
  "first gulp of air",
  "first flare",
  "cooler flow below half",
  "line pressure below demand",
  "lock-up slipping",
  "first sustained slip",
  "learned fill at its limit",
];

/** Closes in on the losses between which an event can come first in its trip, by kind of trip: what is walked on the way is seen of every event. */
export function findEdges(frozen: Frozen, kinds: Kinds, seen: readonly KindSeen[], event: number): void {
  if (isSmooth(frozen, event))
    seen.forEach((trip, k) => {
      leastEdge(frozen, kinds.kinds[k]!, trip, k, event, reach(kinds, seen, k, event));
    });
  else if (frozen.burns.includes(event))
    seen.forEach((trip, k) => {
      everyEdge(frozen, kinds.kinds[k]!, trip, k, event);
    });
}

/** The least loss from which on an event comes in a kind of trip for as long as a leak of twenty trips may lose from one of them to the next [kg lacking]. */
function surelyFrom(windows: readonly Window[]): number {
  let [from, to] = [Infinity, -Infinity];
  for (const { critical, until } of windows) {
    if (critical > to) from = critical;
    to = Math.max(to, until);
    if (to - from >= BEYOND) return from;
  }
  return Infinity;
}

/** No leak gets further in a kind of trip before the event has come, in one of its kind or in another that comes at least as often [kg lacking]. */
function reach({ times }: Kinds, seen: readonly KindSeen[], k: number, event: number): number {
  return Math.min(
    ...seen.map(({ pieces }, j) => {
      if (times[j]! < times[k]!) return Infinity;
      return surelyFrom(firstWindows(pieces, event, j)) + (j === k ? BEYOND : BEYOND_OTHERS);
    }),
  );
}

/**
 * The least loss of what hangs on the fluid alone, as far as a leak gets there (`upTo`). It goes on happening: where it does not, a story of a few grams is between two levels.
 */
function leastEdge(
  frozen: Frozen,
  kind: TripKind,
  trip: KindSeen,
  k: number,
  event: number,
  upTo: number,
): void {
  const longer = frozen.severity.lasting[event]! + 1;
  const walked = new Map<number, number[]>();
  for (let walks = 0; walks < MOST_WALKS; walks++) {
    // What is found may leave another moment as the first.
    const first = firstWindows(trip.pieces, event, k)[0];
    if (first === undefined || first.critical > upTo) return;
    const { piece, least, most, critical, until } = first;
    const { seen } = trip.pieces[piece]!;
    const high = least.lacking;
    const low = seen[seen.indexOf(least) - 1]?.lacking ?? high;
    const losses = walked.get(piece) ?? [];
    const stands = Math.abs(critical - losses.at(-1)!) < FOUND_WITHIN;
    if (high - low <= FOUND_WITHIN || (stands && high - low < SURE_WITHIN)) {
      const close = until < upTo && until < Infinity;
      if (close && closeIn(frozen, kind, trip, piece, event, "ceases", most, JUMPS_WITHIN)) continue;
      return;
    }
    const off = 0.05 * (high - low);
    let lacking = Math.min(high - off, Math.max(low + off, critical));
    // Every third time the middle, so that it closes from both sides; what stands is made sure of from the side that is far away.
    if (losses.length % 3 === 2) lacking = 0.5 * (low + high);
    if (stands) lacking = critical + (high - critical < critical - low ? -SURE : SURE);
    walked.set(piece, [...losses, lacking]);
    walkAgain(frozen, kind, trip, lastOpen(trip, event, lacking), lacking, longer, event);
  }
}

/** The last piece of a trip in which an event began to happen between two losses that were seen, one on either side of a loss [kg lacking]. */
const lastOpen = ({ pieces }: KindSeen, event: number, lacking: number): number =>
  pieces.findLastIndex(({ seen }) => {
    const at = seen.findIndex((shown) => shown.lacking > lacking);
    return at > 0 && seen[at]!.held[event]! > 0 && !(seen[at - 1]!.held[event]! > 0);
  });

/**
 * Both losses of every window in which this clutch is the first to burn, as far as the trip was looked at closely: it has another story on either side,
 * with other dates of all that follows.
 */
function everyEdge(frozen: Frozen, kind: TripKind, trip: KindSeen, k: number, event: number): void {
  const close = (edge: "begins" | "ceases", { piece, least, most }: Window) =>
    closeIn(frozen, kind, trip, piece, event, edge, edge === "begins" ? least : most, JUMPS_WITHIN);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    let walked = false;
    for (const window of firstWindows(trip.pieces, event, k, true)) {
      const { critical, until, least } = window;
      if (critical > trip.upTo || least.since[event]! > firstBurns(frozen, trip).get(least.lacking)!)
        continue;
      walked = close("begins", window) || walked;
      walked = (until < trip.upTo && close("ceases", window)) || walked;
    }
    if (!walked) return;
  }
}

const isSmooth = ({ measures }: Frozen, event: number): boolean =>
  SMOOTH.includes(measures.watchers[event]!.name);

/** The moments at which an event can come first in its trip, by kind of trip. */
export const momentsOf = (frozen: Frozen, seen: readonly KindSeen[], event: number): Candidate[] =>
  seen.flatMap((trip, k) => {
    const burns = firstBurns(frozen, trip);
    const follows = ({ lacking, since }: Seen) => burns.get(lacking)! < since[event]!;
    return firstWindows(trip.pieces, event, k, !isSmooth(frozen, event), follows).map(momentOf);
  });

/** A moment whose slopes are not known yet. */
export const momentOf = ({ kind, piece, critical, until, time, follows }: Window): Candidate => ({
  kind,
  piece,
  critical,
  until,
  time,
  follows,
  colder: 0,
  warmer: 0,
});

/** Moments of two airs are the same if they move by no more than this from one to the other [kg/K]. */
const MOST_SLOPE = 0.06;

/**
 * How the critical losses of moments change from one air to the next [kg/K]: told by the same moment there, else by what others of the
 * same kind of trip tell. Airs ascend; one list of moments for each air and event.
 */
export function slopesBetween(
  airs: readonly number[],
  events: readonly (readonly (readonly Candidate[])[])[],
): Candidate[][][] {
  const slopes = events.map((byAir) => byAir.map((moments) => moments.map(() => [Number.NaN, Number.NaN])));
  const kinds = new Map<string, number[]>();
  events.forEach((byAir, e) =>
    byAir.forEach((moments, a) =>
      moments.forEach((moment, m) => {
        for (const [side, other] of [a - 1, a + 1].entries()) {
          const degrees = (airs[other] ?? Number.NaN) - airs[a]!;
          const same = byAir[other]
            ?.filter(
              ({ kind, piece, follows }) =>
                kind === moment.kind && piece === moment.piece && follows === moment.follows,
            )
            .sort(
              (x, y) => Math.abs(x.critical - moment.critical) - Math.abs(y.critical - moment.critical),
            )[0];
          if (same === undefined) continue;
          const slope = (same.critical - moment.critical) / degrees;
          if (Math.abs(slope) > MOST_SLOPE) continue;
          slopes[e]![a]![m]![side] = slope;
          const key = `${moment.kind} ${Math.min(a, other)}`;
          kinds.set(key, [...(kinds.get(key) ?? []), slope]);
        }
      }),
    ),
  );
  const usual = (kind: number, low: number) => {
    const all = (kinds.get(`${kind} ${low}`) ?? [0]).sort((x, y) => x - y);
    return all[all.length >> 1]!;
  };
  return events.map((byAir, e) =>
    byAir.map((moments, a) =>
      moments.map((moment, m) => {
        const [colder, warmer] = slopes[e]![a]![m]!.map((slope, side) =>
          Number.isNaN(slope) ? usual(moment.kind, a - 1 + side) : slope,
        );
        return { ...moment, colder: colder!, warmer: warmer! };
      }),
    ),
  );
}
