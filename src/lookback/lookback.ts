// Looking back: every explanation is asked, the evidence weighs them, and what they foretell together is the answer.

import type { Prepared } from "../duty/prepared.ts";
import type { ClutchFate } from "../history/simulate.ts";
import { checkPrepared } from "../duty/prepared-for.ts";
import { impossible } from "../errors.ts";
import { crewOf } from "../hands/crew.ts";
import { ownHands, webHands, type Hand } from "../hands/hands.ts";
import { signalled } from "../hands/signalled.ts";
import { cores, threads } from "../hands/threads.ts";
import { explanationsOf, type Beliefs } from "./causes.ts";
import { conflictsIn } from "./conflict.ts";
import { someGuesses } from "./answer/pool.ts";
import { benchOf } from "./question.ts";
import type { Posterior } from "./posterior.ts";
import { weigh, type Done } from "./weigh.ts";
import { shownBy } from "./shown.ts";
import type { Visit } from "./visit.ts";
import { workbench, type Answered, type Task, type Told, type Walk } from "./workbench.ts";

export interface LookBackOptions {
  /** Guesses, 1000 or more; 4000 when missing. A hundred of each explanation come first and count among them, but that three of four, or more, are made once those have told what is likely. */
  readonly guesses?: number;
  /** Moves of each guess after every step, twice as many after the last; 2 when missing. */
  readonly moves?: number;
  /** A whole number from 0: the same gives the same answer, whatever the number of workers. */
  readonly seed: number;
  /** So many guesses, in even steps through all of them, are walked trip by trip, to see what became of the clutches; none when missing: each takes seconds. */
  readonly walks?: number;
  /** What is believed before any evidence, where it is not what is stated in causes.ts, common.ts and laws.ts. */
  readonly beliefs?: Beliefs;
  /** Threads; all cores when missing. */
  readonly workers?: number;
  /** In a browser: makes a worker that runs this folder's worker. Without it the work is done in the program's own time. */
  readonly hire?: () => Worker;
  /**
   * Hands that stay for the next visit (`lookBackHands`), in place of those two: what they have compiled stays with them, and so does the prepared week while it is
   * the same object (one that was edited in place they would not hear of). They are the caller's to send home, but that they go when a look back is called off or fails.
   */
  readonly hands?: readonly Hand[];
  /** Called with the share done, from 0 to 1, and an early answer once there is one. */
  readonly onProgress?: (share: number, early?: Posterior) => void;
  readonly signal?: AbortSignal;
}

/** Hands that a look back is asking: who listens later would take its answers. */
const busy = new WeakSet<Hand>();
/** The week that hands were told last: ten megabytes, which they are not told twice. */
const knows = new WeakMap<Hand, Prepared>();

/** Guesses of a first run, and the most of any. */
const FIRST = 100;
const MOST = 500;
/** A walk counts in the progress as so many guesses. */
const WALK = 300;
/** An explanation that the first run finds less likely than this is not asked again. */
const HOPELESS = 1e-6;
/** What a guess costs before its first step, and at the last one, against a move: draws that are followed for it, and what it foretells. */
const DRAWN = 12;
/** Share of the guesses that are made after the first runs, at least. */
const AFTER = 0.75;
/** An explanation of a smaller share after its first run is told of by that run alone, unless its part of the guesses comes to as many again. */
const SMALL = 1e-3;
/**
 * A first run counts beside the later ones where those are so many times as large. How many they are hangs on its own evidence: one that was low by chance has few
 * beside it and would weigh the more, so that the mean came out low by a tenth or more; four times as many leave some hundredths.
 */
const OUTWEIGHED = 4;
/** Evidence (its logarithm) under which a first run gives up: what some other explanation makes of the evidence is hundreds better, unless all give up. */
const LEAST = -1000;

/**
 * Hands that stay for one look back after another (`hands` of its options): threads in Node, workers in a browser; otherwise the program's own time. They answer one
 * question at a time, and keep the program alive until each was dismissed (`await Promise.all(hands.map((hand) => hand.dismiss()))`, best in a `finally`); those of a look back
 * that was called off or failed on its way are gone. Errors: workers under 1.
 */
export function lookBackHands({
  workers = cores(),
  hire,
}: Pick<LookBackOptions, "workers" | "hire"> = {}): readonly Hand[] {
  if (!(Number.isInteger(workers) && workers >= 1))
    impossible("workers", workers, "a whole number, 1 or more");
  const makeHand: () => Hand = hire
    ? () => webHands(hire())
    : (threads(import.meta.url) ?? (() => ownHands(workbench())));
  return Array.from({ length: workers }, makeHand);
}

/**
 * What the evidence of a visit makes of every explanation. The week must have been prepared for the visit's unit, week and air. First every
 * explanation makes a few guesses; then those that are not hopeless share the rest, in runs of at most 500 that know nothing of each other.
 * Errors: a week that was prepared for another build, fluid, driving or driver's foot; guesses under 1000; no hands, or some that another look back is asking; what `checkBelief` says of beliefs; the signal's reason once it asks for that.
 */
