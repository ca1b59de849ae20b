// One line of the bay card: what was read, the band in which a sound unit lies, and on which side of it the reading is.

import type { Band } from "./bands.ts";

export type ValueKind = "pressure" | "volume" | "flow" | "length" | "temperature" | "seconds" | "ratio";
export type Verdict = "within" | "below" | "above";

/** One line of the card. */
export interface BayRow {
  readonly test: string;
  readonly condition: string;
  readonly kind: ValueKind;
  /** SI; null when it was not reached at all (no gear, no overflow), which counts as above. */
  readonly value: number | null;
  readonly band: Band;
  readonly verdict: Verdict;
  /** A second band, from another source, that decides nothing. */
  readonly beside?: Band;
  readonly note?: string;
}

/** What was read and what it is held against. */
export type Reading = Pick<BayRow, "kind" | "value" | "band" | "beside" | "note">;

/** A line of the card with its verdict; the ends of a band are within. */
export function row(test: string, condition: string, reading: Reading): BayRow {
  return { test, condition, ...reading, verdict: verdictOf(reading.value, reading.band) };
}

function verdictOf(value: number | null, { low, high }: Band): Verdict {
  if (value === null || (high !== null && value > high)) return "above";
  return low !== null && value < low ? "below" : "within";
}
