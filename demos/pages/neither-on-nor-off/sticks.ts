// What the stick would have shown at each event, in the check proper: idling in park, level, hot.

import { hotCheck } from "../../../src/bay/hot-check.ts";
import type { History } from "../../../src/history/simulate.ts";
import { oneForEachClutch } from "../../../src/plots/event-words.ts";
import { caseOf, type Settings } from "./van.ts";

/** A history with the depth at the stick [m] for each event of `oneForEachClutch`. */
export interface Told extends History {
  readonly sticks: readonly number[];
}

export function told(settings: Settings, history: History): Told {
  const { unit } = caseOf(settings);
  const sticks = oneForEachClutch(history.events).map(
    ({ mass }) => hotCheck(unit, Math.max(mass, 0.01)).depth,
  );
  return { ...history, sticks };
}
