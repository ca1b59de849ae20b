// When each event came, and how it lies to the opening of the leak.

import { opensSince } from "../causes.ts";
import type { Posterior } from "../posterior.ts";
import { milesColumn } from "../foretell.ts";
import { among, foretoldColumn, HARDLY, spreadIn } from "./pool.ts";
import type { Spread } from "./spread.ts";

export interface EventAnswer {
  readonly name: string;
  readonly clutch?: string;
  /** Probability that it had come by the visit. */
  readonly chance: number;
  /** When it came, in the cases in which it had; null where that is hardly ever. */
  readonly when: Spread | null;
  /** The same by the miles, on the visit's clock: other than `when` where the last full has no date, or where the vehicle stood before the visit. */
  readonly driven: Spread | null;
  /** Of the cases in which it had come and there is a leak that opened since the last full, the share in which it came before that: the unit lacked fluid already. 0 where there hardly is such a leak. */
  readonly early: number;
  /** Time from the opening to the event [s], in those in which it came after it; null where that is hardly ever. */
  readonly since: Spread | null;
}

export const eventsIn = (posterior: Posterior): EventAnswer[] =>
  posterior.columns.flatMap((column) => {
    const event = eventNamed(column);
    return event === null ? [] : [{ ...event, ...cameIn(posterior, column) }];
  });

function eventNamed(column: string): { name: string; clutch?: string } | null {
  const found = /^when ([^,]*)(?:, (.*))?$/.exec(column);
  if (found === null) return null;
  return found[2] === undefined ? { name: found[1]! } : { name: found[1]!, clutch: found[2] };
}

function cameIn(posterior: Posterior, column: string): Omit<EventAnswer, "name" | "clutch"> {
  // What was so from the first day on began then.
  const cameBy = (name: string) => {
    const all = foretoldColumn(posterior, name);
    return among({ ...all, values: all.values.map((when) => Math.max(0, when)) }, (when) => when < Infinity);
  };
  const came = cameBy(column);
  const opened = foretoldColumn(posterior, "opened", opensSince).values;
  const leaking = foretoldColumn(posterior, column, opensSince);
  const after = leaking.values.map((when, i) => when - opened[i]!);
  const since = { ...leaking, values: after };
  const known = among(since, (wait) => wait < Infinity);
  const later = among(since, (wait) => wait >= 0 && wait < Infinity);
  return {
    chance: came.share,
    when: came.share > HARDLY ? spreadIn(came) : null,
    driven: came.share > HARDLY ? spreadIn(cameBy(milesColumn(column))) : null,
    early: known.share > HARDLY ? 1 - later.share / known.share : 0,
    since: later.share > HARDLY ? spreadIn(later) : null,
  };
}
