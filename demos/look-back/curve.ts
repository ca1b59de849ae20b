// What was missing over time, with what was measured of it, as its picture takes it.

import type { MissingCurve } from "../../src/plots/missing-curve.ts";
import type { Telling } from "./told.ts";

export function curveOf({ read, answer: { missing } }: Telling): MissingCurve {
  return {
    calendar: read.clock,
    at: missing.at,
    bands: missing.bands,
    measured: read.visit.evidence.flatMap((item) =>
      item.kind === "fluid missing"
        ? [{ at: item.at, volume: item.volume, error: item.error }]
        : item.kind === "known full"
          ? [{ at: item.at, volume: 0, error: item.error }]
          : [],
    ),
    added: read.visit.added.map(({ at }) => at),
  };
}
