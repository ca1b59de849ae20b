// A loss told roughly, by a few rates since the leak opened: for callers who ask thousands of leaks and follow only some of them week by week.

import type { Plan } from "../history/simulate.ts";
import { begin, newMarch, runningAt, WEEK, type March } from "./course.ts";
import { mostLost } from "./loss.ts";
import { rateAt } from "./march.ts";
import type { Prepared } from "./prepared.ts";
import { entered } from "./week.ts";

/** Panels of Simpson's rule over the root of the driving since the leak opened, in which a leak that grows from nothing is smooth. */
const PANELS = 2;

/** The march of a plan, what was lost at each panel's end [kg], and how fast that rises over the root there. */
interface Rough {
  readonly march: March;
  readonly lost: Float64Array;
  readonly rises: Float64Array;
}

const kept = new WeakMap<Prepared, Rough>();

/**
 * Fluid lost by a moment [kg], as `dutyLoss` tells it but for what hangs on single trips and stands: within some hundredths for a leak that has been open for weeks and has not run the unit dry,
 * within a trip's loss or two for a young one. Lent until the next plan of the same prepared week is asked.
 */
export function roughLoss(prepared: Prepared, plan: Plan): (clock: number) => number {
  let known = kept.get(prepared);
  if (known === undefined) {
    known = {
      march: newMarch(prepared, plan),
      lost: new Float64Array(PANELS + 1),
      rises: new Float64Array(PANELS + 1),
    };
    kept.set(prepared, known);
  }
  const { march, lost, rises } = known;
  begin(march, plan);
  const { opensAt, opensRunning, weekTime } = march;
  if (!(opensAt < plan.span) || !(weekTime > 0)) return () => 0;
  // What an older leak lost before the first moment is not counted, as the march does not.
  const from = Math.max(0, opensRunning) / weekTime;
  const whole = runningAt(march, plan.span) / weekTime - from;
  const most = mostLost(march);
  const addedBy = (clock: number) => entered(plan, prepared.unit, -1, clock);
  /** Rise over the root s, of which the driving since then is whole·s². */
  const riseAt = (s: number, gone: number) => {
    const week = from + whole * s * s;
    return 2 * s * whole * rateAt(march, week, gone, addedBy(week * WEEK));
  };
  for (let p = 0; p < PANELS; p++) {
    const [start, width] = [lost[p]!, 1 / PANELS];
    const slope = rises[p]!;
    // What is lost hardly changes the rate, so a foreseen loss will do.
    const end = riseAt((p + 1) * width, start + width * slope);
    const middle = riseAt((p + 0.5) * width, start + width * (0.375 * slope + 0.125 * end));
    rises[p + 1] = end;
    lost[p + 1] = start + (width / 6) * (slope + 4 * middle + end);
  }
  return (clock) => {
    if (clock <= Math.max(0, opensAt) || !(whole > 0)) return 0;
    const s = Math.sqrt(Math.min(1, Math.max(0, runningAt(march, clock) / weekTime - from) / whole));
    const p = Math.min(PANELS - 1, Math.floor(s * PANELS));
    const x = s * PANELS - p;
    const [low, high] = [lost[p]!, lost[p + 1]!];
    const curve = ((1 - x) * rises[p]! - x * rises[p + 1]!) / PANELS;
    const gone = low + (high - low) * x * x * (3 - 2 * x) + x * (1 - x) * curve;
    return Math.min(gone, most + addedBy(clock));
  };
}
