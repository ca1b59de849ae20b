// What the controller has learned, over a week: the trim, and by how much earlier each clutch of the gears is filled. It forgets within a trip
// or two, so at a frozen loss it goes round: each kind of trip leaves a share of what it began with, and adds what its own shifts teach.

import type { Unit } from "../physics/build.ts";
import type { State } from "../physics/state.ts";
import type { Occurrence } from "./kinds.ts";

/** Weeks after which what is learned goes round [-]. */
const ROUNDS = 30;

/** The trim and each clutch's fill: how much of each may be learned, least and most [Pa, then s]. */
export interface LearnedRange {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** The range of everything that a unit's controller learns: the trim first, then clutch by clutch. */
export function learnedRange({ build: { shiftControl, clutches } }: Unit): LearnedRange {
  const { trimLimit, fillLimit } = shiftControl;
  return {
    low: Float64Array.from([-trimLimit, ...clutches.map(() => 0)]),
    high: Float64Array.from([trimLimit, ...clutches.map(() => fillLimit)]),
  };
}

/** Everything that has been learned, in the order of its range. */
export const learnedBy = ({ trim, learnedFill }: State): Float64Array =>
  Float64Array.from([trim, ...learnedFill]);

/** Lets the unit have learned so much, as far as it may. */
export function teach(state: State, { low, high }: LearnedRange, learned: (thing: number) => number): void {
  const within = (thing: number) => Math.max(low[thing]!, Math.min(high[thing]!, learned(thing)));
  state.trim = within(0);
  for (let c = 0; c < state.learnedFill.length; c++) state.learnedFill[c] = within(c + 1);
}

/**
 * What has been learned when each kind of trip begins once the week has been driven again and again at one loss, mean over its
 * occurrences: of every thing learned a trip that begins with x ends with `kept`·x + `added`, within its range. By kind, and within it
 * by thing.
 */
export function learnedGoingRound(
  occurrences: readonly Occurrence[],
  kept: Float64Array,
  added: Float64Array,
  { low, high }: LearnedRange,
  out: Float64Array,
): void {
  const things = low.length;
  const times = new Float64Array(out.length / things);
  for (const { kind } of occurrences) times[kind]! += 1;
  out.fill(0);
  for (let thing = 0; thing < things; thing++) {
    let learned = 0;
    for (let round = 0; round < ROUNDS; round++)
      for (const { kind } of occurrences) {
        const at = kind * things + thing;
        if (round === ROUNDS - 1) out[at]! += learned / times[kind]!;
        learned = Math.max(low[thing]!, Math.min(high[thing]!, kept[at]! * learned + added[at]!));
      }
  }
}
