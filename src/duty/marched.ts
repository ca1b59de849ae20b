// A plan marched over a prepared week: the march is kept with the week, so that thousands of histories allocate next to nothing.

import type { Plan } from "../history/simulate.ts";
import { begin, newMarch, type March } from "./course.ts";
import { marchOn } from "./march.ts";
import type { Prepared } from "./prepared.ts";

interface Kept {
  readonly march: March;
  readonly enough: number;
  /** The plan that was marched last, and the week in which it stopped. */
  plan: Plan | undefined;
  reached: number;
}

const kept = new WeakMap<Prepared, Kept>();

/** The march goes on so much beyond the least loss that ends it [kg]: it may hang on a trip that comes once a week. */
const BEYOND = 0.6;

/** The march of a plan and the week in which it stopped; lent until another plan is marched over the same week. Who asks for the same plan again gets the same march. */
export function marched(prepared: Prepared, plan: Plan): { readonly march: March; readonly reached: number } {
  let known = kept.get(prepared);
  if (known === undefined) {
    known = { march: newMarch(prepared, plan), enough: enoughFor(prepared), plan: undefined, reached: 0 };
    kept.set(prepared, known);
  }
  if (known.plan !== plan) {
    known.plan = undefined;
    begin(known.march, plan);
    known.reached = marchOn(known.march, known.enough);
    known.plan = plan;
  }
  return known;
}

/** So much lacking [kg] is enough: the worst has come whatever the air. */
function enoughFor({ thresholds, climates }: Prepared): number {
  const burns = climates.map((_, a) =>
    Math.min(
      ...thresholds
        .filter(({ name }) => name === "no drive" || name === "damage 1")
        .flatMap(({ moments }) => moments[a]!.map(({ critical }) => critical)),
    ),
  );
  return Math.max(...burns) + BEYOND;
}
