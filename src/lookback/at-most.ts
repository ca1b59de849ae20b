// The most that an item can say for a guess, whatever was lost by then: known before the guess is followed, which is what takes time.

import { counted, measured } from "../chance/terms.ts";
import { gravity } from "../physics/fluid/surroundings.ts";
import type { Evidence } from "./evidence.ts";
import { measuredBy } from "./shared.ts";
import type { Table } from "./shown.ts";
import {
  dropsOf,
  flowUnder,
  isDear,
  saysFull,
  saysLook,
  termOf,
  UNLIKE,
  type Asked,
  type Moment,
} from "./terms.ts";

/** No more than this is the logarithm of the probability of an item that is not dear; of what is dear nothing is known beforehand, and no probability is over 1. */
export function mostOf(item: Evidence, asked: Asked): number {
  if (isDear(item)) return 0;
  // Before it opened nothing was lost, and nothing has to be followed.
  if ("at" in item && item.at <= asked.opensAt) return termOf(item, asked);
  const { shared, weakness, unseen } = asked;
  switch (item.kind) {
    case "fluid missing":
    case "fluid drained": {
      const { error } = measuredBy(item.by, item.error, shared);
      return measured(0, 0, item.kind === "fluid drained" ? Math.hypot(error, item.staysError) : error);
    }
    case "known full":
      return saysFull(0, item);
    case "drops": {
      if (unseen) return termOf(item, asked);
      const [slow, fast] = flowsWithin(asked, item.at, item.moment);
      const [few, many] = [dropsOf(slow, item, asked), dropsOf(fast, item, asked)];
      return counted(item.count, Math.max(few, Math.min(many, item.count)));
    }
    case "looked": {
      if (unseen) return termOf(item, asked);
      const [slow, fast] = flowsWithin(asked, item.at, "idling hot");
      // A shield that is left on may hide all of it.
      const least = asked.visit.shield && item.look !== "shield taken off" ? 0 : slow;
      return saysLook(item.seen ? fast : least, item, asked);
    }
    case "line pressure": {
      const [low] = endsOf(asked.shown.linePressure);
      return measured(0, 0, Math.hypot(item.error, UNLIKE * weakness * low));
    }
    case "cooler flow":
    case "learned trim":
    case "learned fill":
      return weakness < 1 ? termOf(item, asked) : measured(0, 0, item.error);
    case "dipstick":
      return measured(0, 0, item.error);
    case "fluid in the coolant":
      return termOf(item, asked);
    default:
      return 0;
  }
}

/** The slowest and the fastest that a leak can flow at a moment of the visit's clock [m³/s], whatever is missing. */
function flowsWithin(asked: Asked, clock: number, moment: Moment): readonly [number, number] {
  const { shown, visit } = asked;
  const [low, high] = endsOf(moment === "idling hot" ? shown.pressure : shown.parkedDepth);
  const pressure = (end: number) =>
    moment === "idling hot" ? end : shown.bay.density * gravity * Math.max(0, end - visit.site.height);
  return [flowUnder(pressure(low), asked, clock, moment), flowUnder(pressure(high), asked, clock, moment)];
}

const known = new WeakMap<Table, readonly [number, number]>();

/** The least and the largest value of a table. */
function endsOf(table: Table): readonly [number, number] {
  let ends = known.get(table);
  if (ends === undefined) known.set(table, (ends = [Math.min(...table.values), Math.max(...table.values)]));
  return ends;
}
