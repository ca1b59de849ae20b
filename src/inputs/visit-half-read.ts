// What can still be looked at in an item of which a part could not be read, so that one run tells everything that is wrong with it.

import { clutchIs, volumeFits, type Seeing } from "./visit-seeing.ts";
import { momentIn, whenForms, whenOf } from "./visit-moments.ts";

const moments = ["on", "until", "storedAt"] as const;

/** Adds the faults of the item's moments, volume and clutch; nothing is assumed for an item that does not count. */
export function halfRead(item: unknown, path: string, seeing: Seeing): void {
  if (typeof item !== "object" || item === null) return;
  const told = item as Readonly<Record<string, unknown>>;
  for (const key of moments) if (told[key] !== undefined) momentIn(seeing, `${path}.${key}`, told[key]);
  if (whenForms.some((form) => told[form] !== undefined)) {
    const { error: _error, ...when } = told;
    whenOf({ ...seeing, assume: () => undefined }, path, when);
  }
  if (typeof told["volume"] === "number") volumeFits(told["volume"], `${path}.volume`, seeing);
  if (typeof told["clutch"] === "string") clutchIs(told["clutch"], path, seeing);
}
