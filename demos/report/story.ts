// The history in a few sentences: when it could have been seen, when harm began, and why the run ended.

import type { Ending, History } from "../../src/history/simulate.ts";
import type { EventName, HistoryEvent } from "../../src/history/watch.ts";
import type { Case } from "../../src/inputs/case.ts";
import { dateOf } from "../../src/inputs/plan.ts";
import { show, type UnitSystem } from "../../src/units/show.ts";
import { volumeOf } from "./event-table.ts";

const endings: Record<Ending, string> = {
  "no drive": "It no longer drives: it stood still for 10 s while 3 m/s or more were wanted.",
  "driver stopped": "The driver stopped, as the case says, when he felt it or fell behind.",
  "drove home": "The driver was home, by the way that the case gives him, and left it there.",
  "end of span": "The span of the case was over.",
  cancelled: "It was called off.",
};

/** Why there is no more of the history. */
export function endingText(given: Case, { endedBy, end }: History, system: UnitSystem): string {
  const at = `${dateOf(given, end.clock)}, ${show(given.start.odometer + end.distance, "distance", system)}`;
  return `Ended at ${at}: ${endedBy}. ${endings[endedBy]}`;
}

/** What a reader wants to know first. Every sentence is only there if its events are. */
export function story(given: Case, history: History, system: UnitSystem): string[] {
  const { events, end } = history;
  const first = (name: EventName) => events.find((event) => event.name === name);
  const burnt = events.find(({ name }) => name === "damage 1");
  const opens = first("leak opens");
  const low = first("level below the low mark");
  const spot = first("first spot on the ground");
  const slip = first("first sustained slip");
  const day = ({ clock }: { clock: number }) => dateOf(given, clock).slice(0, 10);
  const gone = ({ lost }: { lost: number }) => show(volumeOf(given, lost), "volume", system);
  const until = (from: HistoryEvent, to: HistoryEvent) => apart(from, to, system);

  if (opens === undefined) return [`No leak opened in ${Math.round(end.clock / 86400)} days.`];
  const says: string[] = [];
  const last = burnt ?? slip;
  const harm = burnt ? `the ${burnt.clutch} was burnt` : "the first slip that lasted came";
  if (last)
    says.push(
      `The leak opened on ${day(opens)}; ${harm} ${until(opens, last)} later, with ${gone(last)} gone.`,
    );
  else
    says.push(
      `The leak opened on ${day(opens)}. By the end ${show(volumeOf(given, history.ledger.massLeaked), "volume", system)} were gone, and no clutch had slipped for as long as a second.`,
    );
  if (low && last && low.clock < last.clock)
    says.push(
      `A hot check of the level would have shown it from ${day(low)} on, ${until(low, last)} before.`,
    );
  if (spot && last)
    says.push(
      spot.clock < last.clock
        ? `The first spot on the ground came on ${day(spot)}, ${until(spot, last)} before; ${gone(spot)} were gone by then.`
        : `No spot had been on the ground by then.`,
    );
  if (!spot && last) says.push("Nothing ever fell on the ground where it stood.");
  if (slip && burnt && slip.clock < burnt.clock)
    says.push(`From the first slip that lasted to burnt it took ${until(slip, burnt)}.`);
  return says;
}

/** "72 days, 1964 mi (3161 km)" or, within two days, running time. */
function apart(from: HistoryEvent, to: HistoryEvent, system: UnitSystem): string {
  const days = (to.clock - from.clock) / 86400;
  const far = show(to.distance - from.distance, "distance", system);
  if (days >= 2) return `${Math.round(days)} days and ${far}`;
  const minutes = Math.max(1, Math.round((to.running - from.running) / 60));
  if (minutes >= 120) return `${(minutes / 60).toFixed(1)} running hours`;
  return minutes === 1 ? "a running minute" : `${minutes} running minutes`;
}
