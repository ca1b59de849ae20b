// What is told of when the leak opened and when each event came, each beside the others.

import type { EventAnswer } from "../../src/lookback/answer/events.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { datesOf, odometersOf, waitsOf, type Dates, type Driven } from "./moments.ts";
import type { Telling } from "./told.ts";

/** A moment in words; null where it is too seldom to date. */
export interface ToldMoment {
  readonly dates: Dates | null;
  readonly driven: Readonly<Record<UnitSystem, Driven | null>>;
}

export interface ToldEvent extends ToldMoment {
  readonly event: EventAnswer;
  /** Time since the opening. */
  readonly wait: string | null;
}

/** The opening and the events in words: whatever stands beside each other is in the order of its numbers, so sentences and tables take it from here. */
export function toldMoments(telling: Pick<Telling, "read" | "answer">): {
  readonly opened: ToldMoment;
  readonly events: readonly ToldEvent[];
} {
  const { read, answer } = telling;
  const events = toldEvents(telling);
  const all = [answer.opened, ...events];
  const dates = datesOf(
    read,
    all.map((one) => one?.when ?? null),
  );
  const drivens = all.map((one) => one?.driven ?? null);
  const [US, SI] = [odometersOf(read, drivens, "US"), odometersOf(read, drivens, "SI")];
  const waits = waitsOf(events.map(({ since }) => since));
  const moment = (i: number): ToldMoment => ({ dates: dates[i]!, driven: { US: US[i]!, SI: SI[i]! } });
  return {
    opened: moment(0),
    events: events.map((event, i) => ({ event, wait: waits[i]!, ...moment(i + 1) })),
  };
}

/** In order of their middle dates, those without one last. Events that nearly never came are left out; damage below burnt stands with the clutches. */
export const toldEvents = ({ read, answer: { events } }: Pick<Telling, "read" | "answer">) =>
  events
    // Without a shield it is a bare underside, wet within minutes: no news.
    .filter(({ name }) => name !== "hiding place full" || read.visit.shield)
    .filter(({ name, chance }) => chance >= 0.01 && name !== "damage 0.1" && name !== "damage 0.5")
    .sort((a, b) => (a.when?.middle ?? Number.MAX_VALUE) - (b.when?.middle ?? Number.MAX_VALUE));
