// A thread of its own for one piece of work, so that the program stays awake: it can draw a bar and be called off.

import { Worker } from "node:worker_threads";
import { codedError, type Fault } from "../../src/errors.ts";

/** What a thread says that cannot do what it was given. */
export interface Refused {
  readonly kind: "faults";
  readonly faults: readonly Fault[];
}

/** Gives a thread its work and hears it until it is `done`; rejects as soon as the signal asks for it. */
export function inThread<Word extends { readonly kind: string }, Result>(
  file: URL,
  given: unknown,
  signal: AbortSignal,
  hear: (word: Exclude<Word, Refused>, done: (result: Result) => void) => void,
): Promise<Result> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(file, { workerData: given });
    const callOff = () => {
      reject(signal.reason as Error);
      void worker.terminate();
    };
    if (signal.aborted) callOff();
    signal.addEventListener("abort", callOff, { once: true });
    worker.on("message", (word: Word | Refused) => {
      if (word.kind === "faults") reject(codedError("impossible-input", (word as Refused).faults));
      else hear(word as Exclude<Word, Refused>, resolve);
    });
    worker.on("error", reject);
    worker.on("exit", (code) => {
      signal.removeEventListener("abort", callOff);
      reject(new Error(`The computing thread ended early, with ${code}.`));
    });
  });
}
