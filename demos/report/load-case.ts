// The case that was asked for, with the user's own drive in the place of its trips if there is one.

import { readFileSync } from "node:fs";
import { basename } from "node:path";
import type { Mending } from "../../src/driving/mend.ts";
import { codedError, isCoded, type Fault } from "../../src/errors.ts";
import { readCase, type Case } from "../../src/inputs/case.ts";
import { readTrace } from "../../src/inputs/csv.ts";
import { caseData } from "../../src/inputs/files.ts";
import type { Asked } from "./arguments.ts";

export interface Loaded {
  readonly given: Case;
  /** The case as it was written, for what it says about itself and its ranges. */
  readonly data: unknown;
}

/** What a case says of itself under its name, as that it is invented; nothing where it says nothing. */
export function aboutIn(data: unknown): string {
  const about = isRecord(data) ? data["about"] : undefined;
  return typeof about === "string" ? about : "";
}

/** Reads case and trace. Throws a coded error with the faults of both at once. */
export function loadCase({
  caseFile,
  trace,
  mend = {},
}: Pick<Asked, "caseFile" | "trace"> & Partial<Pick<Asked, "mend">>): Loaded {
  const faults: Fault[] = [];
  const drive = trace === null ? null : gathering(faults, () => drivenFrom(trace, mend));
  const data = gathering(faults, () => caseData(caseFile));
  const driven = drive === null || data === null ? data : everyTrip(data, drive);
  const given = data === null ? null : gathering(faults, () => readCase(driven));
  if (given === null || faults.length > 0) throw codedError("bad-case", faults);
  return { given, data: driven };
}

/** A user's drive as a trip tells it: its name, the text of its file, and what of it may be mended. */
interface Drive {
  readonly name: string;
  readonly csv: string;
  readonly mergeRepeats?: boolean;
  readonly bridgeGaps?: string;
  readonly leadIn?: string;
}

function drivenFrom(path: string, mend: Mending): Drive {
  const name = basename(path);
  const csv = textOf(path);
  readTrace(name, csv, { mend }); // tells its faults once, not once a trip
  const { mergeRepeats, bridgeGaps, leadIn } = mend;
  return {
    name,
    csv,
    ...(mergeRepeats === undefined ? {} : { mergeRepeats }),
    ...(bridgeGaps === undefined ? {} : { bridgeGaps: `${bridgeGaps} s` }),
    ...(leadIn === undefined ? {} : { leadIn: `${leadIn} m/s2` }),
  };
}

function textOf(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    const expected = "the name of a CSV file that can be read";
    throw codedError("bad-trace", [{ path: "--trace", expected, given: path, example: "" }]);
  }
}

/** The case with each trip's schedule replaced; days and times of day stay. What is no trip is left for the reader to refuse. */
function everyTrip(data: unknown, drive: Drive): unknown {
  if (!isRecord(data) || !isRecord(data["week"]) || !Array.isArray(data["week"]["trips"])) return data;
  const trips = data["week"]["trips"].map((trip: unknown) =>
    isRecord(trip) ? { schedule: "own", days: trip["days"], at: trip["at"], ...drive } : trip,
  );
  return { ...data, week: { ...data["week"], trips } };
}

/** Runs a step; keeps its faults and returns null when it has some. */
function gathering<T>(faults: Fault[], step: () => T): T | null {
  try {
    return step();
  } catch (error) {
    if (!isCoded(error)) throw error;
    faults.push(...error.faults);
    return null;
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
