// One item of each kind as a visit's file writes it: what is told to whoever wrote one otherwise. The same stand in reference-data/visits/about.md.

import type { Fault } from "../errors.ts";
import { given } from "../units/parse.ts";
import { isRecord } from "./broken.ts";
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

/** Faults that name no example get their part's, those of items the item of their kind; of an unknown kind, the first of all. Those of items say which. */
export function withItems(faults: readonly Fault[], visit: object): Fault[] {
  return faults.map((fault) => {
    const [, list, index] = /^(evidence|topUps)\[(\d+)\]/.exec(fault.path) ?? [];
    const items: unknown = list === undefined ? undefined : Reflect.get(visit, list);
    const item: unknown = Array.isArray(items) ? items[Number(index)] : undefined;
    const words = list === undefined ? {} : { item: itemWords(list, Number(index) + 1, item) };
    // An item's word is best shown in its place: the item as a whole.
    const own = list === "evidence" && fault.expected.startsWith("one of") ? "" : fault.example;
    return { ...fault, ...words, example: own || exampleFor(fault.path, list, item) };
  });
}

function exampleFor(path: string, list: string | undefined, item: unknown): string {
  const part = partExamples[path];
  if (part !== undefined) return part;
  if (path === "evidence") return `[${exampleText(evidenceExamples["fluid missing"])}]`;
  if (list === "topUps") return exampleText(topUpExample);
  if (list === undefined) return "";
  const kind = isRecord(item) ? String(item["kind"]) : "";
  const known = Object.hasOwn(evidenceExamples, kind) ? (kind as EvidenceTree["kind"]) : "fluid missing";
  return exampleText(evidenceExamples[known]);
}

const dates = ["on", "about", "between", "before", "after", "notSeenBy", "until", "storedAt"];

/** "item 3, drops, 2024-10-12": its place counted from 1, its kind and its date as they are told. */
function itemWords(list: string, place: number, item: unknown): string {
  const told = isRecord(item) ? [item["kind"], ...dates.map((key) => item[key])].flat() : [];
  const words = told.filter((word) => typeof word === "string").map((word) => given(word).slice(1, -1));
  return [`${list === "topUps" ? "top-up" : "item"} ${place}`, ...words].join(", ");
}
