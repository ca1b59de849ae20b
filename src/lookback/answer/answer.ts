// The answer to a visit: plain data, SI, seconds of the visit's clock. Whoever shows it turns seconds into dates and odometer readings.

import { opensSince, type CauseName } from "../causes.ts";
import type { LookKind } from "../evidence.ts";
import type { Conflict, Posterior } from "../posterior.ts";
import { ahead, parting, type Ahead, type Parting } from "./ahead.ts";
import { eventsIn, type EventAnswer } from "./events.ts";
import { missingIn, type MissingAnswer } from "./missing.ts";
import { foretoldColumn, HARDLY, meanOf, normal, spreadIn } from "./pool.ts";
import { dots, sorted, type Spread } from "./spread.ts";
import { clutchesIn, type ClutchAnswer } from "./clutches.ts";
import { ruinedIn, type RuinedAnswer } from "./ruined.ts";
import { unknownsIn, type UnknownAnswer } from "./unknowns.ts";
import { trustIn, type Trust } from "./trust.ts";
import { outsideIn } from "./outside.ts";
import { warningsIn } from "./warnings.ts";

export interface CauseAnswer {
  readonly cause: CauseName;
  readonly says: string;
  /** After and before the evidence. */
  readonly share: number;
  readonly believed: number;
  /** Ways in which such a leak grows, with their shares of the whole. */
  readonly laws: readonly { readonly law: string; readonly says: string; readonly share: number }[];
}

/** An earlier look at the vehicle: what there was to be seen. */
export interface LookAnswer {
  readonly name: string;
  readonly at: number;
  readonly look: LookKind;
  readonly seen: boolean;
  /** Probability that the leak existed; that it was wet enough to be seen with the shield as it was; that such a look finds such a leak. */
  readonly existed: number;
  readonly wet: number;
  readonly found: number;
}

/** One explanation's share and when it says that the leak opened; `law` where the leak grew. */
export interface WayAnswer {
  readonly cause: string;
  readonly law?: string;
  readonly share: number;
  readonly when: Spread;
}

export interface Answer {
  readonly name: string;
  /** The visit [s of its clock]. */
  readonly at: number;
  /** When the leak opened, in the cases in which there is one, and the probability of that. Fifty dots, each as likely as any other. */
  readonly opened: {
    readonly chance: number;
    readonly when: Spread;
    /** The same by the miles, on the visit's clock: other than `when` where the last full has no date, or where the vehicle stood before the visit. */
    readonly driven: Spread;
    readonly dots: readonly number[];
    /** The same by each way of opening that is worth telling, the likeliest first: where the dots make two humps, each has its own. */
    readonly ways: readonly WayAnswer[];
  } | null;
  /** Probability that it leaked before the visit's second 0 already, and was made good then: `opened` does not tell of that. */
  readonly older: number;
  readonly causes: readonly CauseAnswer[];
  readonly parting: Parting;
  readonly events: readonly EventAnswer[];
  readonly looks: readonly LookAnswer[];
  readonly missing: MissingAnswer;
  /** Flow of the leak now, idling hot and parked [m³/s]; null where there hardly is one. */
  readonly flow: { readonly hot: Spread; readonly parked: Spread } | null;
  readonly clutches: readonly ClutchAnswer[];
  /** What has gone with the leak, as it goes together: shares of all cases. */
  readonly ruined: readonly RuinedAnswer[];
  /** What to look at next, the one that narrows the opening date most first. */
  readonly ahead: readonly Ahead[];
  readonly conflicts: readonly Conflict[];
  readonly unknowns: readonly UnknownAnswer[];
  readonly trust: Trust;
  /** What makes this answer surer than it should be, if anything does. */
  readonly warnings: readonly string[];
  /** Laws that were used outside their range on the way to it, with how far. */
  readonly outside: readonly string[];
}

const DOTS = 50;

/**
 * Puts what the guesses of `lookBack` say into plain data: every date [s on the visit's clock, and miles in m], volume [m³] and temperature [K] as a spread of its
 * quantiles (5 to 95 %), never alone; shares from 0 to 1; what the runs say of each other in `trust`. Of guesses, explanations weigh by their share after the
 * evidence. Evidence that rules everything out leaves the prior, and `conflicts` says which items quarrel. Throws nothing of its own.
 */
export function answerOf(posterior: Posterior): Answer {
  const { bench, weighed, conflicts } = posterior;
  const { visit } = bench;
  const leaks = foretoldColumn(posterior, "opened", opensSince);
  const column = (name: string) => foretoldColumn(posterior, name);
  const leaking = foretoldColumn(posterior, "flow hot", ({ opening }) => opening !== null);
  return {
    name: visit.name,
    at: visit.at,
    opened:
      leaks.share > HARDLY
        ? {
            chance: leaks.share,
            when: spreadIn(leaks),
            driven: spreadIn(foretoldColumn(posterior, "opened by the miles", opensSince)),
            dots: dots(sorted(normal(leaks).values, normal(leaks).weights), DOTS),
            ways: waysIn(posterior),
          }
        : null,
    older: weighed.reduce((sum, one) => sum + (one.explanation.cause === "older leak" ? one.share : 0), 0),
    causes: causesIn(posterior),
    parting: parting(posterior),
    events: eventsIn(posterior),
    looks: visit.evidence.flatMap((item) =>
      item.kind === "looked"
        ? [
            {
              name: item.name,
              at: item.at,
              look: item.look,
              seen: item.seen,
              existed: meanOf(column(`open at ${item.name}`)),
              wet: meanOf(column(`wet at ${item.name}`)),
              found: meanOf(column(`found at ${item.name}`)),
            },
          ]
        : [],
    ),
    missing: missingIn(posterior),
    flow:
      leaking.share > HARDLY
        ? {
            hot: spreadIn(leaking),
            parked: spreadIn(foretoldColumn(posterior, "flow parked", ({ opening }) => opening !== null)),
          }
        : null,
    clutches: clutchesIn(posterior),
    ruined: ruinedIn(posterior),
    ahead: leaks.share > HARDLY ? ahead(posterior) : [],
    conflicts,
    unknowns: unknownsIn(posterior),
    trust: trustIn(weighed, conflicts),
    warnings: warningsIn(posterior),
    outside: outsideIn(posterior),
  };
}

function waysIn(posterior: Posterior): WayAnswer[] {
  return posterior.weighed
    .filter(({ explanation, share }) => opensSince(explanation) && share > HARDLY)
    .sort((a, b) => b.share - a.share)
    .map(({ explanation, share }) => ({
      cause: explanation.cause,
      ...(explanation.law === undefined ? {} : { law: explanation.law }),
      share,
      when: spreadIn(foretoldColumn(posterior, "opened", (one) => one === explanation)),
    }));
}

function causesIn({ weighed }: Posterior): CauseAnswer[] {
  const causes = [...new Set(weighed.map(({ explanation }) => explanation.cause))];
  return causes
    .map((cause): CauseAnswer => {
      const own = weighed.filter(({ explanation }) => explanation.cause === cause);
      return {
        cause,
        says:
          own.length === 1
            ? own[0]!.explanation.says
            : cause === "older leak"
              ? "a leak that grew unseen since before the last full, and was made good then"
              : "a leak that grew unseen",
        share: own.reduce((sum, { share }) => sum + share, 0),
        believed: own.reduce((sum, { explanation }) => sum + explanation.believed, 0),
        laws: own.flatMap(({ explanation: { law, says }, share }) =>
          law === undefined || own.length === 1 ? [] : [{ law, says, share }],
        ),
      };
    })
    .sort((a, b) => b.share - a.share);
}
