// What a guess foretells: how much has been lost by any moment, and when each event comes. By averages over the prepared week.

import { dutyHistory } from "../duty/history.ts";
import type { DutyEvent } from "../duty/happen.ts";
import type { Prepared } from "../duty/prepared.ts";
import type { EventName } from "../history/watch.ts";
import type { LeakOpening } from "../physics/build.ts";
import type { Visit } from "./visit.ts";

const WEEK = 7 * 86400;

/** One guess about the leak and the use of the vehicle. Seconds are those of the visit's clock. */
export interface Guess {
  readonly opening: LeakOpening | null;
  readonly opensAt: number;
  /** What the hiding place holds [m³]. */
  readonly soakedUp: number;
  /** Lacking from the start [m³ at fill temperature], and how much more the unit as it is needs for every event. */
  readonly short: number;
  readonly harder: number;
  /** Driving against the prepared week's. */
  readonly use: number;
}

export interface Course {
  /** Fluid lost by a moment [kg]. */
  readonly lostBy: (clock: number) => number;
  /** When an event came first [s]; Infinity: not by the visit. */
  readonly when: (name: EventName, clutch?: string) => number;
  readonly events: readonly DutyEvent[];
  /** When the vehicle could no longer be driven [s]; Infinity: it still could. */
  readonly over: number;
}

/** Share that clings and is carried off each second of driving: assumed, as in the invented cases. */
const CARRY_OFF = 0.05 / 3600;

/** Follows a guess to the visit. More use than the prepared week's is a clock that runs faster by as much. */
export function courseOf(visit: Visit, prepared: Prepared, guess: Guess): Course {
  const { use, opening } = guess;
  const { site, unit, week, weekday, dayOfYear, added } = visit;
  const span = visit.at * use;
  const history = dutyHistory(
    prepared,
    {
      unit: {
        ...unit,
        leak:
          opening === null
            ? null
            : { ...site, opening, hiding: { capacity: guess.soakedUp, carryOff: CARRY_OFF } },
      },
      week,
      weekday,
      dayOfYear,
      opens: { after: guess.opensAt * use },
      topUps: added.map(({ at, volume, temperature }) => ({ at: at * use, volume, temperature })),
      span,
      fillShort: guess.short - guess.harder,
    },
    false,
  );
  const { lost, events, end, endedBy } = history;
  return {
    lostBy(clock) {
      const x = Math.max(0, Math.min(lost.length - 1, (clock * use) / WEEK));
      const i = Math.min(Math.max(0, lost.length - 2), Math.floor(x));
      return lost[i]! + ((lost[i + 1] ?? lost[i]!) - lost[i]!) * (x - i);
    },
    when(name, clutch) {
      const event = events.find(
        (other) => other.name === name && (clutch === undefined || other.clutch === clutch),
      );
      return event === undefined ? Infinity : event.clock / use;
    },
    events,
    over: endedBy === "end of span" ? Infinity : end.clock / use,
  };
}
