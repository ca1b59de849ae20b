// A visit as data, and ways to spoil it.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Fault } from "../../src/errors.ts";
import type { Evidence, EvidenceKind } from "../../src/lookback/evidence.ts";
import { readVisit, type ReadVisit } from "../../src/inputs/visit.ts";
import { faultsOf, referenceData } from "./shipped.ts";

export const van: unknown = JSON.parse(readFileSync(join(referenceData, "parcel-van/build.json"), "utf8"));
export const visitFile = (name: string) => join(referenceData, "visits", `${name}.json`);

/** Ten weeks and 2000 miles between the last full and the visit. */
export const plainVisit = {
  name: "a visit",
  leak: { place: "supply-line" },
  use: { roads: "town", distancePerWeek: "200 mi" },
  lastFull: { date: "2024-08-05", odometer: "60000 mi", checked: "hot dipstick" },
  visit: { date: "2024-10-14", odometer: "62000 mi" },
  evidence: [] as unknown[],
};

export const readWith = (more: object): ReadVisit => readVisit({ ...plainVisit, ...more }, van);
export const faultsIn = (more: object): readonly Fault[] => faultsOf(() => readWith(more));
export const pathsIn = (more: object): string[] => faultsIn(more).map(({ path }) => path);

/** What one item is read as. */
export function itemRead<K extends EvidenceKind>(kind: K, item: object): Extract<Evidence, { kind: K }> {
  const { visit } = readWith({ evidence: [item] });
  const found = visit.evidence.find(({ name }) => name === "evidence[0]");
  if (found?.kind !== kind) throw new Error(`read as ${found?.kind ?? "nothing"}`);
  return found as Extract<Evidence, { kind: K }>;
}
