// Looking back: every explanation is asked, the evidence weighs them, and what they foretell together is the answer.

import { logSum } from "../chance/terms.ts";
import type { Prepared } from "../duty/prepared.ts";
import { impossible } from "../errors.ts";
import { crewOf, type Crew } from "../hands/crew.ts";
import { ownHands, webHands, type Hand } from "../hands/hands.ts";
import { cores, threads } from "../hands/threads.ts";
import { explanationsOf, type Beliefs, type Explanation } from "./causes.ts";
import { conflictsIn } from "./conflict.ts";
import { columnsOf, type Table } from "./foretell.ts";
import { benchOf, type Bench } from "./question.ts";
import type { Posterior, Run } from "./posterior.ts";
import { shownBy } from "./shown.ts";
import type { Visit } from "./visit.ts";
import { workbench, type Answered, type Task, type Told } from "./workbench.ts";

export interface LookBackOptions {
  /** Guesses in all, 1000 or more; 4000 when missing. */
  readonly guesses?: number;
  /** Moves of each guess after every step; 3 when missing. */
  readonly moves?: number;
  /** A whole number from 0: the same gives the same answer, whatever the number of workers. */
  readonly seed: number;
  /** What is believed before any evidence, where it is not what is stated in causes.ts, common.ts and laws.ts. */
  readonly beliefs?: Beliefs;
  /** Threads; all cores when missing. */
  readonly workers?: number;
  /** In a browser: makes a worker that runs this folder's worker. Without it the work is done in the program's own time. */
  readonly hire?: () => Worker;
  /** Called with the share done, from 0 to 1, and an early answer once there is one. */
  readonly onProgress?: (share: number, early?: Posterior) => void;
  readonly signal?: AbortSignal;
}

/** Guesses of a first run, and the most of any. */
const FIRST = 150;
const MOST = 500;
/** An explanation that the first run finds less likely than this is not asked again. */
const HOPELESS = 1e-4;

/**
 * What the evidence of a visit makes of every explanation. The week must have been prepared for the visit's unit, week and air. First every
 * explanation makes a few guesses; then those that are not hopeless share the rest, in runs of at most 500 that know nothing of each other.
 * Errors: guesses under 1000; what `checkBelief` says of beliefs; the signal's reason once it asks for that.
 */
export async function lookBack(
  visit: Visit,
  prepared: Prepared,
  options: LookBackOptions,
): Promise<Posterior> {
  const {
    guesses = 4000,
    moves = 3,
    seed,
    beliefs = {},
    workers = cores(),
    hire,
    onProgress,
    signal,
  } = options;
  if (!(Number.isInteger(guesses) && guesses >= 1000))
    impossible("guesses", guesses, "a whole number, 1000 or more");
  if (!(Number.isInteger(workers) && workers >= 1))
    impossible("workers", workers, "a whole number, 1 or more");
  signal?.throwIfAborted();
  const shown = shownBy(visit.unit, visit.site, visit.evidence);
  const bench = benchOf(visit, prepared, shown);
  const explanations = explanationsOf(visit, beliefs);
  const told: Told = { visit, prepared, shown, beliefs };
  const makeHand: () => Hand = hire
    ? () => webHands(hire())
    : (threads(import.meta.url) ?? (() => ownHands(workbench())));
  const crew = crewOf(makeHand, workers, told);
  const calledOff = signalled(signal);
  try {
    const asked = { crew, signal: calledOff, told: onProgress };
    const first = await run(
      explanations.map((_, explanation): Task => ({
        explanation,
        guesses: FIRST,
        moves: 2,
        seed,
        foretells: true,
      })),
      asked,
      [0, FIRST * explanations.length, guesses + FIRST * explanations.length],
    );
    const columns = columnsOf(bench);
    const early = weigh(bench, columns, explanations, first);
    onProgress?.((FIRST * explanations.length) / (guesses + FIRST * explanations.length), early);
    const tasks = sharedOut(early, guesses, moves, seed);
    const rest = await run(tasks, asked, [
      FIRST * explanations.length,
      guesses,
      guesses + FIRST * explanations.length,
    ]);
    const again = new Set(tasks.map(({ explanation }) => explanation));
    const posterior = weigh(bench, columns, explanations, [
      ...first.filter(({ task }) => !again.has(task.explanation)),
      ...rest,
    ]);
    const ask = (more: readonly Task[]) =>
      Promise.race([calledOff.aborted, Promise.all(more.map((task) => crew.ask<Answered>(task)))]);
    return { ...posterior, conflicts: await conflictsIn(posterior, seed, ask) };
  } finally {
    calledOff.release();
    await crew.dismiss();
  }
}

interface Done {
  readonly task: Task;
  readonly answered: Answered;
}

interface Asked {
  readonly crew: Crew;
  readonly signal: ReturnType<typeof signalled>;
  readonly told: LookBackOptions["onProgress"];
}

/** The answers of tasks in their order; [done before, these, all] in guesses for whoever watches. */
async function run(
  tasks: readonly Task[],
  { crew, signal, told }: Asked,
  [before, , all]: readonly [number, number, number],
): Promise<Done[]> {
  let done = before;
  return Promise.race([
    signal.aborted,
    Promise.all(
      tasks.map(async (task): Promise<Done> => {
        const answered = await crew.ask<Answered>(task);
        done += task.guesses;
        told?.(Math.min(1, done / all));
        return { task, answered };
      }),
    ),
  ]);
}

/** A signal as something to wait for; it never resolves. */
function signalled(signal: AbortSignal | undefined) {
  let release = () => {};
  const aborted = new Promise<never>((_, reject) => {
    if (signal === undefined) return;
    const off = () => reject(signal.reason as Error);
    signal.addEventListener("abort", off, { once: true });
    release = () => signal.removeEventListener("abort", off);
  });
  aborted.catch(() => {});
  return { aborted, release };
}

/** Guesses by the root of what each explanation is worth after its first run: what that run took for unlikely gets its chance. */
function sharedOut({ weighed }: Posterior, guesses: number, moves: number, seed: number): Task[] {
  const roots = weighed.map(({ share }) => (share > HOPELESS ? Math.sqrt(share) : 0));
  const all = roots.reduce((sum, root) => sum + root, 0);
  if (all === 0) return [];
  return roots.flatMap((root, explanation) => {
    if (root === 0) return [];
    const own = Math.max(2 * FIRST, Math.round((guesses * root) / all));
    const runs = Math.max(2, Math.ceil(own / MOST));
    return Array.from({ length: runs }, (_, i): Task => ({
      explanation,
      guesses: Math.max(FIRST, Math.round(own / runs)),
      moves,
      seed: seed + 1000 * (i + 1) + explanation,
      foretells: true,
    }));
  });
}

function weigh(
  bench: Bench,
  columns: Table["columns"],
  explanations: readonly Explanation[],
  done: readonly Done[],
): Posterior {
  const all = explanations.map((explanation, i) => {
    const runs = done
      .filter(({ task }) => task.explanation === i)
      .map(({ task: { seed }, answered }): Run => ({ ...answered, seed }));
    const logEvidence = logSum(runs.map(({ answer }) => answer.logEvidence)) - Math.log(runs.length);
    return { explanation, runs, logEvidence };
  });
  const logs = all.map(({ explanation, logEvidence }) => Math.log(explanation.believed) + logEvidence);
  const sum = logSum(logs);
  return {
    bench,
    columns,
    conflicts: [],
    weighed: all.map((one, i) => ({
      ...one,
      share: sum === -Infinity ? one.explanation.believed : Math.exp(logs[i]! - sum),
    })),
  };
}
