// Evidence that no explanation can reconcile, named in pairs: each item alone has guesses that explain it, both together have none.

import type { Explanation } from "./causes.ts";
import type { Evidence } from "./evidence.ts";
import { askedOf, type Bench } from "./question.ts";
import { firstGuesses } from "./sampler/tempered.ts";
import { termOf } from "./terms.ts";
import { valuesOf } from "./sampler/moves.ts";

export interface Conflict {
  readonly first: string;
  readonly second: string;
  /** How much worse the best guess explains both than each alone, in the logarithm of probability. */
  readonly gap: number;
  readonly wayOut: string;
}

/** Guesses of each explanation that are tried, and the gap from which two items are told to conflict: odds of one to some thousands. */
const TRIED = 1500;
const GAP = 8;

export function conflictsOf(bench: Bench, explanations: readonly Explanation[], seed: number): Conflict[] {
  const { evidence } = bench.visit;
  const count = evidence.length;
  const alone = new Float64Array(count).fill(-Infinity);
  const both = new Float64Array(count * count).fill(-Infinity);
  const terms = new Float64Array(count);
  for (const explanation of explanations) {
    const problem = { unknowns: explanation.unknowns, logLikelihood: () => 0 };
    const { points } = firstGuesses(problem, TRIED, seed + 1);
    const values = new Float64Array(explanation.unknowns.length);
    for (let g = 0; g < TRIED; g++) {
      const asked = askedOf(bench, explanation, valuesOf(problem, points, g * values.length, values));
      for (let i = 0; i < count; i++) terms[i] = termOf(evidence[i]!, asked);
      for (let i = 0; i < count; i++) {
        alone[i] = Math.max(alone[i]!, terms[i]!);
        for (let j = 0; j < i; j++)
          both[i * count + j] = Math.max(both[i * count + j]!, terms[i]! + terms[j]!);
      }
    }
  }
  const found: Conflict[] = [];
  for (let i = 0; i < count; i++)
    for (let j = 0; j < i; j++) {
      const gap = alone[i]! + alone[j]! - both[i * count + j]!;
      if (gap > GAP)
        found.push({
          first: evidence[j]!.name,
          second: evidence[i]!.name,
          gap,
          wayOut: wayOutOf(evidence[j]!, evidence[i]!),
        });
    }
  return found.sort((a, b) => b.gap - a.gap);
}

/** What would reconcile two items, by their kinds. */
function wayOutOf(a: Evidence, b: Evidence): string {
  const kinds = [a.kind, b.kind];
  const has = (...some: Evidence["kind"][]) => some.some((kind) => kinds.includes(kind));
  const volume = has("fluid missing", "fluid drained", "dipstick", "off the dipstick");
  if (volume && has("drops")) return "a second leak, fluid added that nobody told of, or drops counted cold";
  if (volume && has("known full")) return "a wrong fill, or a level read cold or after a stand";
  if (volume && has("line pressure", "cooler flow"))
    return "a level read cold or after a stand, or a worn pump beside the leak";
  if (has("drops") && has("first spot", "looked"))
    return "drops counted cold or at another place, or a look that missed it";
  if (has("first symptom", "not felt") && volume)
    return "fluid added that nobody told of, or a symptom with another cause";
  if (has("first spot") && has("looked")) return "a spot from another vehicle, or a look that missed it";
  return "a date that is remembered wrongly, or another cause beside the leak";
}
