// A duty-averaged history: the leak marched week by week against what the week does to the unit at every loss.

import type { Ending, Plan } from "../history/simulate.ts";
import { eventOf, happensIn, leastCritical, type DutyEvent, type Found } from "./happen.ts";
import { begin, marchOn, newMarch, WEEK, type March } from "./march.ts";
import type { Prepared } from "./prepared.ts";
import { findSpots, newSpots } from "./spots.ts";

/** A history of averages. */
export interface DutyHistory {
  readonly events: readonly DutyEvent[];
  /** Fluid lost at the beginning of each week [kg]. */
  readonly lost: Float64Array;
  readonly endedBy: Ending;
  /** Clock and running time at the end [s]. */
  readonly end: { readonly clock: number; readonly running: number };
  readonly handedOver: boolean;
}

/** The march of a prepared week: kept from plan to plan, so that thousands of histories allocate next to nothing. */
const marches = new WeakMap<Prepared, March>();

const spots = newSpots();
const says = {
  full: "what clings under the vehicle has reached its capacity",
  spot: "1 g has fallen while standing",
};

/** The history of a plan whose week, build, fluid, driver and air were prepared; the plan brings the leak, dates and span. */
export function dutyHistory(prepared: Prepared, plan: Plan): DutyHistory {
  let march = marches.get(prepared);
  if (march === undefined) marches.set(prepared, (march = newMarch(prepared, plan)));
  begin(march, plan);
  const { thresholds } = prepared;
  const weeks = marchOn(march, enoughFor(prepared));
  const events: DutyEvent[] = [];
  const found: Found = { week: 0, trip: 0, time: 0, lost: 0, candidate: null };
  const fired = new Uint8Array(thresholds.length);
  let ended: DutyEvent | undefined;
  for (let week = 0; week < weeks && ended === undefined; week++) {
    const most = march.shortAtFirst + march.lost[week + 1]! - march.added[week]!;
    for (let t = 0; t < thresholds.length; t++) {
      if (fired[t] === 1) continue;
      const threshold = thresholds[t]!;
      if (leastCritical(threshold) > most || !happensIn(march, threshold, week, found)) continue;
      fired[t] = 1;
      const event = eventOf(march, threshold.name, threshold.condition, threshold.clutch, found);
      events.push(event);
      const ends = event.name === "no drive" || (event.name === "vehicle falls behind" && plan.unit.driver.whenBehind === "stops");
      if (ends && !(ended !== undefined && ended.clock < event.clock)) ended = event;
    }
  }
  findSpots(march, weeks, spots);
  if (spots.full.week >= 0) events.push(eventOf(march, "hiding place full", says.full, undefined, spots.full));
  if (spots.spot.week >= 0) events.push(eventOf(march, "first spot on the ground", says.spot, undefined, spots.spot));
  if (march.leak !== null && march.opensAt < plan.span)
    events.push({ name: "leak opens", condition: "as the case says", clock: march.opensAt, running: march.opensRunning, distance: Number.NaN, lost: 0 });
  events.sort((a, b) => a.clock - b.clock);
  const until = ended?.clock ?? plan.span;
  return {
    events: events.filter(({ clock }) => clock <= until),
    lost: march.lost.slice(0, weeks + 1),
    endedBy: ended === undefined ? "end of span" : ended.name === "no drive" ? "no drive" : "driver stopped",
    end: { clock: until, running: ended?.running ?? (plan.span / WEEK) * march.weekTime },
    handedOver: false,
  };
}

function enoughFor({ thresholds }: Prepared): number {
  let enough = Infinity;
  for (const threshold of thresholds) if (threshold.name === "no drive") enough = Math.min(enough, leastCritical(threshold));
  return enough + 0.5;
}
