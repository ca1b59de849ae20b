// What is ruined beside the leak, in the cases in which it comes together: a burnt clutch and the debris that it sheds are one fate.

import type { Explanation } from "../causes.ts";
import { eventColumn } from "../foretell.ts";
import type { Posterior } from "../posterior.ts";
import { AILS } from "../terms.ts";
import { byWalks } from "./clutches.ts";
import { pooled } from "./pool.ts";

/** Cases that are alike in what they have ruined, and their share of all. */
export interface RuinedAnswer {
  readonly share: number;
  /** A clutch or brake of the gears has lost half of what it had to spare; so has the lock-up clutch; one of either has burnt. */
  readonly clutches: boolean;
  readonly lockUp: boolean;
  readonly burnt: boolean;
}

/** What has lost half, and what all, of what it had to spare: a bit for each clutch of the gears in their order, the last one for the lock-up's. */
interface Bits {
  readonly half: number;
  readonly all: number;
  readonly weight: number;
}

/** Shares of all cases, the largest first; they rest on what the clutches' own rest on (`ClutchAnswer.of`). */
export function ruinedIn(posterior: Posterior): RuinedAnswer[] {
  const { clutches, lockUp } = posterior.bench.visit.unit.build;
  const names = [...clutches.map(({ name }) => name), lockUp.clutch.name];
  const last = 1 << clutches.length;
  const cases = byWalks(posterior) ? walkedBits(posterior) : foretoldBits(posterior, names);
  const kinds = new Map<number, RuinedAnswer>();
  for (const { half, all, weight } of cases) {
    const kind = ((half & (last - 1)) > 0 ? 1 : 0) + ((half & last) > 0 ? 2 : 0) + (all > 0 ? 4 : 0);
    const share = (kinds.get(kind)?.share ?? 0) + weight;
    kinds.set(kind, {
      share,
      clutches: (kind & 1) > 0,
      lockUp: (kind & 2) > 0,
      burnt: (kind & 4) > 0,
    });
  }
  return [...kinds.values()].filter(({ share }) => share > 0).sort((a, b) => b.share - a.share);
}

const walkedBits = ({ walked }: Posterior): Bits[] =>
  walked.map((fates) => {
    const bits = (from: number) =>
      fates.reduce((sum, { damage }, i) => sum | (damage >= from ? 1 << i : 0), 0);
    return { half: bits(0.5), all: bits(1), weight: 1 / walked.length };
  });

/** Nothing foretells what a sudden loss or a unit that ails otherwise has burnt: a share of them, as a teardown is weighed. */
const isForetold = ({ cause, ails }: Explanation): boolean => cause !== "line let go" && !ails;

function foretoldBits(posterior: Posterior, names: readonly string[]): Bits[] {
  const wide = posterior.columns.length;
  const came = (damage: string): Float64Array => {
    const columns = names.map((name) => posterior.columns.indexOf(eventColumn(damage, name)));
    return pooled(posterior, ({ runs }, r, row) =>
      columns.reduce(
        (sum, c, i) => sum | (c >= 0 && runs[r]!.foretold[row * wide + c]! < Infinity ? 1 << i : 0),
        0,
      ),
    ).values;
  };
  const [half, all] = [came("damage 0.5"), came("damage 1")];
  const { weights, values: foretold } = pooled(posterior, ({ explanation }) =>
    isForetold(explanation) ? 1 : 0,
  );
  return Array.from(weights).flatMap((weight, i) =>
    foretold[i] === 1
      ? [{ half: half[i]!, all: all[i]!, weight }]
      : [
          { half: 1, all: 1, weight: AILS * weight },
          { half: 0, all: 0, weight: (1 - AILS) * weight },
        ],
  );
}
