// What was missing on the way, as bands: at even moments, and close to those at which the guesses say that it ran out.

import { CURVE, OWN } from "../foretell.ts";
import type { Posterior } from "../posterior.ts";
import { foretoldColumn, normal, spreadIn } from "./pool.ts";
import { quantile, sorted, type Spread } from "./spread.ts";

/** Missing now [m³ at fill temperature], and on the way: 5, 25, 50, 75, 95 % at so many moments in their order. */
export interface MissingAnswer {
  readonly now: Spread;
  readonly at: readonly number[];
  readonly bands: readonly (readonly [number, number, number, number, number])[];
}

const LEVELS = [0.05, 0.25, 0.5, 0.75, 0.95] as const;

export function missingIn(posterior: Posterior): MissingAnswer {
  const end = posterior.bench.visit.at;
  const column = (name: string) => foretoldColumn(posterior, name);
  const even = Array.from({ length: CURVE }, (_, i) => (end * i) / (CURVE - 1));
  const evenly = even.map((_, i) => column(`missing ${i}`).values);
  const moments = Array.from({ length: OWN }, (_, i) => column(`own moment ${i}`));
  const ownMissing = Array.from({ length: OWN }, (_, i) => column(`own missing ${i}`).values);
  const { weights } = normal(moments[0]!);
  const ownTimes = moments.flatMap(({ values }) => {
    const all = sorted(values, weights);
    return LEVELS.map((p) => quantile(all, p));
  });
  const at = [...new Set([...even, ...ownTimes])].sort((a, b) => a - b);
  const told = at.map(() => new Float64Array(weights.length));
  for (let g = 0; g < weights.length; g++) {
    const points = [
      ...even.map((x, i) => ({ x, y: evenly[i]![g]! })),
      ...moments.map(({ values }, i) => ({ x: values[g]!, y: ownMissing[i]![g]! })),
    ].sort((a, b) => a.x - b.x);
    let p = 0;
    at.forEach((moment, m) => {
      while (p < points.length - 2 && points[p + 1]!.x < moment) p++;
      const [a, b] = [points[p]!, points[p + 1]!];
      const share = b.x > a.x ? Math.min(1, Math.max(0, (moment - a.x) / (b.x - a.x))) : 0;
      told[m]![g] = a.y + share * (b.y - a.y);
    });
  }
  return {
    now: spreadIn(column("missing")),
    at,
    bands: told.map((values) => {
      const all = sorted(values, weights);
      return LEVELS.map((p) => quantile(all, p)) as unknown as MissingAnswer["bands"][number];
    }),
  };
}
