// What a history tells while it is walked: after every step each condition is looked at, extremes are kept and the instant is noted. Some
// events end it, some make the driver do something.

import type { Measures } from "./measures.ts";
import { newOutside, noteStep, type Outside } from "./outside.ts";
import { feels, noResolve, type Resolve } from "./reaction.ts";
import { newRecent, newRow, note, wantCloseUp, type Recent, type TripRow } from "./record.ts";
import type { Engagement } from "./shift.ts";
import { gatherRow } from "./trip-row.ts";
import type { Walk } from "./walk.ts";
import {
  eventAt,
  look,
  momentOf,
  newMoment,
  watcher,
  type EventName,
  type HistoryEvent,
  type Moment,
} from "./watch.ts";

export type Ending = "no drive" | "driver stopped" | "drove home" | "end of span" | "cancelled";

/** Moments of which a close-up is kept. */
const closely: readonly EventName[] = ["first gulp of air", "first sustained slip", "damage 1", "no drive"];

export interface Telling {
  readonly events: HistoryEvent[];
  readonly recent: Recent;
  readonly outside: Outside;
  readonly resolve: Resolve;
  /** Slips of each clutch so far. */
  readonly slips: Float64Array;
  /** The row of the trip on the way. */
  row: TripRow;
  ending: Ending | undefined;
  /** After every step; false once the history is over. */
  readonly after: () => boolean;
  /** Tells an event of this instant. */
  readonly tellNow: (name: EventName, condition: string) => void;
}

/** Watches a walk that is about to begin. */
export function tellingOf(walk: Walk, engagement: Engagement, measures: Measures): Telling {
  const { state, now, unit } = walk;
  const { driver } = unit;
  const before = newMoment();
  const moment = newMoment();
  let wasSlipping = false;

  const tell = (event: HistoryEvent) => {
    // Of several clutches that burn the first is looked at.
    if (closely.includes(event.name) && telling.events.every(({ name }) => name !== event.name))
      wantCloseUp(telling.recent, event.name, event.clock);
    telling.events.push(event);
    if (event.name === "no drive") telling.ending = "no drive";
    if (event.name === "vehicle falls behind" && driver.whenBehind === "stops")
      telling.ending = "driver stopped";
    if (event.name === "first flare") feels(event, driver.atFirstFlare, telling.resolve);
    if (event.name === "first sustained slip") feels(event, driver.atFirstSlip, telling.resolve);
  };
  const telling: Telling = {
    events: [],
    recent: newRecent(),
    outside: newOutside(),
    resolve: noResolve(),
    slips: new Float64Array(state.plate.length),
    row: newRow(),
    ending: undefined,
    after() {
      const { slips, resolve, outside } = telling;
      momentOf(state, now.temperature, now.leakFlow, moment);
      measures.take(walk, engagement);
      for (let i = 0; i < measures.watched; i++) {
        const watch = measures.watchers[i]!;
        if (watch.fired) continue;
        const event = look(watch, measures.values[i]!, before, moment);
        if (event !== undefined) tell(event);
      }
      copyMoment(moment, before);
      gatherRow(walk, telling.row);
      noteStep(outside, walk, engagement);
      if (walk.slip.heat > 0 && state.slipping !== wasSlipping) slips[walk.slip.clutch]! += 1;
      wasSlipping = state.slipping;
      note(telling.recent, walk);
      if (state.distance >= resolve.stopsAt) telling.ending ??= resolve.as;
      return telling.ending === undefined;
    },
    tellNow(name, condition) {
      momentOf(state, now.temperature, now.leakFlow, moment);
      tell(eventAt(watcher(name, condition, 0), moment));
    },
  };
  momentOf(state, now.temperature, 0, before);
  return telling;
}

function copyMoment(from: Moment, to: Moment): void {
  to.clock = from.clock;
  to.running = from.running;
  to.distance = from.distance;
  to.lost = from.lost;
  to.mass = from.mass;
  to.temperature = from.temperature;
  to.leakFlow = from.leakFlow;
}
