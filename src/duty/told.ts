// How sure the date of an event is: near its end a trip's story changes every 5 to 20 g of loss, so a history is asked again with a few
// grams more and less in the unit.

import type { Plan } from "../history/simulate.ts";
import { density } from "../physics/fluid/density.ts";
import { dutyHistory, type DutyHistory } from "./history.ts";
import type { DutyEvent } from "./happen.ts";
import type { Prepared } from "./prepared.ts";

/** An event's date with what a few grams move it by: running seconds. */
export interface ToldDate {
  readonly event: DutyEvent;
  readonly earliest: number;
  /** Infinity where one of the histories that were asked does not have it. */
  readonly latest: number;
}

/** Shares of the grams at which a history is asked; a date need not move with them in one direction. */
const ASKED = [-1, -0.5, 0.5, 1];

/**
 * The history of a plan with the earliest and latest date of each of its events while up to `within` kilograms more or less lack in the
 * unit than its loss says (positive; 5 g is what tables and march are good for near the end). It costs five histories. What was handed over whole
 * is the trip-resolved history, and its dates are told as they are.
 */
export function toldDates(
  prepared: Prepared,
  plan: Plan,
  within = 0.005,
): { readonly history: DutyHistory; readonly dates: readonly ToldDate[] } {
  const history = dutyHistory(prepared, plan);
  const volume = within / density(prepared.unit.fluid.density15, prepared.unit.build.fillTemperature);
  const others =
    history.handedOver === "nothing"
      ? ASKED.map((share) =>
          dutyHistory(prepared, { ...plan, fillShort: (plan.fillShort ?? 0) + share * volume }),
        )
      : [];
  const dates = history.events.map((event): ToldDate => {
    let [earliest, latest] = [event.running, event.running];
    for (const { events } of others) {
      const other = events.find(({ name, clutch }) => name === event.name && clutch === event.clutch);
      latest = Math.max(latest, other?.running ?? Infinity);
      earliest = Math.min(earliest, other?.running ?? Infinity);
    }
    return { event, earliest, latest };
  });
  return { history, dates };
}
