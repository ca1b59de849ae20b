// The shipped case as data, and ways to spoil it.
import { join } from "node:path";
import { isCoded, type Fault } from "../../src/errors.ts";
import { readCase } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";

export const referenceData = join(import.meta.dirname, "../../reference-data");
export const caseFile = (name: string) => join(referenceData, "cases", `${name}.json`);

type Data = Record<string, unknown>;
// Four short rounds in place of eleven long ones, to be quick.
const full = caseData(caseFile("slow-seep")) as { week: { trips: object[] } };
const trips = full.week.trips.slice(0, 4).map((trip) => ({ ...trip, duration: "10 min" }));
const shipped = { ...full, week: { trips } };

/** Changes as path and value; undefined takes the key away. */
export type Change = readonly [path: string, value: unknown];

/** The slow seep with some places changed: `["build.fill", "3 L"]`, `["build.clutches.0.spring", "9 kN"]`. */
export function changed(...changes: readonly Change[]): unknown {
  const copy = structuredClone(shipped) as Data;
  for (const [path, value] of changes) {
    const keys = path.split(".");
    let at = copy;
    for (const key of keys.slice(0, -1)) at = at[key] as Data;
    const last = keys.at(-1)!;
    if (value === undefined) delete at[last];
    else at[last] = value;
  }
  return copy;
}

/** Every fault of a case; none when it reads. */
export function faultsOf(run: () => unknown): readonly Fault[] {
  try {
    run();
    return [];
  } catch (error) {
    if (isCoded(error)) return error.faults;
    throw error;
  }
}

export const faultsWith = (...changes: readonly Change[]) => faultsOf(() => readCase(changed(...changes)));
