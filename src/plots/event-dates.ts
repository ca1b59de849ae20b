// When each event came, as bands over dates and odometer.

import type { EventName } from "../history/watch.ts";
import type { Spread } from "../lookback/answer/spread.ts";
import { calendarAxes, axisWords, type Calendar } from "./calendar-axes.ts";
import { wordsFor } from "./event-words.ts";
import type { Picture } from "./picture.ts";
import { spreadRows, type SpreadRow } from "./spread-rows.ts";

export interface DatedEvent {
  readonly name: EventName;
  readonly clutch?: string;
  /** Probability that it had come by the visit. */
  readonly chance: number;
  readonly when: Spread | null;
}

export interface EventDates {
  readonly calendar: Calendar;
  readonly events: readonly DatedEvent[];
}

const harm: readonly string[] = ["first sustained slip", "line parts", "no drive"];

/** Thin the middle nine tenths, thick the middle half, a stroke the middle, of the cases in which it came; at the right, how often it did. */
export function eventDates({ calendar, events }: EventDates, picture: Picture): SVGSVGElement {
  return spreadRows(
    {
      says: `When ${events.length} events came, as bands over ${axisWords(calendar)}.`,
      rows: events.map((event): SpreadRow => {
        const { name, chance, when } = event;
        return {
          says: wordsFor(event),
          grave: name.startsWith("damage") || harm.includes(name),
          band:
            when === null
              ? []
              : [when.nineTenths[0], when.half[0], when.middle, when.half[1], when.nineTenths[1]],
          aside: chance > 0.995 ? "> 99 %" : chance < 0.005 ? "< 1 %" : `${Math.round(100 * chance)} %`,
        };
      }),
      head: "it came in",
      from: calendar.from ?? 0,
      to: calendar.at,
      axes: (left) => calendarAxes(calendar, picture.width - left, picture.system),
    },
    picture,
  );
}
