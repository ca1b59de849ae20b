// What a teardown would show: how far gone each clutch is.

import type { ClutchFate } from "../../history/simulate.ts";
import { eventColumn } from "../foretell.ts";
import type { Posterior } from "../posterior.ts";
import { among, foretoldColumn } from "./pool.ts";
import { sorted, spreadOf, type Spread } from "./spread.ts";

export interface ClutchAnswer {
  readonly name: string;
  /** Probability that a tenth, half, all of what it has to spare is gone: damage index over 0.1, 0.5, 1. */
  readonly hurt: number;
  readonly half: number;
  readonly burnt: number;
  /** So many guesses, walked trip by trip, are all that these probabilities rest on; null: they are those of all guesses. */
  readonly of: number | null;
  /** Of the guesses that were walked trip by trip; null when none was. */
  readonly walked: {
    readonly damage: Spread;
    readonly slips: Spread;
    /** Hottest friction surface [K], and heat of slips [J]. */
    readonly hottest: Spread;
    readonly slipHeat: Spread;
    /** Lining worn [m], share charred and glazed [-]. */
    readonly worn: Spread;
    readonly charred: Spread;
    readonly glazed: Spread;
  } | null;
}

/** Averages do not tell what a sudden loss burns: where it was one more likely than not, those guesses do that were driven trip by trip. */
export const byWalks = ({ walked, weighed }: Posterior): boolean =>
  walked.length > 0 &&
  weighed.reduce((sum, one) => sum + (one.explanation.cause === "line let go" ? one.share : 0), 0) > 0.5;

export function clutchesIn(posterior: Posterior): ClutchAnswer[] {
  const { build } = posterior.bench.visit.unit;
  const { walked } = posterior;
  const driven = byWalks(posterior);
  return [...build.clutches, build.lockUp.clutch].map(({ name }, i) => {
    const spread = (read: (fate: ClutchFate) => number) =>
      spreadOf(sorted(walked.map((clutches) => read(clutches[i]!))));
    const chance = (damage: "0.1" | "0.5" | "1") => {
      if (driven)
        return walked.filter((clutches) => clutches[i]!.damage >= Number(damage)).length / walked.length;
      const c = eventColumn(`damage ${damage}`, name);
      return posterior.columns.includes(c)
        ? among(foretoldColumn(posterior, c), (when) => when < Infinity).share
        : 0;
    };
    return {
      name,
      hurt: chance("0.1"),
      half: chance("0.5"),
      burnt: chance("1"),
      of: driven ? walked.length : null,
      walked:
        walked.length === 0
          ? null
          : {
              damage: spread(({ damage }) => damage),
              slips: spread(({ slips }) => slips),
              hottest: spread(({ hottest }) => hottest),
              slipHeat: spread(({ slipEnergy }) => slipEnergy),
              worn: spread(({ worn }) => worn),
              charred: spread(({ charred }) => charred),
              glazed: spread(({ glazed }) => glazed),
            },
    };
  });
}
