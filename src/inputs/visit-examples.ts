// One item of each kind as a visit's file writes it: what is told to whoever wrote one otherwise. The same stand in reference-data/visits/about.md.

import type { Fault } from "../errors.ts";
import type { EvidenceTree } from "./visit-evidence-schema.ts";

export const evidenceExamples: Readonly<Record<EvidenceTree["kind"], object>> = {
  "fluid missing": { kind: "fluid missing", volume: "3 qt", error: "0.2 qt", by: "the shop's jug" },
  "added until it ran": { kind: "added until it ran", volume: "3 qt" },
  "fluid drained": { kind: "fluid drained", volume: "4 qt", stays: "4.6 L" },
  dipstick: { kind: "dipstick", temperature: "180 degF", reads: "below the low mark" },
  drops: { kind: "drops", count: 40, time: "1 min", engine: "idling hot" },
  "first spot": { kind: "first spot", about: "2024-09-14", error: "3 days" },
  "first symptom": { kind: "first symptom", what: "flare", between: ["2024-09-20", "61500 mi"] },
  "not felt": { kind: "not felt", what: "slips", until: "2024-10-01" },
  "known full": { kind: "known full", on: "2024-09-01", checked: "overflow plug" },
  looked: { kind: "looked", on: "2 weeks ago", how: "walk round", seen: false },
  "stored slip code": { kind: "stored slip code", distanceSinceStored: "120 mi" },
  "codes cleared": { kind: "codes cleared", distance: "410 mi", slipCodeSince: false },
  "learned trim": { kind: "learned trim", pressure: "50 kPa" },
  "learned fill": { kind: "learned fill", clutch: "direct clutch", time: "60 ms" },
  "line pressure": { kind: "line pressure", pressure: "65 psi" },
  "cooler flow": { kind: "cooler flow", flow: "4 L/min" },
  sediment: { kind: "sediment", amount: "grey film" },
  teardown: { kind: "teardown", clutch: "direct clutch", burnt: true, lining: "0.4 mm", steelTint: "straw" },
  "fluid in the coolant": { kind: "fluid in the coolant", found: false },
};

export const topUpExample = { on: "2024-09-20", volume: "1 qt", by: "the owner" };

/** Parts of a visit by their paths, as its file writes them. */
const partExamples: Readonly<Record<string, string>> = {
  name: '"the van, cooler line wet"',
  about: '"what is known of it"',
  leak: '{ "place": "supply-line" }',
  lastFull: '{ "date": "2024-08-05", "odometer": "60000 mi", "checked": "hot dipstick" }',
  "lastFull.checked": '"hot dipstick"',
  visit: '{ "date": "2024-10-14", "odometer": "62000 mi" }',
  "visit.date": '"2024-10-14"',
  use: '{ "roads": "town", "distancePerWeek": "200 mi" }',
  "use.roads": '"town"',
  shield: "true",
  seed: "1",
};

/** An item of a kind as it is written: in one line, with spaces as people set them. */
export const exampleText = (item: object): string =>
  JSON.stringify(item, null, 1)
    .replaceAll(/\n\s*/g, " ")
    .replaceAll(/\[ | \]/g, (bracket) => bracket.trim());

/** Faults that name no example get their part's, those of items the item of their kind; of an unknown kind, the first of all. */
export function withItems(faults: readonly Fault[], evidence: unknown): Fault[] {
  return faults.map((fault) => {
    const part = partExamples[fault.path];
    if (fault.example === "" && part !== undefined) return { ...fault, example: part };
    if (fault.example === "" && fault.path === "evidence")
      return { ...fault, example: `[${exampleText(evidenceExamples["fluid missing"])}]` };
    if (fault.example === "" && fault.path.startsWith("topUps["))
      return { ...fault, example: exampleText(topUpExample) };
    const place = /^evidence\[(\d+)\]/.exec(fault.path);
    if (place === null || fault.example !== "") return fault;
    const item: unknown = Array.isArray(evidence) ? evidence[Number(place[1])] : undefined;
    const kind = typeof item === "object" && item !== null && "kind" in item ? String(item.kind) : "";
    const known = Object.hasOwn(evidenceExamples, kind) ? (kind as EvidenceTree["kind"]) : "fluid missing";
    return { ...fault, example: exampleText(evidenceExamples[known]) };
  });
}
