// Which laws a week uses, and how far, noted while it is prepared: by the losses that are walked.

import type { Outside } from "../history/outside.ts";
import type { UsedUpTo } from "./prepared.ts";

/** What has been used by the time that so much was lacking [kg]. */
export const usedUpTo = (lacking: number, { laws }: Outside): UsedUpTo => ({
  lacking,
  low: Float64Array.from(laws, ({ low }) => low),
  high: Float64Array.from(laws, ({ high }) => high),
});

/** What was used besides at a loss [kg lacking], and so at every larger one. */
export function alsoUsed(used: readonly UsedUpTo[], lacking: number, { laws }: Outside): void {
  for (const upTo of used) {
    if (upTo.lacking < lacking) continue;
    laws.forEach(({ low, high }, law) => {
      upTo.low[law] = Math.min(upTo.low[law]!, low);
      upTo.high[law] = Math.max(upTo.high[law]!, high);
    });
  }
}
