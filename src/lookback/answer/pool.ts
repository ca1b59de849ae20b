// All guesses of all explanations in one heap, each with what it is worth.

import type { Explanation } from "../causes.ts";
import { sorted, spreadOf, type Spread } from "./spread.ts";
import type { Posterior, Weighed } from "../posterior.ts";

/** A column of numbers with weights that add up to `share`. */
export interface Column {
  readonly values: Float64Array;
  readonly weights: Float64Array;
  readonly share: number;
}

/** What each run of an explanation is worth among them: its guesses and its own evidence against the others'. */
function worths({ runs, share }: Weighed): number[] {
  const most = Math.max(...runs.map(({ answer }) => answer.logEvidence));
  const parts = runs.map(
    ({ answer }) => answer.count * (most === -Infinity ? 1 : Math.exp(answer.logEvidence - most)),
  );
  const all = parts.reduce((sum, part) => sum + part, 0);
  return parts.map((part) => (share * part) / all);
}

/** Any number of every guess, of those explanations that are wanted, with their weights. */
export function pooled(
  { weighed }: Posterior,
  read: (weighed: Weighed, run: number, row: number) => number,
  wanted: (explanation: Explanation) => boolean = () => true,
): Column {
  const chosen = weighed.filter(({ explanation, share }) => share > 0 && wanted(explanation));
  const count = chosen.reduce(
    (sum, { runs }) => sum + runs.reduce((all, { answer }) => all + answer.count, 0),
    0,
  );
  const [values, weights] = [new Float64Array(count), new Float64Array(count)];
  let at = 0;
  for (const one of chosen) {
    const worth = worths(one);
    for (const [r, { answer }] of one.runs.entries())
      for (let row = 0; row < answer.count; row++, at++) {
        values[at] = read(one, r, row);
        weights[at] = worth[r]! * answer.weights[row]!;
      }
  }
  return { values, weights, share: chosen.reduce((sum, { share }) => sum + share, 0) };
}

/** A foretold column by its name. */
export function foretoldColumn(
  posterior: Posterior,
  name: string,
  wanted?: (explanation: Explanation) => boolean,
): Column {
  const c = posterior.columns.indexOf(name);
  const wide = posterior.columns.length;
  return pooled(posterior, ({ runs }, r, row) => runs[r]!.foretold[row * wide + c]!, wanted);
}

/** Weights that add up to 1. */
export const normal = ({ values, weights, share }: Column): Column => ({
  values,
  weights: weights.map((weight) => weight / share),
  share: 1,
});

/** The rows for which something holds, with their share of the whole. */
export function among({ values, weights }: Column, holds: (value: number, at: number) => boolean): Column {
  const kept: number[] = [];
  for (let i = 0; i < values.length; i++) if (holds(values[i]!, i)) kept.push(i);
  const share = kept.reduce((sum, i) => sum + weights[i]!, 0);
  return {
    values: Float64Array.from(kept, (i) => values[i]!),
    weights: Float64Array.from(kept, (i) => weights[i]!),
    share,
  };
}

export const meanOf = ({ values, weights, share }: Column): number =>
  values.reduce((sum, value, i) => sum + (weights[i]! > 0 ? value * weights[i]! : 0), 0) / share;

/** Rows in even steps through weights: each stands for as much as any other. */
export function evenly(weights: Float64Array, count: number): Int32Array {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const some = new Int32Array(count);
  let [at, sum] = [0, weights[0] ?? 0];
  for (let i = 0; i < count; i++) {
    while (sum < ((i + 0.5) / count) * all && at < weights.length - 1) sum += weights[++at]!;
    some[i] = at;
  }
  return some;
}

/** So many guesses in even steps through all of them, each with its explanation. */
export function someGuesses(
  posterior: Posterior,
  count: number,
): { readonly one: Weighed; readonly values: Float64Array }[] {
  const rows: [Weighed, number, number][] = [];
  const { weights } = pooled(posterior, (one, r, row) => rows.push([one, r, row]));
  return Array.from(evenly(weights, count), (at) => {
    const [one, r, row] = rows[at]!;
    const { values, dimensions } = one.runs[r]!.answer;
    return { one, values: values.slice(row * dimensions, (row + 1) * dimensions) };
  });
}

/** Below this probability of its condition nothing is told of when or how much. */
export const HARDLY = 0.02;

/** How a column spreads. */
export const spreadIn = (column: Column): Spread => {
  const { values, weights } = normal(column);
  return spreadOf(sorted(values, weights));
};
