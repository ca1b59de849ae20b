// Errors that several items share. What one person or one jug gets wrong is wrong each time alike.
// Each is an unknown of its own, in standard errors, that every item which has it is asked with: so nothing is taken twice for independent.

import { assumed } from "./assumed.ts";
import type { Evidence } from "./evidence.ts";
import type { Believed } from "./laws.ts";
import type { Visit } from "./visit.ts";

/** By how much a guess takes a measure to tell too much, a look to see too well [standard errors]; undefined where nothing shares it, so that each item's error is its own. */
export type SharedErrors = (name: string) => number | undefined;

/** Share of the variance of a measured volume that is its measure's and comes again each time; the rest is the level's and the eye's. Assumed. */
export const ALIKE = 0.5;

export const volumesBy = (by: string): string => `volumes told by ${by}`;

/** The name of the error that an item may share with others. */
function sharedBy(item: Evidence): string | undefined {
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
    origin: assumed("one measure, or one memory, is too large or too small each time"),
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
