// From an explanation of a visit to a problem for the sampler: guesses come in, the evidence answers.

import { levelStep, type Prepared } from "../duty/prepared.ts";
import { ambientOn } from "../history/simulate.ts";
import { drivenBack, runningOf, wayBack, wayOf, wayUntil, type Ways } from "./along.ts";
import { commonCount, place } from "./common.ts";
import { mostOf } from "./at-most.ts";
import { courseOf, type Course, type Guess } from "./course.ts";
import type { Explanation } from "./causes.ts";
import type { Added, Evidence } from "./evidence.ts";
import type { Problem } from "./sampler/problem.ts";
import { volumesBy, type SharedErrors } from "./shared.ts";
import type { Shown } from "./shown.ts";
import { isDear, termOf, type Asked, type Learned } from "./terms.ts";
import type { Visit } from "./visit.ts";

/** A visit with all that is worked out once for it. */
export interface Bench extends Ways {
  readonly visit: Visit;
  readonly prepared: Prepared;
  readonly shown: Shown;
  readonly learned: Learned;
  readonly runningBy: (clock: number) => number;
}

export const benchOf = (visit: Visit, prepared: Prepared, shown: Shown): Bench => ({
  visit,
  prepared,
  shown,
  learned: learnedBy(visit, prepared, shown),
  runningBy: runningOf(visit),
  way: wayOf(visit),
  wayBack: wayBack(visit),
});

/** What the controller has learned by the visit, over what is missing then: the prepared air that is nearest to the visit's. */
function learnedBy({ unit, dayOfYear, at }: Visit, { climates }: Prepared, { filling }: Shown): Learned {
  const air = ambientOn(unit, dayOfYear + at / 86400);
  const { trim, fills, levels } = climates.reduce((best, other) =>
    Math.abs(other.air - air) < Math.abs(best.air - air) ? other : best,
  );
  const step = levelStep / filling;
  const { clutches } = unit.build;
  return {
    trim: { step, values: trim.subarray(0, levels) },
    fills: new Map(
      clutches.map(({ name }, c) => [
        name,
        { step, values: Float64Array.from({ length: levels }, (_, l) => fills[l * clutches.length + c]!) },
      ]),
    ),
  };
}

/** What a guess takes the errors to be that several items share. */
function sharedIn({ unknowns, own }: Explanation, values: Float64Array): SharedErrors {
  if (own === commonCount) return () => undefined;
  const errors: number[] = [];
  for (let i = commonCount; i < own; i++) errors.push(values[i]!); // the guess's array is lent
  return (name) => {
    for (let i = 0; i < errors.length; i++) if (unknowns[commonCount + i]!.name === name) return errors[i];
    return undefined;
  };
}

/** What was really poured in, by what a guess takes the errors of its measures to be. */
const reallyAdded = (added: readonly Added[], shared: SharedErrors): readonly Added[] =>
  added.map(({ at, volume, error, temperature, by }) => ({
    at,
    volume: Math.max(0, volume - error * (shared(volumesBy(by)) ?? 0)),
    error,
    temperature,
    by,
  }));

/** A guess in the words of a course. */
export function guessOf(visit: Visit, explanation: Explanation, values: Float64Array): Guess {
  const { at, added, undated } = visit;
  const opening = explanation.opening?.(values) ?? null;
  const more = explanation.cause === "never filled" ? values[explanation.own]! : 0;
  const shared = sharedIn(explanation, values);
  // A line lets go under pressure: its age is that of the driving since.
  const sudden = explanation.cause === "line let go";
  const use = undated === true ? 1 : values[place.use]!;
  const age = values[place.age]!;
  return {
    opening,
    opensAt: opening === null ? Infinity : sudden ? at - (at - drivenBack(visit)(age)) / use : at - age,
    soakedUp: explanation.unseen ? 1 : values[place.soakedUp]!,
    short: values[place.short]! + more,
    harder: values[place.harder]!,
    use,
    stretch: undated === true ? 1 / values[place.use]! : 1,
    shared,
    added: added.length === 0 ? added : reallyAdded(added, shared),
    sudden,
  };
}

/** What the evidence may ask of a guess of an explanation. */
export function askedOf(bench: Bench, explanation: Explanation, values: Float64Array): Asked {
  const { visit, prepared, shown, learned, runningBy, way } = bench;
  const guess = guessOf(visit, explanation, values);
  // Named one by one: this is done for every guess, and a copy of all that is in it takes ten times as long.
  const { opening, opensAt, short, soakedUp, added, shared, use, stretch, sudden } = guess;
  let course: Course | undefined;
  const followed = () => (course ??= courseOf(visit, prepared, guess));
  return {
    opening,
    opensAt,
    short,
    soakedUp,
    added,
    shared,
    use,
    stretch,
    sudden,
    visit,
    shown,
    learned,
    course: followed,
    drop: values[place.drop]!,
    runningBy,
    way: (clock) => wayUntil(way, followed().over())(clock),
    unseen: explanation.unseen,
    weakness: explanation.weakness === undefined ? 1 : values[explanation.weakness]!,
    ails: explanation.ails,
  };
}

function same(one: Float64Array, other: Float64Array): boolean {
  for (let i = 0; i < one.length; i++) if (one[i] !== other[i]) return false;
  return true;
}

/** Whether somebody tells that it no longer drove: else it came into the bay by itself, and a guess that was through before that explains nothing. */
const towedIn = ({ evidence }: Visit): boolean =>
  evidence.some((item) => item.kind === "first symptom" && item.symptom === "no drive");

/** The problem of an explanation: what hangs on the loss alone is cheap and comes first, what asks for events is dear. */
export function problemOf(
  bench: Bench,
  explanation: Explanation,
  evidence: readonly Evidence[] = bench.visit.evidence,
): Problem {
  const cheap = evidence.filter((item) => !isDear(item));
  const rest = evidence.filter(isDear);
  const drives = !towedIn(bench.visit);
  const sum = (items: readonly Evidence[], asked: Asked) =>
    items.reduce((total, item) => (total === -Infinity ? total : total + termOf(item, asked)), 0);
  // Both halves ask the same guess: its course is worked out once.
  let last: Asked | undefined;
  const lastValues = new Float64Array(explanation.unknowns.length).fill(Number.NaN);
  const asked = (values: Float64Array): Asked => {
    if (last !== undefined && same(values, lastValues)) return last;
    last = askedOf(bench, explanation, values);
    for (let i = 0; i < values.length; i++) lastValues[i] = values[i]!;
    return last;
  };
  return {
    unknowns: explanation.unknowns,
    atMost: (values) => {
      const guess = asked(values);
      let most = 0;
      for (const item of cheap) most += mostOf(item, guess);
      return most;
    },
    logLikelihood: (values) => {
      const guess = asked(values);
      return drives && guess.course().ranOut ? -Infinity : sum(cheap, guess);
    },
    further: (values) => {
      const guess = asked(values);
      return drives && guess.course().over() < bench.visit.at ? -Infinity : sum(rest, guess);
    },
  };
}
