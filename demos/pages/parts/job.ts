// Work that takes seconds, done beside the page: it tells how far it is, can be cancelled, and leaves the last good
// result in place while a new one is computed.

import { batch, signal, type ReadonlySignal } from "@preact/signals-core";
import { proxy, wrap, type Remote } from "comlink";

/** How far a piece of work is: share done, and where it stands in numbers. */
export interface Step {
  readonly share: number;
  readonly day: number;
  readonly lost: number;
}

/** What a worker offers; comlink carries the calls. */
export interface Works<Ask, Result> {
  run(ask: Ask, step: (step: Step) => void): Result | Promise<Result>;
}

export type JobState = "nothing yet" | "computing" | "done" | "cancelled" | "failed";

export interface Job<Ask, Result> {
  readonly state: ReadonlySignal<JobState>;
  readonly step: ReadonlySignal<Step>;
  /** The last good result with what it answers. */
  readonly last: ReadonlySignal<{ readonly ask: Ask; readonly result: Result } | null>;
  /** What went wrong when it failed. */
  readonly problem: ReadonlySignal<string>;
  start(ask: Ask): void;
  cancel(): void;
}

/** A job on workers that `hire` makes; a new start or a cancel ends the worker that is still busy. */
export function job<Ask, Result>(hire: () => Worker): Job<Ask, Result> {
  const state = signal<JobState>("nothing yet");
  const step = signal<Step>({ share: 0, day: 0, lost: 0 });
  const last = signal<{ ask: Ask; result: Result } | null>(null);
  const problem = signal("");
  let worker: Worker | null = null;
  let works: Remote<Works<Ask, Result>> | null = null;
  let turn = 0;

  const dismiss = () => {
    worker?.terminate();
    worker = null;
    works = null;
  };
  const start = (ask: Ask) => {
    if (state.value === "computing") dismiss();
    const mine = ++turn;
    if (worker === null) {
      worker = hire();
      worker.addEventListener("error", (event) => fail(mine, event.message || "the worker could not start"));
      works = wrap<Works<Ask, Result>>(worker);
    }
    step.value = { share: 0, day: 0, lost: 0 };
    state.value = "computing";
    const tell = proxy((at: Step) => {
      if (mine === turn) step.value = at;
    });
    Promise.resolve(works!.run(ask as never, tell as never)).then(
      (result) => {
        if (mine !== turn) return;
        // Both at once: who starts anew as soon as it hears of a result must not have that called done.
        batch(() => {
          last.value = { ask, result: result as Result };
          state.value = "done";
        });
      },
      (error: unknown) => fail(mine, error instanceof Error ? error.message : String(error)),
    );
  };
  const fail = (mine: number, why: string) => {
    if (mine !== turn) return;
    dismiss();
    problem.value = why;
    state.value = "failed";
  };
  const cancel = () => {
    if (state.value !== "computing") return;
    turn++;
    dismiss();
    state.value = "cancelled";
  };
  return { state, step, last, problem, start, cancel };
}
