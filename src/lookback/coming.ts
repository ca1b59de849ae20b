// Leaks that may come: how far the vehicle is driven from when a look could find one until it has done its harm.

import type { Prepared } from "../duty/prepared.ts";
import { coordinateAt, valueAt } from "../chance/belief.ts";
import { randomBits } from "../chance/random.ts";
import { impossible, positive } from "../errors.ts";
import { WEEK } from "../duty/course.ts";
import { airOf } from "./air.ts";
import { wayOf } from "./along.ts";
import { explanationsOf, type Beliefs, type Explanation } from "./causes.ts";
import { place } from "./common.ts";
import { clocksOf } from "./course.ts";
import type { LookKind } from "./evidence.ts";
import { findings } from "./finding.ts";
import { askedOf, benchOf } from "./question.ts";
import { shownBy } from "./shown.ts";
import { seenAt, type Asked } from "./terms.ts";
import type { Visit } from "./visit.ts";

/** One leak that may come, in metres driven since it opened; Infinity: not within the time that was asked. */
export interface ComingLeak {
  /** Which way it grows. */
  readonly law: string;
  /** From when on a look of each kind finds it in half of the cases. */
  readonly findable: Readonly<Record<LookKind, number>>;
  /** Until a clutch has burnt or the vehicle no longer drives. */
  readonly harmed: number;
}

export interface ComingOptions {
  readonly seed: number;
  /** How many leaks are drawn, in even parts by each way of growing, and for how long each is followed [s]. */
  readonly draws?: number;
  readonly lasts?: number;
  readonly beliefs?: Beliefs;
}

const DRAWS = 400;
/** Points of the tables of what the unit shows: flows are wanted to some hundredths. */
const POINTS = 9;
const YEAR = 365.25 * 86400;
/** The moment from which on a look finds a leak is sought in so many parts of its time, and within one by so many halvings. */
const LOOKS = 32;
const HALVINGS = 12;

/**
 * Leaks as they are believed possible before any evidence (`explanationsOf`: those that grow unseen), each on this vehicle as it is driven, from its opening on, by averages over the
 * prepared week: at the visit's place and behind its shield, nothing topped up, in air as it was in the middle of the visit's time. What a look can see is what drips and is not held back.
 * Two years are followed where nothing else is said. Errors ("impossible-input"): fewer than one draw, no time.
 */
export function comingLeaks(
  visit: Visit,
  prepared: Prepared,
  { seed, draws = DRAWS, lasts = 2 * YEAR, beliefs = {} }: ComingOptions,
): ComingLeak[] {
  if (!(Number.isInteger(draws) && draws >= 1)) impossible("draws", draws, "a whole number, 1 or more");
  positive("lasts", lasts, "s");
  const { driven: _driven, undated: _undated, ...rest } = visit;
  const { coldest, warmest } = airOf(visit);
  const surroundings = {
    ...visit.unit.surroundings,
    meanTemperature: 0.5 * (coldest + warmest),
    yearlySwing: 0,
  };
  const ahead: Visit = {
    ...rest,
    unit: { ...visit.unit, surroundings },
    at: lasts,
    evidence: [],
    added: [],
  };
  const bench = benchOf(ahead, prepared, shownBy(visit.unit, visit.site, [], POINTS));
  const leaks = explanationsOf(ahead, beliefs).filter(({ cause }) => cause === "slow leak");
  return leaks.flatMap((explanation, l) =>
    Array.from({ length: shareOf(leaks, l, draws) }, (_, i): ComingLeak => {
      const values = drawn(explanation, lasts, randomBits(seed, l, i));
      const asked = askedOf(bench, explanation, values);
      const way = drivenFrom(ahead, prepared, asked.use);
      const harmed = Math.min(asked.course().when("damage 1"), asked.course().over());
      const findable = (look: LookKind) => way(findableFrom(look, asked, Math.min(harmed, lasts)));
      return {
        law: explanation.law!,
        findable: {
          "walk round": findable("walk round"),
          "look underneath": findable("look underneath"),
          "shield taken off": findable("shield taken off"),
        },
        harmed: way(harmed),
      };
    }),
  );
}

/** Draws of an explanation, by what it is believed to be worth among them. */
function shareOf(leaks: readonly Explanation[], l: number, draws: number): number {
  const upTo = (k: number) => Math.round((draws * sum(leaks.slice(0, k))) / sum(leaks));
  return upTo(l + 1) - upTo(l);
}

const sum = (leaks: readonly Explanation[]): number => leaks.reduce((all, { believed }) => all + believed, 0);

/** A guess of an explanation's beliefs whose leak opens at second 0. */
function drawn({ unknowns }: Explanation, lasts: number, random: () => number): Float64Array {
  const values = Float64Array.from(unknowns, ({ belief }) => valueAt(belief, coordinateAt(belief, random())));
  values[place.age] = lasts;
  return values;
}

/** From when on a look of a kind finds the leak in half of the cases in which it can find one at all, up to a moment [s]; Infinity: not by then. */
function findableFrom(look: LookKind, asked: Asked, until: number): number {
  const seen = (at: number) =>
    seenAt({ name: "", kind: "looked", at, look, seen: false }, asked) >= findings[look].half;
  // What is seen ends when the unit has run dry, so it is looked for from the beginning on.
  const step = until / LOOKS;
  let k = 1;
  while (k <= LOOKS && !seen(k * step)) k++;
  if (k > LOOKS) return Infinity;
  let [low, high] = [(k - 1) * step, k * step];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (low + high);
    if (seen(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Metres driven by a moment [s] since second 0, at some use of the week: trip by trip, on the weekdays of the plan that a guess of that use is followed by. */
function drivenFrom(visit: Visit, { kinds, occurrences }: Prepared, use: number): (clock: number) => number {
  const { weekday, visit: end, toPlan } = clocksOf(visit, use);
  const weeks = Math.ceil(end / WEEK);
  const along = wayOf({ week: visit.week, weekday, at: weeks * WEEK });
  const all = weeks * occurrences.reduce((sum, { kind }) => sum + kinds[kind]!.pieceDistances.at(-1)!, 0);
  const begun = along(Math.max(0, toPlan(0)));
  return (clock) => (clock === Infinity ? Infinity : all * (along(Math.max(0, toPlan(clock))) - begun));
}

/**
 * How far the vehicle is driven with each leak that a look of a kind can find until it has done harm [m]: 0 where it could not be found before, Infinity where it does none in the time that was
 * asked.
 */
export const delaysUntilHarm = (leaks: readonly ComingLeak[], look: LookKind): number[] =>
  leaks.map(({ harmed, findable }) =>
    harmed === Infinity ? Infinity : Math.max(0, harmed - findable[look]),
  );
