// The parcel van as the bench drives it: its unit without a leak, short of some fluid, and one round of forty minutes.
import { join } from "node:path";
import type { Ticks } from "../../src/driving/trace.ts";
import { newWalk, type Walk } from "../../src/history/walk.ts";
import { readCase, type Case } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";
import type { Unit } from "../../src/physics/build.ts";
import { fresh } from "../../src/physics/state.ts";

const path = join(import.meta.dirname, "../../reference-data/cases/slow-seep.json");
export const van: Case = readCase(caseData(path));
export const soundUnit: Unit = { ...van.unit, leak: null };
export const round: Ticks = van.week.days[0]![0]!.ticks;

/** The van, cold, short of so much fluid [m³]. */
export function walkOf(fillShort: number): Walk {
  return newWalk(soundUnit, fresh(soundUnit, 283.15, fillShort));
}
