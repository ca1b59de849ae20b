// The same computing in a thread of its own, so that the program stays awake: it can draw a bar and be called off.

import { Worker } from "node:worker_threads";
import { codedError } from "../../src/errors.ts";
import type { Plan } from "../../src/history/simulate.ts";
import type { Come, Computed } from "./compute.ts";
import type { Word } from "./worker.ts";

/** Computes a plan; rejects with an AbortError as soon as the signal asks for it. */
export function computeInThread(
  plan: Plan,
  tell: (come: Come) => void,
  signal: AbortSignal,
): Promise<Computed> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./worker.mjs", import.meta.url), { workerData: plan });
    const callOff = () => {
      reject(signal.reason as Error);
      void worker.terminate();
    };
    if (signal.aborted) callOff();
    signal.addEventListener("abort", callOff, { once: true });
    worker.on("message", (word: Word) => {
      if (word.kind === "come") tell(word.come);
      else if (word.kind === "computed") resolve(word.computed);
      else reject(codedError("impossible-input", word.faults));
    });
    worker.on("error", reject);
    worker.on("exit", (code) => reject(new Error(`The computing thread ended early, with ${code}.`)));
  });
}
