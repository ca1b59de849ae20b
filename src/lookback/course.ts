// What a guess foretells: how much has been lost by any moment, and when each event comes. By averages over the prepared week.

import { dutyHistory, type DutyHistory } from "../duty/history.ts";
import { dutyLoss } from "../duty/loss.ts";
import type { Prepared } from "../duty/prepared.ts";
import type { EventName } from "../history/watch.ts";
import type { Plan } from "../history/simulate.ts";
import type { LeakOpening } from "../physics/build.ts";
import type { Visit } from "./visit.ts";

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
  /** Fluid lost by a moment [kg]; lent: it tells of the guess that was asked last. */
  readonly lostBy: (clock: number) => number;
  /** Whether more was lost before the visit than any event takes. */
  readonly ranOut: boolean;
  /** When an event came first [s]; Infinity: not by the visit. */
  readonly when: (name: EventName, clutch?: string) => number;
  /** The whole history by averages; its times are those of the plan: the visit's clock × use. */
  readonly history: () => DutyHistory;
  /** When the vehicle could no longer be driven [s]; Infinity: it still could. */
  readonly over: () => number;
}

/** Share that clings and is carried off each second of driving: assumed, as in the invented cases. */
const CARRY_OFF = 0.05 / 3600;

/** The plan of a guess, up to the visit. More use than the prepared week's is a clock that runs faster by as much. */
export function planOfGuess(visit: Visit, { use, opening, opensAt, soakedUp, short, harder }: Guess): Plan {
  const { site, unit, week, weekday, dayOfYear, added } = visit;
  return {
    unit: {
      ...unit,
      leak:
        opening === null ? null : { ...site, opening, hiding: { capacity: soakedUp, carryOff: CARRY_OFF } },
    },
    week,
    weekday,
    dayOfYear,
    opens: { after: opensAt * use },
    topUps: added.map(({ at, volume, temperature }) => ({ at: at * use, volume, temperature })),
    span: visit.at * use,
    fillShort: short - harder,
  };
}

/** Follows a guess to the visit: what is lost at once, the events when they are asked for. */
export function courseOf(visit: Visit, prepared: Prepared, guess: Guess): Course {
  const { use } = guess;
  const plan = planOfGuess(visit, guess);
  const loss = dutyLoss(prepared, plan);
  let known: DutyHistory | undefined;
  const history = () => (known ??= dutyHistory(prepared, plan, false));
  return {
    lostBy: (clock) => loss.lostBy(clock * use),
    ranOut: loss.ranOut,
    when(name, clutch) {
      for (const event of history().events)
        if (event.name === name && (clutch === undefined || event.clutch === clutch))
          return event.clock / use;
      return Infinity;
    },
    history,
    over() {
      const { endedBy, end } = history();
      return endedBy === "end of span" ? Infinity : end.clock / use;
    },
  };
}
