// Reading and keeping cases and visits as files. The only file of this folder that needs Node; a page hands readCase its data itself.

import { randomUUID } from "node:crypto";
import { readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { codedError, type CodedError } from "../errors.ts";
import { readCase, type Case } from "./case.ts";
import { jsonBreak, type Place } from "./json-break.ts";
import { readVisit, type ReadVisit } from "./visit.ts";

/**
 * The case in a JSON file. Where it names files instead of holding their content they are put in first, with paths
 * from the case's own folder: `"build": "../van/build.json"`, and `"file": "monday.csv"` in a trip instead of `csv`.
 * Throws "bad-case" for a file that is missing or no JSON (with the line and column), and for all that `readCase` refuses.
 */
export function readCaseFile(path: string): Case {
  return readCase(caseData(path));
}

/**
 * The visit in a JSON file, with the files that it names put in as in a case. A visit without a build gets that of the invented van, and says
 * so. Throws as `readVisit` does.
 */
export function readVisitFile(path: string): ReadVisit {
  return readVisit(caseData(path, "the visit's file"), jsonIn(invented, "build"));
}

/** The build that stands in where none is given. */
const invented = join(import.meta.dirname, "../../reference-data/parcel-van/build.json");

/** The data of a case file, or a visit's, with everything it names put in, as `readCase` takes it. */
export function caseData(path: string, called = "case"): unknown {
  const folder = dirname(resolve(path));
  const data = jsonIn(path, called);
  if (!isRecord(data)) return data;
  const build = data["build"];
  const week = data["week"];
  return {
    ...data,
    ...(typeof build === "string" ? { build: jsonIn(resolve(folder, build), "build") } : {}),
    ...(isRecord(week) && Array.isArray(week["trips"])
      ? { week: { ...week, trips: week["trips"].map((trip: unknown, i) => withCsv(trip, folder, i)) } }
      : {}),
  };
}

/**
 * Writes a file so that a reader, or a power cut, finds either all of the old text or all of the new: into a temporary
 * file in the same folder, then under its name.
 */
export function saveText(path: string, text: string): void {
  const temporary = join(dirname(path), `.${randomUUID()}.tmp`);
  try {
    writeFileSync(temporary, text, { flag: "wx", flush: true });
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
}

function withCsv(trip: unknown, folder: string, i: number): unknown {
  if (!isRecord(trip) || typeof trip["file"] !== "string") return trip;
  const { file, ...rest } = trip;
  return { name: file, ...rest, csv: textIn(resolve(folder, String(file)), `week.trips[${i}].file`) };
}

function textIn(path: string, field: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    throw codedError("bad-case", [
      { path: field, expected: "the name of a file that can be read", given: path, example: "" },
    ]);
  }
}

function jsonIn(path: string, field: string): unknown {
  const text = textIn(path, field).replace(/^\uFEFF/, ""); // as some editors mark their files
  try {
    return JSON.parse(text);
  } catch (error) {
    const broken = jsonBreak(text);
    if (broken === null) throw error; // read by one grammar and not by the other: a fault of this program
    throw notJson(path, text, broken);
  }
}

const notJson = (path: string, text: string, broken: Place): CodedError => {
  const { line, column, wants: expected } = broken;
  return codedError("bad-case", [
    { path: `${path} line ${line}, column ${column}`, expected, given: standing(text, broken), example: "" },
  ]);
};

/** What stands at a place as it is written there: it has quotation marks of its own. */
function standing(text: string, { line, stands }: Place): string {
  if (stands === "") return line === text.split("\n").length ? "the end of the file" : "the end of the line";
  return stands.length > 60 ? `${stands.slice(0, 57)}...` : stands;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
