// The moments of a week at which an event can come: pieces of trips, each with the losses at which it happens there.

import { closeIn, crossing } from "./critical.ts";
import type { Frozen } from "./frozen.ts";
import type { Kinds } from "./kinds.ts";
import type { KindSeen, PieceSeen, Seen } from "./levels.ts";
import type { Candidate } from "./prepared.ts";

/** Losses at which an event happens in a piece [kg lacking], and when within the trip at the least of them [s]. */
interface Window {
  readonly kind: number;
  readonly piece: number;
  readonly critical: number;
  readonly until: number;
  readonly time: number;
  /** The first and last loss at which it was seen to happen. */
  readonly least: Seen;
  readonly most: Seen;
}

/** How closely the least loss of a kind of trip is found [kg]: of what hangs on the fluid alone, and of what comes of slips. */
const FOUND_WITHIN = 0.001;
const JUMPS_WITHIN = 0.008;
const MOST_TURNS = 4;

/**
 * Every window of an event in a piece; one that `jumps` with what slipped before it has no nearness, and changes halfway between two losses. More fluid lost may undo it (a longer slip has taught the controller, an earlier one has slowed the vehicle).
 */
function windowsOf(
  { seen }: PieceSeen,
  event: number,
  kind: number,
  piece: number,
  jumps: boolean,
): Window[] {
  const found: Window[] = [];
  const edge = (low: Seen, high: Seen) =>
    jumps ? 0.5 * (low.lacking + high.lacking) : crossing(low, high, event);
  for (let i = 0; i < seen.length; i++) {
    if (!(seen[i]!.held[event]! > 0) || (i > 0 && seen[i - 1]!.held[event]! > 0)) continue;
    let last = i;
    while (last + 1 < seen.length && seen[last + 1]!.held[event]! > 0) last++;
    found.push({
      kind,
      piece,
      critical: i === 0 ? seen[i]!.lacking : edge(seen[i - 1]!, seen[i]!),
      until: last + 1 < seen.length ? edge(seen[last]!, seen[last + 1]!) : Infinity,
      time: seen[i]!.since[event]!,
      least: seen[i]!,
      most: seen[last]!,
    });
  }
  return found;
}

/** Windows of a kind of trip that no earlier piece covers, by rising loss. */
export function firstWindows(
  pieces: readonly PieceSeen[],
  event: number,
  kind: number,
  jumps = false,
): Window[] {
  const found: Window[] = [];
  pieces.forEach((piece, index) => {
    for (const window of windowsOf(piece, event, kind, index, jumps))
      if (!found.some(({ critical, until }) => critical <= window.critical && until >= window.until))
        found.push(window);
  });
  return found.sort((a, b) => a.critical - b.critical);
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

/** The moments at which an event can come first in its trip, by kind of trip. */
export function momentsOf(
  frozen: Frozen,
  kinds: Kinds,
  seen: readonly KindSeen[],
  event: number,
): Candidate[] {
  const smooth = SMOOTH.includes(frozen.measures.watchers[event]!.name);
  return seen.flatMap((trip, k) => {
    // What is found may leave another moment as the first.
    const within = smooth ? FOUND_WITHIN : JUMPS_WITHIN;
    for (let turn = 0; turn < MOST_TURNS; turn++) {
      const first = firstWindows(trip.pieces, event, k, !smooth)[0];
      if (first === undefined) break;
      const { piece, least, most, until } = first;
      const close = (edge: "begins" | "ceases", seenThere: Seen, to: number, jumps: boolean) =>
        closeIn(frozen, kinds.kinds[k]!, trip, piece, event, edge, seenThere, to, jumps);
      const began = close("begins", least, within, !smooth);
      // What hangs on the fluid alone goes on happening: where it does not, a story of a few grams is between two levels.
      const ceased = smooth && until < Infinity && close("ceases", most, JUMPS_WITHIN, true);
      if (!began && !ceased) break;
    }
    return firstWindows(trip.pieces, event, k, !smooth).map(momentOf);
  });
}

/** A moment whose slopes are not known yet. */
export const momentOf = ({ kind, piece, critical, until, time }: Window): Candidate => ({
  kind,
  piece,
  critical,
  until,
  time,
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
            ?.filter(({ kind, piece }) => kind === moment.kind && piece === moment.piece)
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
