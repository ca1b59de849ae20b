// What the events of a history are called on a picture: few words, harm told apart from symptoms.

import type { EventName, HistoryEvent } from "../history/watch.ts";
import type { UnitSystem } from "../units/show.ts";
import { retold } from "../units/retold.ts";
import type { Flag } from "./flags.ts";

const short: Partial<Record<EventName, string>> = {
  "hiding place full": "hiding place full",
  "first spot on the ground": "first spot",
  "level below the low mark": "below low mark",
  "slow engagement, cold": "slow into gear, cold",
  "slow engagement, hot": "slow into gear, hot",
  "cooler flow below half": "cooler flow halved",
  "learned fill at its limit": "learned fill at its limit",
  "learned trim at its limit": "trim at its limit",
  "line pressure below demand": "pressure below demand",
  "vehicle falls behind": "falls behind",
  "damage 1": "burnt",
};

const grave: readonly EventName[] = [
  "first sustained slip",
  "damage 0.1",
  "damage 0.5",
  "damage 1",
  "line parts",
  "no drive",
];

const isDamage = ({ name }: HistoryEvent) => name.startsWith("damage");

/** The events with one for the damage of each clutch: the last of its marks that was reached. */
export const oneForEachClutch = (events: readonly HistoryEvent[]): HistoryEvent[] =>
  events.filter(
    (event) =>
      !isDamage(event) ||
      !events.some((later) => isDamage(later) && later.clutch === event.clutch && later.name > event.name),
  );

/** What makes an event, in the reader's units. */
export const conditionIn = ({ condition }: Pick<HistoryEvent, "condition">, system: UnitSystem): string =>
  system === "US"
    ? retold(condition.replace("1 g has fallen", "0.04 oz has fallen"), system)
    : retold(condition, system);

/**
 * Flags for the events, at the time that `when` reads of each. Of the damage marks of one clutch that come within
 * `together` of its last, only the last is flagged.
 */
export function flagsOf(
  events: readonly HistoryEvent[],
  when: (event: HistoryEvent) => number,
  together: number,
): Flag[] {
  return events
    .filter(
      (event) =>
        !isDamage(event) ||
        !events.some(
          (later) =>
            isDamage(later) &&
            later.clutch === event.clutch &&
            later.name > event.name &&
            when(later) - when(event) <= together,
        ),
    )
    .map((event) => ({ at: when(event), says: wordsFor(event), grave: grave.includes(event.name) }));
}

/** An event in few words: "front brake burnt", "first spot"; of whichever clutch is the first, "first clutch burnt". */
export function wordsFor({ name, clutch }: Pick<HistoryEvent, "name" | "clutch">): string {
  const says = short[name] ?? name;
  return clutch === undefined ? (name === "damage 1" ? `first clutch ${says}` : says) : `${clutch} ${says}`;
}
