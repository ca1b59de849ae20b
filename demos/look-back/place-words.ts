// What the places of a visit's file are called in a workshop: nobody who reads a report has seen the file.

import type { Evidence } from "../../src/lookback/evidence.ts";
import type { ReadVisit } from "../../src/inputs/visit.ts";

const kinds: Readonly<Record<Evidence["kind"], string>> = {
  "fluid missing": "fluid missing",
  "fluid drained": "fluid drained",
  dipstick: "dipstick",
  "off the dipstick": "dipstick",
  drops: "drops",
  "first spot": "first spot",
  "first symptom": "first symptom",
  "not felt": "not felt",
  "known full": "known full",
  looked: "look for a leak",
  "line pressure": "line pressure",
  "cooler flow": "cooler flow",
  sediment: "sediment in the pan",
  teardown: "teardown",
  "learned trim": "learned pressure",
  "learned fill": "learned fill time",
  "fluid in the coolant": "look into the coolant",
};

/** An item of the evidence by its kind. */
export const itemName = ({ kind, name }: Pick<Evidence, "kind" | "name">): string =>
  name === "lastFull" ? "last full" : kinds[kind];

const parts: Readonly<Record<string, string>> = {
  build: "transmission",
  fluid: "fluid",
  surroundings: "climate",
  leak: "place of the leak",
  shield: "shield underneath",
  use: "use",
  week: "week's trips",
  "use.roads": "roads",
  "lastFull.date": "date of the last full",
  "lastFull.odometer": "odometer at the last full",
  "lastFull.distanceAgo": "distance since the last full",
  "lastFull.checked": "level at the last full",
  "visit.odometer": "odometer at the visit",
};
const fields: Readonly<Record<string, string>> = {
  error: "how exact",
  dropVolume: "size of a drop",
  what: "what was felt",
  checked: "how it was checked",
  stays: "what the drain leaves",
  staysError: "how exact the rest is",
  by: "who added it",
  distanceSinceCleared: "since records were cleared",
  warmUpsSinceCleared: "since records were cleared",
};

/** Words for a place in the file; "evidence[1].dropVolume" is "drops: size of a drop". */
export function placeWords(path: string, { visit }: Pick<ReadVisit, "visit">): string {
  const found = /^(evidence|topUps)\[(\d+)\](?:\.(.*))?$/.exec(path);
  if (found === null) return parts[path] ?? apart(path);
  const [, list, index, field] = found;
  const item = visit.evidence.find(({ name }) => name === `evidence[${index!}]`);
  const whose =
    list === "topUps"
      ? `top-up ${Number(index) + 1}`
      : item === undefined
        ? `item ${Number(index) + 1}`
        : itemName(item);
  return field === undefined ? whose : `${whose}: ${fields[field] ?? apart(field)}`;
}

/** For a place without words yet: without dots and capitals. */
const apart = (path: string): string =>
  path
    .replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
    .replaceAll(".", ", ");
