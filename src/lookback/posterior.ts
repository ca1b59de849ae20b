// What the evidence made of every explanation: its guesses, what they foretell, and its share.

import type { ClutchFate } from "../history/simulate.ts";
import type { Explanation } from "./causes.ts";
import type { Bench } from "./question.ts";
import type { Answered } from "./workbench.ts";

/** Guesses of one run, with what they foretell. */
export interface Run extends Answered {
  readonly seed: number;
}

/** One explanation with all its runs. */
export interface Weighed {
  readonly explanation: Explanation;
  /** Runs of their own, each from its own beginning: what differs between them is the sampler's own error. */
  readonly runs: readonly Run[];
  /** Logarithm of how well it explains the evidence, the mean of its runs. */
  readonly logEvidence: number;
  /** Its share after the evidence. */
  readonly share: number;
}

export interface Posterior {
  readonly bench: Bench;
  readonly columns: readonly string[];
  readonly weighed: readonly Weighed[];
  readonly conflicts: readonly Conflict[];
  /** Clutches of the guesses that were walked trip by trip. */
  readonly walked: readonly (readonly ClutchFate[])[];
}

/** Two items of evidence that no explanation can reconcile. */
export interface Conflict {
  readonly first: string;
  readonly second: string;
  /** How much worse the best guess explains both than each could be explained alone, in the logarithm of probability. */
  readonly gap: number;
  readonly wayOut: string;
}
