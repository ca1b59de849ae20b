// An ensemble: the same case run again and again over all that its uncertain numbers may be.

import { impossible } from "../errors.ts";
import { ailsFirst, curveBands, eventBands, type CurveBands, type EventBand } from "./bands.ts";
import { handOut, ownHands, webHands, type Hand } from "../hands/hands.ts";
import { draw, variable, type Members } from "./members.ts";
import type { Outcome } from "./outcome.ts";
import { cores, threads } from "../hands/threads.ts";
import type { Varying } from "./uncertain.ts";
import { outcomeIn, workbench, type Answer, type Task } from "./workbench.ts";

/** How the work is shared. */
export interface Working {
  /** Threads; all cores when missing. The numbers do not depend on it. */
  readonly workers?: number;
  /** In a browser: makes a worker that runs this folder's worker. Without it the work is done in the program's own time. */
  readonly hire?: () => Worker;
  /** Called after each history with how many are done. */
  readonly onProgress?: (done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

export interface EnsembleOptions extends Varying, Working {
  /** How many draws are run, from 1. */
  readonly members: number;
  /** A whole number from 0. */
  readonly seed: number;
  /** Points in time of each curve; 200 when missing. */
  readonly points?: number;
}

export interface Ensemble extends Members {
  /** One a member, in their order. */
  readonly outcomes: readonly Outcome[];
  /** The case as it was written, for which the bands are the doubt. */
  readonly asWritten: Outcome;
  readonly events: readonly EventBand[];
  readonly curves: { readonly running: CurveBands; readonly clock: CurveBands };
  /** Members (by their place) that show an event before the leak opens: as drawn, they never were sound. */
  readonly ailing: readonly number[];
}

/**
 * Runs a case (plain data, as `readCase` takes it) as written and at `members` draws of its uncertain numbers, and tells the
 * bands (5, 25, 50, 75, 95 %) of every event and curve. The same data, members and seed give the same numbers, bit for bit,
 * whatever the number of workers. Rejects with "bad-case" or "impossible-input" for what the case, the ranges or the numbers
 * asked for have wrong with them, and with the signal's reason once it asks for that; no worker is left then.
 */
export async function ensemble(caseData: unknown, options: EnsembleOptions): Promise<Ensemble> {
  const { members: n, seed, points = 200 } = options;
  if (!Number.isInteger(n) || n < 1) impossible("members", n, "a whole number, 1 or more");
  if (!Number.isInteger(points) || points < 2) impossible("points", points, "a whole number, 2 or more");
  const drawn = await drawnWhileAwake(draw(variable(caseData, options), n, seed), options.signal);
  const [asWritten, ...outcomes] = await runDraws(
    caseData,
    options,
    [null, ...drawn.members.map(({ values }) => values)],
    options,
  );
  const all = outcomes as Outcome[]; // none is null: the members are those that can be built
  return {
    ...drawn,
    outcomes: all,
    asWritten: asWritten!,
    events: eventBands(all),
    curves: { running: curveBands(all, "running", points), clock: curveBands(all, "clock", points) },
    ailing: [...all.keys()].filter((m) => ailsFirst(all[m]!)),
  };
}

/** Draws a few at a turn, so that the program stays awake meanwhile. */
async function drawnWhileAwake(
  drawing: ReturnType<typeof draw>,
  signal: AbortSignal | undefined,
): Promise<Members> {
  for (let i = 0; ; i++) {
    const { done, value } = drawing.next();
    if (done === true) return value;
    if (i % 8 === 0) await new Promise((resolve) => setTimeout(resolve, 0));
    signal?.throwIfAborted();
  }
}

/** The outcomes of draws in their order; null for a draw that contradicts itself. `null` among the draws is the case as written. */
export async function runDraws(
  caseData: unknown,
  { ranges, only, filledByVolume = false }: Varying,
  draws: readonly (Float64Array | null)[],
  { workers = cores(), hire, onProgress, signal }: Working,
): Promise<(Outcome | null)[]> {
  if (!Number.isInteger(workers) || workers < 1) impossible("workers", workers, "a whole number, 1 or more");
  const varying: Varying = {
    ...(ranges === undefined ? {} : { ranges }),
    ...(only === undefined ? {} : { only }),
    filledByVolume,
  };
  const makeHand: () => Hand = hire
    ? () => webHands(hire())
    : (threads(import.meta.url) ?? (() => ownHands(workbench())));
  const outcomes: (Outcome | null)[] = new Array<Outcome | null>(draws.length).fill(null);
  let done = 0;
  await handOut<Answer>(
    draws.map((values): Task => ({ values })),
    makeHand,
    {
      start: { caseData, varying },
      workers,
      signal,
      done(answer, task) {
        outcomes[task] = outcomeIn(answer);
        onProgress?.(++done, draws.length);
      },
    },
  );
  return outcomes;
}
