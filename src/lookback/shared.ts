// Errors that several items share. What one person or one jug gets wrong is wrong each time alike; what hides a leak from one look hides it from the next.
// Each is an unknown of its own, in standard errors, that every item which has it is asked with: so nothing is taken twice for independent.

import { logNormalBelow, normalQuantile } from "../chance/normal.ts";
import { assumed } from "./assumed.ts";
import type { Evidence, LookKind } from "./evidence.ts";
import type { Believed } from "./laws.ts";
import type { Visit } from "./visit.ts";

/** By how much a guess takes a measure to tell too much, a look to see too well [standard errors]; undefined where nothing shares it, so that each item's error is its own. */
export type SharedErrors = (name: string) => number | undefined;

/** Share of the variance of a measured volume that is its measure's and comes again each time; the rest is the level's and the eye's. Assumed. */
export const ALIKE = 0.5;
/** How alike two looks of one kind are, whatever the leak: the correlation of what makes either find it. Assumed. */
export const SAME_EYES = 0.5;

export const volumesBy = (by: string): string => `volumes told by ${by}`;
export const looksBy = (look: LookKind): string => `looks of the kind "${look}"`;

/** The name of the error that an item may share with others. */
function sharedBy(item: Evidence): string | undefined {
  if (item.kind === "looked") return looksBy(item.look);
  return (item.kind === "fluid missing" || item.kind === "fluid drained") && item.by !== undefined
    ? volumesBy(item.by)
    : undefined;
}

/** The shared errors of a visit: of everything poured in, and of what two items or more have in common. */
export function sharedUnknowns({ added, evidence }: Pick<Visit, "added" | "evidence">): Believed[] {
  const poured = added.map(({ by }) => volumesBy(by));
  const items = evidence.flatMap((item) => sharedBy(item) ?? []);
  const names = [...poured, ...items.filter((name, i) => items.indexOf(name) !== i || poured.includes(name))];
  return [...new Set(names)].map((name) => ({
    name,
    belief: { law: "normal", middle: 0, spread: 1 },
    unit: "standard errors",
    per: 1,
    origin: assumed(
      name.startsWith("looks")
        ? "the same eyes, light and shield each time: half of what decides whether a look finds a leak comes again at the next"
        : "one measure, or one memory, is too large or too small each time",
    ),
  }));
}

/** What a shared error makes of a volume that was measured: what is read over what was there, and the error that is left [m³]. */
export function measuredBy(
  by: string | undefined,
  error: number,
  shared: SharedErrors,
): { readonly more: number; readonly error: number } {
  const common = by === undefined ? undefined : shared(volumesBy(by));
  if (common === undefined) return { more: 0, error };
  return { more: Math.sqrt(ALIKE) * error * common, error: Math.sqrt(1 - ALIKE) * error };
}

/**
 * Logarithm of the probability that a look which sees a leak with probability p (from 0 to below 1) sees it, or not, given what looks of its kind
 * share: it sees with Φ((Φ⁻¹(p) + √ρ·u)/√(1 - ρ)), u the shared part. Over all that u may be that is p again: a look that is alone is as good as
 * ever, and twenty that found nothing are not twenty times one. Source of the form: Vasicek, Loan portfolio value, 2002 (recalled): one factor behind many yes-or-no outcomes.
 */
export function logLook(sees: boolean, p: number, common: number | undefined): number {
  if (common === undefined) return sees ? Math.log(p) : Math.log1p(-p);
  const z = (normalQuantile(p) + Math.sqrt(SAME_EYES) * common) / Math.sqrt(1 - SAME_EYES);
  return logNormalBelow(sees ? z : -z);
}
