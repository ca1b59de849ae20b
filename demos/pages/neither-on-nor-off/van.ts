// The invented parcel van of this page, with one hole of the reader's choosing.

import build from "../../../reference-data/parcel-van/build.json" with { type: "json" };
import seep from "../../../reference-data/cases/slow-seep.json" with { type: "json" };
import { simulate, type History, type Progress } from "../../../src/history/simulate.ts";
import { readCase, type Case } from "../../../src/inputs/case.ts";
import { planOf } from "../../../src/inputs/plan.ts";

/** What the reader sets: hole [m], where it is, and the van's mass with its load [kg]. */
export interface Settings {
  readonly hole: number;
  readonly place: keyof typeof places;
  readonly mass: number;
  /** Longest time that is looked at [days]. */
  readonly days: number;
}

export const atFirst: Settings = { hole: 0.12e-3, place: "supply-line", mass: 2900, days: 90 };

/** Where each hole sits: over the pan's floor, and what of the line stands above it when parked. */
const places = {
  "supply-line": { height: "60 mm", lineAbove: "0.15 L", columnHeight: "0.2 m" },
  "return-line": { height: "60 mm", lineAbove: "0.10 L", columnHeight: "0.2 m" },
  pan: { height: "5 mm", lineAbove: "0 L", columnHeight: "0 m" },
  "shaft-seal": { height: "120 mm", lineAbove: "0 L", columnHeight: "0 m", fedBy: "converter-outlet" },
} as const;

/** The case that the settings describe, everything else as in the reference case of a slow seep. */
export function caseOf({ hole, place, mass, days }: Settings): Case {
  return readCase({
    ...seep,
    name: "one hole in the parcel van",
    build: { ...build, vehicle: { ...build.vehicle, mass: `${mass} kg` } },
    leak: {
      kind: "hole",
      place,
      ...places[place],
      dripRadius: "4 mm",
      hiding: { capacity: "0.1 L", carryOff: "0.05 1/h" },
      diameter: `${hole * 1e3} mm`,
      wall: "0.9 mm",
    },
    opens: { after: "1 day" },
    span: `${days} days`,
  });
}

/** The history of the settings' van. */
export function historyOf(settings: Settings, progress?: Progress): History {
  return simulate(planOf(caseOf(settings)), progress);
}
