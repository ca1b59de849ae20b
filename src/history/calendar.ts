// What comes at its date: the leak's opening and the fluid that is added. While the unit stands each is met exactly; within a trip the leak
// opens within its tick, and fluid is added when the trip has ended.

import { tripTime } from "../driving/pattern.ts";
import { density } from "../physics/fluid/density.ts";
import { pouredIn, stand, topUp } from "./parked.ts";
import { idleFirst, restsOf, type Plan } from "./plan.ts";
import type { Telling } from "./telling.ts";
import type { Walk } from "./walk.ts";

export interface Calendar {
  /** Lets the unit stand until a moment [s since the start]; false once the history is over. */
  readonly standUntil: (clock: number) => boolean;
  /** Time until the leak opens [s], as far as that is within a tick of so many seconds towards a speed [m/s]; Infinity: not in it. */
  readonly untilOpen: (seconds: number, target: number) => number;
  readonly open: () => void;
}

export function calendarOf(plan: Plan, walk: Walk, telling: Telling): Calendar {
  const { state, unit } = walk;
  const topUps = [...plan.topUps].sort((a, b) => a.at - b.at);
  const drives = plan.week.days.flat().reduce((sum, trip) => sum + idleFirst + tripTime(trip), 0);
  const rests = restsOf(plan, drives);
  let poured = 0;
  const waits = () => state.leakAge < 0 && unit.leak !== null;
  const open = () => {
    state.leakAge = 0;
    // Open before the start: its calendar counts from there, its running is in the opening itself.
    state.leakOpenedAt = "after" in plan.opens && plan.opens.after < 0 ? plan.opens.after : state.clock;
    telling.tellNow("leak opens", "as the case says");
  };
  return {
    open,
    standUntil(clock) {
      for (;;) {
        const entry = topUps[poured];
        const opens = "after" in plan.opens && waits() ? plan.opens.after : Infinity;
        const due = Math.max(state.clock, Math.min(entry?.at ?? Infinity, opens));
        const next = Math.min(clock, due);
        if (next > state.clock && !stand(walk, next - state.clock, telling.after, rests)) return false;
        if (opens <= state.clock) open();
        if (entry !== undefined && entry.at <= state.clock) {
          poured++;
          topUp(walk, entry.volume * density(unit.fluid.density15, entry.temperature), entry.temperature);
          telling.tellNow("topped up", pouredIn(entry.volume, entry.temperature));
        }
        const more = poured < topUps.length && topUps[poured]!.at <= state.clock;
        if (state.clock >= clock - 1e-6 && !more) return true;
      }
    },
    untilOpen: (seconds, target) => (waits() ? opensIn(plan, walk, seconds, target) : Infinity),
  };
}

/** By the clock, by running, or by the metres at the tick's mean speed. */
function opensIn({ opens }: Plan, { state }: Walk, seconds: number, target: number): number {
  if ("after" in opens) return Math.max(0, opens.after - state.clock);
  if ("running" in opens) return Math.max(0, opens.running - state.running);
  const left = opens.distance - state.distance;
  const mean = 0.5 * (state.speed + target);
  return left <= 0 ? 0 : left < mean * seconds ? left / mean : Infinity;
}
