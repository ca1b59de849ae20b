// The history in a few sentences: when it could have been seen, when harm began, and why the run ended.

import { HOT } from "../../src/bay/ready.ts";
import type { Ending, History } from "../../src/history/simulate.ts";
import type { EventName, HistoryEvent } from "../../src/history/watch.ts";
import type { Case } from "../../src/inputs/case.ts";
import { dateOf, volumeOf } from "../../src/inputs/plan.ts";
import type { FirstLow } from "./first-low.ts";
import type { Tell } from "./said.ts";

const endings: Record<Ending, (tell: Tell) => string> = {
  "no drive": (tell) =>
    `It no longer drives: it stood still for 10 s while ${tell(3, "speed", 2)} or more were wanted.`,
  "driver stopped": () => "The driver stopped, as the case says, when he felt it or fell behind.",
  "drove home": () => "The driver was home, by the way that the case gives him, and left it there.",
  "end of span": () => "The span of the case was over.",
  cancelled: () => "It was called off.",
};

/** Why there is no more of the history. */
export function endingText(given: Case, { endedBy, end }: History, tell: Tell): string {
  const at = `${dateOf(given, end.clock)}, ${tell(given.start.odometer + end.distance, "distance")}`;
  return `Ended at ${at}: ${endedBy}. ${endings[endedBy](tell)}`;
}

/** What a reader wants to know first. Every sentence is only there if its events are; the same ones in either system. */
export function story(given: Case, history: History, low: FirstLow | null, tell: Tell): string[] {
  const { events, end } = history;
  const first = (name: EventName) => events.find((event) => event.name === name);
  const burnt = events.find(({ name }) => name === "damage 1");
  const opens = first("leak opens");
  const spot = first("first spot on the ground");
  const slip = first("first sustained slip");
  const chance = first("level below the low mark");
  const day = ({ clock }: { clock: number }) => dateOf(given, clock).slice(0, 10);
  const gone = ({ lost }: { lost: number }) => tell(volumeOf(given, lost), "volume", 2);
  const until = (from: Moment, to: Moment) => apart(from, to, tell);

  if (opens === undefined) return [`No leak opened in ${Math.round(end.clock / 86400)} days.`];
  const says: string[] = [];
  const last = burnt ?? slip;
  const harm = burnt ? `the ${burnt.clutch} was burnt` : "the first sustained slip came";
  if (last)
    says.push(
      `The leak opened on ${day(opens)}; ${harm} ${until(opens, last)} later, with ${gone(last)} gone.`,
    );
  else
    says.push(
      `The leak opened on ${day(opens)}. By the end ${tell(volumeOf(given, history.ledger.massLeaked), "volume", 2)} were gone, and no clutch had slipped for as long as a second.`,
    );
  if (low && (!last || low.clock < last.clock))
    says.push(
      `The stick, read idling in park on level ground with the fluid at ${tell(HOT, "temperature")}, would have stood below its low mark ` +
        `after every trip from ${day(low)} on${last ? `, ${until(low, last)} before` : ""}; ${gone(low)} were gone by then.`,
    );
  // The event of that name waits until the driving itself lets the stick be read: another date, so it is told apart.
  if (low && chance && (!last || low.clock < last.clock))
    says.push(
      `The event “level below the low mark” is another moment: the first idle of the driving itself at which the stick, hot and level, stood under it, on ${day(chance)}.`,
    );
  if (spot && last)
    says.push(
      spot.clock < last.clock
        ? `The first spot on the ground came on ${day(spot)}, ${until(spot, last)} before; ${gone(spot)} were gone by then.`
        : `No spot had been on the ground by then.`,
    );
  if (!spot && last) says.push("Nothing ever fell on the ground where it stood.");
  if (slip && burnt && slip.clock < burnt.clock)
    says.push(`From the first sustained slip to burnt it took ${until(slip, burnt)}.`);
  return says;
}

type Moment = Pick<HistoryEvent, "clock" | "running" | "distance">;

/** "72 days and 1964 mi" or, within two days, running time. */
function apart(from: Moment, to: Moment, tell: Tell): string {
  const days = (to.clock - from.clock) / 86400;
  const far = tell(to.distance - from.distance, "distance");
  if (days >= 2) return `${Math.round(days)} days and ${far}`;
  const minutes = Math.max(1, Math.round((to.running - from.running) / 60));
  if (minutes >= 120) return `${(minutes / 60).toFixed(1)} running hours`;
  return minutes === 1 ? "a running minute" : `${minutes} running minutes`;
}
