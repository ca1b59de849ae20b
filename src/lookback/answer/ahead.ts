// What to look at next: how much spread each look would leave in the opening date, and which one parts the two likeliest causes.

import type { Evidence } from "../evidence.ts";
import { opensSince, type CauseName, type Explanation } from "../causes.ts";
import { looksAhead, type LookAhead } from "../looks-ahead.ts";
import type { Posterior } from "../posterior.ts";
import { eventColumn } from "../foretell.ts";
import { among, evenly, foretoldColumn, normal, pooled } from "./pool.ts";
import { moments } from "./spread.ts";
import { varianceAfter, varianceAfterYesNo } from "./next-look.ts";

export interface Ahead {
  readonly name: string;
  readonly says: string;
  readonly minutes: number;
  /** Standard deviation of the opening date, now and as it is expected to be after the look [s]. */
  readonly now: number;
  readonly after: number;
}

export interface Parting {
  readonly first: CauseName;
  readonly second: CauseName;
  /** Share of the first among the two. */
  readonly share: number;
  /** Whether the evidence parts them: one is at least three times as likely as the other. */
  readonly apart: boolean;
  /** The look that parts them best, and the share that it would leave undecided against now; null: none does. */
  readonly look: (Pick<Ahead, "name" | "says" | "minutes"> & { readonly left: number }) | null;
}

/** Odds from which two causes are told apart, and doubt that a look must take away to be worth naming. */
const APART = 3;
const WORTH = 0.1;
/** Draws on which a look's worth is reckoned: it is wanted to some hundredths. */
const ENOUGH = 800;

/** Expected variance of a quantity after a look. */
function left(
  posterior: Posterior,
  look: LookAhead,
  quantity: (explanation: Explanation, opened: number) => number,
  wanted: (explanation: Explanation) => boolean,
): { now: number; after: number } {
  const shows = normal(foretoldColumn(posterior, `will show ${look.name}`, wanted));
  const opened = posterior.columns.indexOf("opened");
  const wide = posterior.columns.length;
  const asked = pooled(
    posterior,
    ({ explanation, runs }, r, row) => quantity(explanation, runs[r]!.foretold[row * wide + opened]!),
    wanted,
  );
  const some = evenly(shows.weights, ENOUGH);
  const weights = Float64Array.from(some, () => 1 / some.length);
  const values = Float64Array.from(some, (i) => asked.values[i]!);
  const foretold = Float64Array.from(some, (i) => shows.values[i]!);
  const now = moments(values, weights).variance;
  const after =
    look.error === null
      ? varianceAfterYesNo(values, weights, foretold)
      : varianceAfter(values, weights, { foretold, error: look.error });
  return { now, after: Math.min(now, after) };
}

/** From this probability on that its line let go or that it no longer drives no look is told that runs the engine: dry clutches burn, hot fluid sprays. Assumed. */
const ENGINE_RESTS = 0.2;

/** Probability that the engine had better not run: its line let go, or it no longer drives, as it was seen or as the guesses foretell. */
function atRest(posterior: Posterior): number {
  const { evidence } = posterior.bench.visit;
  if (evidence.some((item) => item.kind === "first symptom" && item.symptom === "no drive")) return 1;
  const letGo = ({ cause }: Explanation) => cause === "line let go";
  const gone = posterior.weighed.reduce(
    (sum, { explanation, share }) => sum + (letGo(explanation) ? share : 0),
    0,
  );
  const stands = eventColumn("no drive");
  if (!posterior.columns.includes(stands)) return gone;
  const others = foretoldColumn(posterior, stands, (explanation) => !letGo(explanation));
  return gone + among(others, (when) => when < Infinity).share;
}

/** Looks that the evidence does not already hold, that there is something to look at for, and that do no harm. */
function stillToMake(posterior: Posterior): readonly LookAhead[] {
  const { visit } = posterior.bench;
  const rests = atRest(posterior) > ENGINE_RESTS;
  const has = (...kinds: Evidence["kind"][]) => visit.evidence.some(({ kind }) => kinds.includes(kind));
  const made: Readonly<Record<string, boolean>> = {
    "empty the shield": !visit.shield,
    "line pressure": has("line pressure"),
    "ask about the first spot": has("first spot"),
    "ask about the first slip": has("first symptom", "not felt"),
    "test the cooler": has("fluid in the coolant"),
    "drop the pan": has("sediment"),
    "open the unit": has("teardown"),
  };
  return looksAhead.filter(({ name, runsEngine }) => made[name] !== true && !(rests && runsEngine === true));
}

/** Looks by what they would leave of the spread of the opening date, the best first. */
export function ahead(posterior: Posterior): Ahead[] {
  return stillToMake(posterior)
    .map((look) => {
      const { now, after } = left(posterior, look, (_, opened) => opened, opensSince);
      return {
        name: look.name,
        says: look.says,
        minutes: look.minutes,
        now: Math.sqrt(now),
        after: Math.sqrt(after),
      };
    })
    .sort((a, b) => a.after - b.after || a.minutes - b.minutes);
}

/** The two likeliest causes, whether the evidence parts them, and what would. */
export function parting(posterior: Posterior): Parting {
  const shares = new Map<CauseName, number>();
  for (const { explanation, share } of posterior.weighed)
    shares.set(explanation.cause, (shares.get(explanation.cause) ?? 0) + share);
  const ranked = [...shares].sort((a, b) => b[1] - a[1]);
  const [first, most] = ranked[0]!;
  // Where one alone is believed in, there is no second.
  const [second, next] = ranked[1] ?? [first, 0];
  const share = most / (most + next);
  const either = ({ cause }: Explanation) => cause === first || cause === second;
  // Where one is all there is, there is nothing left to part.
  if (!(next > 1e-3 * most)) return { first, second, share, apart: true, look: null };
  const ail = posterior.weighed.some(({ explanation }) => explanation.ails && either(explanation));
  const looks = stillToMake(posterior)
    .filter(({ ofSymptoms }) => !(ofSymptoms === true && ail))
    .map((look) => {
      const { now, after } = left(posterior, look, ({ cause }) => (cause === first ? 1 : 0), either);
      return { name: look.name, says: look.says, minutes: look.minutes, left: now > 0 ? after / now : 1 };
    })
    .sort((a, b) => a.left - b.left);
  const best = looks[0]!;
  return { first, second, share, apart: most >= APART * next, look: best.left < 1 - WORTH ? best : null };
}
