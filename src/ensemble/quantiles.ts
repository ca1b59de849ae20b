// Quantiles of a sample of which some are known only to lie beyond the end.

import { impossible } from "../errors.ts";

/** The shares at which bands are told. */
export const bandShares = [0.05, 0.25, 0.5, 0.75, 0.95] as const;

/** Quantiles at `bandShares`; null is "later than the end". */
export type Band = readonly (number | null)[];

/**
 * Quantiles of values in any order: linear between neighbours (type 7 of Hyndman and Fan, 1996, recalled). Infinity stands
 * for what had not happened by the end: it counts, above all others, and a quantile that reaches it is null. No values, no
 * band. Throws on NaN.
 */
export function quantiles(
  values: readonly number[] | Float64Array,
  shares: readonly number[] = bandShares,
): Band {
  const sorted = Float64Array.from(values).sort();
  const n = sorted.length;
  if (n === 0) return shares.map(() => null);
  if (Number.isNaN(sorted[n - 1])) impossible("values", Number.NaN, "numbers");
  return shares.map((share) => {
    const at = share * (n - 1);
    const below = Math.floor(at);
    const low = sorted[below]!;
    const high = sorted[Math.min(n - 1, below + 1)]!;
    if (!Number.isFinite(low) || (at > below && !Number.isFinite(high))) return null;
    return at > below ? low + (at - below) * (high - low) : low;
  });
}
