// Inside the thread: prepares the week that it was given and tells how far it has come, at most ten times a second.

import { parentPort, workerData } from "node:worker_threads";
import type { Week } from "../../src/driving/pattern.ts";
import { prepareDuty, type AirRange } from "../../src/duty/prepare.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { isCoded, type Fault } from "../../src/errors.ts";
import type { Unit } from "../../src/physics/build.ts";

/** What the thread is given. */
export interface Given {
  readonly unit: Unit;
  readonly week: Week;
  readonly air: AirRange;
}

export type Word =
  | { readonly kind: "share"; readonly share: number }
  | { readonly kind: "prepared"; readonly prepared: Prepared }
  | { readonly kind: "faults"; readonly faults: readonly Fault[] };

const say = (word: Word) => parentPort!.postMessage(word);
const { unit, week, air } = workerData as Given;

let last = 0;
try {
  const going = (share: number) => {
    if (Date.now() - last >= 100) {
      last = Date.now();
      say({ kind: "share", share });
    }
    return true;
  };
  const prepared = prepareDuty(unit, week, going, air);
  say({ kind: "prepared", prepared: prepared! });
} catch (error) {
  if (!isCoded(error)) throw error;
  say({ kind: "faults", faults: error.faults });
}
