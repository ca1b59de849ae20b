// The same computing in a thread of its own.

import type { Plan } from "../../src/history/simulate.ts";
import type { Come, Computed } from "./compute.ts";
import { inThread } from "./thread.ts";
import type { Word } from "./worker.ts";

/** Computes a plan; rejects with an AbortError as soon as the signal asks for it. */
export const computeInThread = (
  plan: Plan,
  tell: (come: Come) => void,
  signal: AbortSignal,
): Promise<Computed> =>
  inThread<Word, Computed>(new URL("./worker.mjs", import.meta.url), plan, signal, (word, done) => {
    if (word.kind === "come") tell(word.come);
    else done(word.computed);
  });