export async function lookBack(
  visit: Visit,
  prepared: Prepared,
  options: LookBackOptions,
): Promise<Posterior> {
  const {
    guesses = 4000,
    moves = 2,
    seed,
    walks = 0,
    beliefs = {},
    hands: kept,
    onProgress,
    signal,
  } = options;
  if (!(Number.isInteger(guesses) && guesses >= 1000))
    impossible("guesses", guesses, "a whole number, 1000 or more");
  if (!(Number.isInteger(walks) && walks >= 0)) impossible("walks", walks, "a whole number, 0 or more");
  checkPrepared(prepared, visit.unit, visit.week);
  signal?.throwIfAborted();
  const explanations = explanationsOf(visit, beliefs);
  if (kept !== undefined && (kept.length === 0 || kept.some((hand) => busy.has(hand))))
    impossible("hands", kept.length, "one or more, not busy with another look back");
  // Threads start up while the bay's readings are worked out.
  const hands = kept ?? lookBackHands(options);
  for (const hand of hands) busy.add(hand);
  const sendHome = () => Promise.all(hands.map((hand) => hand.dismiss()));
  const calledOff = signalled(signal);
  const left = Math.max(guesses - FIRST * explanations.length, AFTER * guesses);
  const all = FIRST * explanations.length + left + walks * WALK;
  let done = 0;
  try {
    const shown = shownBy(visit.unit, visit.site, visit.evidence);
    const bench = benchOf(visit, prepared, shown);
    const crew = crewOf(hands, (hand): Told => {
      const week = knows.get(hand) === prepared ? "as before" : prepared;
      knows.set(hand, prepared);
      return { visit, prepared: week, shown, beliefs };
    });
    const ask = <Answer>(tasks: readonly (Task | Walk)[], worth: number): Promise<Answer[]> =>
      Promise.race([
        calledOff.aborted,
        Promise.all(
          tasks.map(async (task) => {
            const answer = await crew.ask<Answer>(task);
            done += worth;
            onProgress?.(Math.min(1, done / all));
            return answer;
          }),
        ),
      ]);
    const firstTasks = explanations.map((_, explanation) => firstTask(explanation, seed));
    let first = doneOf(firstTasks, await ask<Answered>(firstTasks, FIRST));
    if (first.every(({ answered }) => answered.answer.logEvidence <= LEAST)) {
      const whole = firstTasks.map(({ least: _, ...task }): Task => task);
      first = doneOf(whole, await ask<Answered>(whole, 0));
    }
    const early = weigh(bench, explanations, first);
    onProgress?.(done / all, early);
    const tasks = sharedOut(early, first.map(gaveUp), left, moves, seed);
    const stands = first.filter((one) => !isForgotten(one, tasks));
    const answers = await ask<Answered>(tasks, left / Math.max(1, tasks.length));
    const posterior = weigh(bench, explanations, [...stands, ...doneOf(tasks, answers)]);
    const conflicts = await conflictsIn(posterior, seed, (more) => ask<Answered>(more, 0));
    const walked = await ask<readonly ClutchFate[]>(walksOf(posterior, walks), WALK);
    // Who is slow to begin would else answer the next look back with that.
    if (kept === undefined) await sendHome();
    else await Promise.race([calledOff.aborted, crew.begun]);
    return { ...posterior, conflicts, walked };
  } catch (why) {
    // Nobody is left in the middle of a task.
    await sendHome();
    throw why;
  } finally {
    for (const hand of hands) busy.delete(hand);
    calledOff.release();
  }
}

const firstTask = (explanation: number, seed: number): Task => ({
  explanation,
  guesses: FIRST,
  moves: 1,
  seed,
  least: LEAST,
  foretells: true,
});

/** Whether a run stopped where its evidence was too poor to go on. */
const gaveUp = ({ task: { least }, answered: { answer } }: Done): boolean =>
  least !== undefined && answer.logEvidence <= least;

/** Whether a first run stands for nothing beside what is asked after it. */
function isForgotten(one: Done, tasks: readonly Task[]): boolean {
  const later = tasks.filter(({ explanation }) => explanation === one.task.explanation);
  const guesses = later.reduce((sum, task) => sum + task.guesses, 0);
  return later.length > 0 && (gaveUp(one) || guesses < OUTWEIGHED * FIRST);
}

const doneOf = (tasks: readonly Task[], answers: readonly Answered[]): Done[] =>
  tasks.map((task, i) => ({ task, answered: answers[i]! }));

const walksOf = (posterior: Posterior, walks: number): Walk[] =>
  walks === 0
    ? []
    : someGuesses(posterior, walks).map(({ one, values }) => ({
        explanation: posterior.weighed.indexOf(one),
        values,
      }));

/** Guesses by the root of what each explanation is worth after its first run: what that run took for unlikely gets its chance. */
function sharedOut(
  { weighed }: Posterior,
  givenUp: readonly boolean[],
  guesses: number,
  moves: number,
  seed: number,
): Task[] {
  const roots = weighed.map(({ share }) => (share > HOPELESS ? Math.sqrt(share) : 0));
  const all = roots.reduce((sum, root) => sum + root, 0);
  const tasks = roots.flatMap((root, explanation) => {
    if (root === 0) return [];
    const own = Math.round((guesses * root) / all);
    if (own < FIRST && weighed[explanation]!.share < SMALL && !givenUp[explanation]) return [];
    // Two runs at least, to be held against each other.
    const runs = Math.max(2, Math.ceil(own / MOST));
    return Array.from({ length: runs }, (_, i): Task => ({
      explanation,
      guesses: Math.max(FIRST, Math.round(own / runs)),
      moves,
      seed: seed + 1000 * (i + 1) + explanation,
      foretells: true,
    }));
  });
  // The dearest first, by the steps that the first run took, so that nobody is left alone with one of them in the end.
  const cost = ({ explanation, guesses: own }: Task) =>
    own * (DRAWN + moves * weighed[explanation]!.runs[0]!.answer.steps.length);
  return tasks.sort((a, b) => cost(b) - cost(a));
}
