// Which inputs matter, read off the members of an ensemble without another run: ranks of inputs against ranks of the answer.

import { eventOf, valuesOf, type Measure } from "./bands.ts";
import type { Ensemble } from "./ensemble.ts";
import { quantiles } from "./quantiles.ts";
import { randomBits, shuffled } from "../chance/random.ts";

/** One input and how the answer hangs on it. */
export interface InputRank {
  readonly path: string;
  /** Spearman's rank correlation, -1 to 1: above 0 the event is later (or with more lost) the larger the input is. */
  readonly correlation: number;
  /** Its middle nine tenths when members are drawn again from the members. */
  readonly interval: readonly [number, number];
  /** Share of the variance of the answer's rank that the input alone explains, rising or not: 0 to 1. */
  readonly share: number;
  /** Whether its correlation or its share is more than chance reaches. */
  readonly class: "matters" | "cannot be told from chance";
}

export interface RankTable {
  /** Which method it is, in words. */
  readonly method: string;
  readonly key: string;
  readonly measure: Measure;
  readonly members: number;
  /** Members in which it had not happened by the end: they count as the last, all alike. */
  readonly later: number;
  /**
   * The largest correlation, of whatever sign, and the largest share that chance alone gives to any of so many inputs: one or
   * the other is passed by chance in one of twenty cases.
   */
  readonly chance: number;
  readonly chanceShare: number;
  /** What matters first, the strongest correlation first. */
  readonly inputs: readonly InputRank[];
}

const CLASSES = 8;
const RESAMPLES = 200;
const MIXES = 400;
/** One of twenty, for correlation and share together. */
const BY_CHANCE = 0.05 / 2;

/**
 * Ranks the inputs of an ensemble by what they do to an event: correlation of ranks (Spearman, 1904) and correlation ratio of
 * the rank over classes of the input with its bias taken off (Kelley, 1935), a first-order index from given data. An input
 * matters when one of both is more than the largest that answers dealt out at random give to any input (a permutation test of
 * the maximum, Westfall and Young, 1993, recalled). Cheap, and blind to what inputs do together: for that see `sobol`. The event's key is that of its band. Deterministic.
 */
export function rankInputs(
  { inputs, members, outcomes }: Pick<Ensemble, "inputs" | "members" | "outcomes">,
  key: string,
  measure: Measure = "running",
): RankTable {
  const n = outcomes.length;
  const answer = ranked(valuesOf(outcomes, key, measure));
  const columns = inputs.map((_, i) => ranked(members.map(({ values }) => values[i]!)));
  const all = Uint32Array.from({ length: n }, (_, m) => m);
  const again = Array.from({ length: RESAMPLES }, (_, r) => {
    const random = randomBits(r, n, 1);
    return Uint32Array.from({ length: n }, () => Math.floor(random() * n));
  });
  const orders = columns.map((column) =>
    Uint32Array.from(all).sort((a, b) => column[a]! - column[b]! || a - b),
  );
  const byChance = Array.from({ length: MIXES }, (_, r) => {
    const order = shuffled(n, randomBits(r, n, 2));
    const mixed = Float64Array.from(order, (m) => answer[m]!);
    return {
      correlation: columns.reduce(
        (most, column) => Math.max(most, Math.abs(correlation(column, mixed, all))),
        0,
      ),
      share: orders.reduce((most, order) => Math.max(most, explained(order, mixed)), 0),
    };
  });
  const most = (values: readonly number[]) => quantiles(values, [1 - BY_CHANCE])[0] ?? 1;
  const chance = most(byChance.map((one) => one.correlation));
  const chanceShare = most(byChance.map((one) => one.share));
  const ranks = inputs.map(({ path }, i): InputRank => {
    const column = columns[i]!;
    const [low, high] = quantiles(
      again.map((drawn) => correlation(column, answer, drawn)),
      [0.05, 0.95],
    );
    const found = correlation(column, answer, all);
    const share = explained(orders[i]!, answer);
    return {
      path,
      correlation: found,
      interval: [low!, high!],
      share,
      class: Math.abs(found) > chance || share > chanceShare ? "matters" : "cannot be told from chance",
    };
  });
  const last = (rank: InputRank) => (rank.class === "matters" ? 0 : 1);
  return {
    method: "rank correlation and given-data first-order share on the members; no joint effects",
    key,
    measure,
    members: n,
    later: outcomes.filter((outcome) => eventOf(outcome, key) === undefined).length,
    chance,
    chanceShare,
    inputs: ranks.sort(
      (a, b) =>
        last(a) - last(b) || Math.abs(b.correlation) - Math.abs(a.correlation) || (a.path < b.path ? -1 : 1),
    ),
  };
}

/** Ranks from 0; those that are equal share the middle of theirs. */
export function ranked(values: readonly number[]): Float64Array {
  const order = values
    .map((_, i) => i)
    .sort((a, b) => (values[a] === values[b] ? 0 : values[a]! < values[b]! ? -1 : 1));
  const ranks = new Float64Array(values.length);
  for (let from = 0; from < order.length;) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1]!] === values[order[from]!]) to++;
    for (let i = from; i <= to; i++) ranks[order[i]!] = (from + to) / 2;
    from = to + 1;
  }
  return ranks;
}

/** Pearson's correlation over the places given, which may come more than once; 0 where one of them never varies. */
export function correlation(x: Float64Array, y: Float64Array, places: Uint32Array): number {
  const n = places.length;
  let [sumX, sumY, sumXX, sumYY, sumXY] = [0, 0, 0, 0, 0];
  for (const i of places) {
    const [a, b] = [x[i]!, y[i]!];
    sumX += a;
    sumY += b;
    sumXX += a * a;
    sumYY += b * b;
    sumXY += a * b;
  }
  const spread = (sumXX - (sumX * sumX) / n) * (sumYY - (sumY * sumY) / n);
  return spread > 1e-9 ? Math.max(-1, Math.min(1, (sumXY - (sumX * sumY) / n) / Math.sqrt(spread))) : 0;
}

/** Share of the variance of y between classes of equally many, taken in an order, less what chance would give; 0 where there are too few. */
function explained(order: Uint32Array, y: Float64Array): number {
  const n = y.length;
  const classes = Math.min(CLASSES, Math.floor(n / 5));
  if (classes < 2) return 0;
  const mean = y.reduce((sum, value) => sum + value, 0) / n;
  let [between, whole] = [0, 0];
  for (const value of y) whole += (value - mean) ** 2;
  for (let c = 0; c < classes; c++) {
    const inside = order.subarray(Math.floor((c * n) / classes), Math.floor(((c + 1) * n) / classes));
    const middle = inside.reduce((sum, i) => sum + y[i]!, 0) / inside.length;
    between += inside.length * (middle - mean) ** 2;
  }
  if (whole === 0) return 0;
  return Math.max(0, 1 - ((1 - between / whole) * (n - 1)) / (n - classes));
}
