// The early answer in a sentence.

import type { EvidenceKind } from "../../src/lookback/evidence.ts";
import type { ReadVisit } from "../../src/inputs/visit.ts";
import type { Spread } from "../../src/lookback/answer/spread.ts";
import { dayIn } from "./moments.ts";

/** What tells how much is gone or how fast it goes: without any of it there is nothing to say early. */
const tells: readonly EvidenceKind[] = [
  "fluid missing",
  "fluid drained",
  "dipstick",
  "off the dipstick",
  "drops",
];

/** Empty where nothing was measured yet that it could rest on; no date where nothing dripped, since there may be no leak to date. */
export function earlyWords(read: ReadVisit, { nineTenths }: Spread): string {
  if (!read.visit.evidence.some(({ kind }) => tells.includes(kind))) return "";
  const counts = read.visit.evidence.flatMap((item) => (item.kind === "drops" ? [item.count] : []));
  if (counts.length > 0 && counts.every((count) => count === 0))
    return "No drop was counted: whether there is a leak at all is asked first, and that is the full answer's.";
  const [from, to] = nineTenths.map((at) => dayIn(read, at));
  return `Roughly, by what is missing and drips alone, and if it was a slow leak, which is not asked yet: opened, 9 times in 10, between ${from!} and ${to!}. The full answer may differ.`;
}
