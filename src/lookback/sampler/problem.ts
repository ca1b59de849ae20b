// A question to be answered from evidence: unknown numbers with what was believed of them, and how well each guess explains what was seen.

import type { Belief } from "../../chance/belief.ts";

/** One unknown number. `jumps` are values at which the likelihood may jump, such as the age at which a look found nothing. */
export interface Unknown {
  readonly name: string;
  readonly belief: Belief;
  readonly jumps?: readonly number[];
}

/**
 * Unknowns, independent of one another before the evidence, and the logarithm of the likelihood of a guess (values in the order of
 * the unknowns; -Infinity where it is impossible, never NaN). The array is lent: it holds another guess at the next call.
 */
export interface Problem {
  readonly unknowns: readonly Unknown[];
  readonly logLikelihood: (values: Float64Array) => number;
  /** No less than `logLikelihood`, for less work: what even that would not let pass is not asked further. */
  readonly atMost?: (values: Float64Array) => number;
  /** What dear evidence adds to that. It is asked only where the cheap one has not already said no, and counts in full. */
  readonly further?: (values: Float64Array) => number;
}

/** Logarithm of the likelihood of all the evidence. */
export function wholeLikelihood({ logLikelihood, further }: Problem, values: Float64Array): number {
  const cheap = logLikelihood(values);
  return cheap === -Infinity || further === undefined ? cheap : cheap + further(values);
}

/** Weighted guesses that stand for an answer. */
export interface Draws {
  /** One row a guess: values in the order of the unknowns. */
  readonly values: Float64Array;
  readonly count: number;
  readonly dimensions: number;
  /** Weights that add up to 1. */
  readonly weights: Float64Array;
  /** Logarithm of the likelihood of each guess. */
  readonly logLikelihood: Float64Array;
  /** Logarithm of the evidence: how well the question as a whole explains what was seen. */
  readonly logEvidence: number;
}

/** One unknown's values among the draws. */
export function column({ values, count, dimensions }: Draws, unknown: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => values[i * dimensions + unknown]!);
}
