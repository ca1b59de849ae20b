// What a driver felt, or did not, and where the first spot lay.

import type { EventName } from "../history/watch.ts";
import { practice } from "./visit-assumed.ts";
import type { symptomWords } from "./visit-evidence-schema.ts";
import type { ItemOf, Told } from "./visit-item.ts";
import { momentOrVisit, whenOf } from "./visit-moments.ts";
import type { Seeing } from "./visit-seeing.ts";

/** What a driver feels, as the event that makes it. */
const symptoms: Readonly<Record<(typeof symptomWords)[number], EventName>> = {
  "slow into gear": "slow engagement, cold",
  "slow into gear, cold": "slow engagement, cold",
  "slow into gear, hot": "slow engagement, hot",
  flare: "first flare",
  slips: "first sustained slip",
  "lock-up slips": "lock-up slipping",
  "runs hot": "fluid too hot",
  "falls behind": "vehicle falls behind",
  "does not move": "no drive",
  whines: "first gulp of air",
};

export function firstSpot(item: ItemOf<"first spot">, path: string, seeing: Seeing): Told | null {
  const when = whenOf(seeing, path, item);
  return when === null ? null : { kind: "first spot", when };
}

export function firstSymptom(item: ItemOf<"first symptom">, path: string, seeing: Seeing): Told | null {
  if (item.what === "slow into gear")
    seeing.assume(
      `${path}.what`,
      "slow into gear: cold, unless hot is said",
      practice("the first that a driver notices is the morning's"),
    );
  const when = whenOf(seeing, path, item);
  return when === null ? null : { kind: "first symptom", symptom: symptoms[item.what], when };
}

export function notFelt(item: ItemOf<"not felt">, path: string, seeing: Seeing): Told {
  const until = momentOrVisit(seeing, `${path}.until`, item.until).at;
  return { kind: "not felt", symptom: symptoms[item.what], until };
}
