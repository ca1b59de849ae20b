// Inside the thread: computes what it was given and tells how far it has come, at most ten times a second.

import { parentPort, workerData } from "node:worker_threads";
import { isCoded, type Fault } from "../../src/errors.ts";
import type { Plan } from "../../src/history/simulate.ts";
import { compute, type Come, type Computed } from "./compute.ts";

export type Word =
  | { readonly kind: "come"; readonly come: Come }
  | { readonly kind: "computed"; readonly computed: Computed }
  | { readonly kind: "faults"; readonly faults: readonly Fault[] };

const say = (word: Word) => parentPort!.postMessage(word);

let last = 0;
try {
  const computed = compute(workerData as Plan, (come) => {
    if (Date.now() - last < 100) return;
    last = Date.now();
    say({ kind: "come", come });
  });
  say({ kind: "computed", computed });
} catch (error) {
  if (!isCoded(error)) throw error;
  say({ kind: "faults", faults: error.faults });
}
