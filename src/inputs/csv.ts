// A user's own drive as CSV: time and speed, perhaps grade and lateral acceleration, with units in the header.

import { dsvFormat } from "d3";
import { traceFrom } from "../driving/trace-from.ts";
import type { Trace } from "../driving/trace.ts";
import { codedError, isCoded, type Fault } from "../errors.ts";
import { given } from "../units/parse.ts";

type Column = "time" | "speed" | "grade" | "lateral";

/** Units of columns whose header names none, such as { speed: "mph" }. */
export type ColumnUnits = Partial<Record<Column, string>>;

const names: Record<Column, RegExp> = {
  time: /^(?:time|seconds|t)(?![a-z])/i,
  speed: /^(?:vehicle[ _])?(?:speed|velocity|v)(?![a-z])/i,
  grade: /^(?:grade|gradient|slope)(?![a-z])/i,
  lateral: /^(?:lateral(?:[ _]acceleration)?|ay)(?![a-z])/i,
};

// What one of each unit is in SI. A grade is rise over run, so it may stand without a unit.
const units: Record<Column, Record<string, number>> = {
  time: { s: 1, sec: 1, seconds: 1, ms: 1e-3, min: 60, h: 3600 },
  speed: { "m/s": 1, mps: 1, ms: 1, "km/h": 1 / 3.6, kmh: 1 / 3.6, kph: 1 / 3.6, mph: 0.44704 },
  grade: { "": 1, "-": 1, "1": 1, "m/m": 1, "%": 0.01, pct: 0.01, percent: 0.01 },
  lateral: { "m/s2": 1, "m/s^2": 1, "m/s²": 1, ms2: 1, mps2: 1, g: 9.80665 },
};
const inside: Record<Column, string> = { time: "s", speed: "m/s", grade: "", lateral: "m/s2" };
const examples: Record<Column, string> = {
  time: '"time [s]"',
  speed: '"speed [mph]"',
  grade: '"grade [%]"',
  lateral: '"lateral [m/s2]"',
};

/**
 * The drive in a CSV text, separated by commas, semicolons (then numbers may have a decimal comma) or tabs. The first line names the columns with their units:
 * "time [s],speed [mph]" or "time_s;speed_kmh"; other columns are left alone. What `traceFrom` refuses, refuses here
 * with the line numbers of the file. Throws "bad-trace" with every fault.
 */
export function traceFromCsv(name: string, text: string, unitsOf: ColumnUnits = {}): Trace {
  const faults: Fault[] = [];
  const firstLine = /^[^\r\n]*/.exec(text.replace(/^\uFEFF/, ""))![0];
  const separator = [";", "\t"].find((mark) => firstLine.includes(mark)) ?? ",";
  const rows = dsvFormat(separator).parseRows(text.replace(/^\uFEFF/, ""));
  const numberOf = separator === ";" ? (cell?: string) => plainNumber(cell?.replace(",", ".")) : plainNumber;
  const header = (rows[0] ?? []).map((cell) => cell.trim());
  const found = (["time", "speed", "grade", "lateral"] as const).flatMap((column) => {
    const places = header.flatMap((cell, at) => (names[column].test(cell) ? [at] : []));
    const required = column === "time" || column === "speed";
    if (places.length > 1 || (required && places.length === 0))
      faults.push({
        path: `${name} line 1`,
        expected: `one column named ${column}, with its unit`,
        given: given(firstLine),
        example: examples[column],
      });
    if (places.length === 0) return [];
    const cell = header[places[0]!]!;
    const factor = factorOf(column, cell, unitsOf[column]);
    if (factor === undefined)
      faults.push({
        path: `${name} line 1`,
        expected: `the unit of ${column}: ${Object.keys(units[column])
          .filter((unit) => unit !== "")
          .join(", ")}`,
        given: given(cell),
        example: examples[column],
      });
    return [{ column, at: places[0]!, factor: factor ?? Number.NaN }];
  });
  if (faults.length > 0) throw codedError("bad-trace", faults);

  // Blank lines and remarks are passed over; `lines` remembers where each row stood.
  const kept = rows.flatMap((row, i) =>
    i > 0 && row.some((cell) => cell.trim() !== "") && !row[0]!.trim().startsWith("#")
      ? [{ row, line: i + 1 }]
      : [],
  );
  const columns = Object.fromEntries(
    found.map(({ column, at, factor }) => [
      column,
      Float64Array.from(kept, ({ row }) => numberOf(row[at]) * factor),
    ]),
  ) as Partial<Record<Column, Float64Array>> & Record<"time" | "speed", Float64Array>;
  faults.push(
    ...kept.flatMap(({ row, line }) =>
      found.flatMap(({ column, at }) =>
        Number.isNaN(numberOf(row[at]))
          ? [
              {
                path: `${name} line ${line}, ${column}`,
                expected: "a number",
                given: given(row[at]?.trim()),
                example: "12.5",
              },
            ]
          : column === "time" && numberOf(row[at]) < 0
            ? [
                {
                  path: `${name} line ${line}, time`,
                  expected: "a time of 0 or more",
                  given: row[at]!.trim(),
                  example: "0",
                },
              ]
            : [],
      ),
    ),
  );
  try {
    const trace = traceFrom({ name, ...columns });
    if (faults.length === 0) return trace;
  } catch (error) {
    if (!isCoded(error)) throw error;
    faults.push(
      ...error.faults
        .filter((fault) => fault.given !== "NaN")
        .map((fault) => withLine(fault, name, kept, header, found)),
    );
  }
  throw codedError("bad-trace", faults);
}

function factorOf(column: Column, cell: string, stated: string | undefined): number | undefined {
  const bracketed = /[[(]\s*(.*?)\s*[\])]\s*$/.exec(cell)?.[1];
  const suffix = /[ _]([^ _]+)$/.exec(cell)?.[1];
  const known = units[column];
  const own = [bracketed, suffix].find(
    (unit) => unit !== undefined && Object.hasOwn(known, unit.toLowerCase()),
  );
  const unit =
    own ??
    (bracketed === undefined ? stated : undefined) ??
    (column === "grade" && bracketed === undefined ? "" : undefined);
  return unit === undefined
    ? undefined
    : Object.hasOwn(known, unit.toLowerCase())
      ? known[unit.toLowerCase()]
      : undefined;
}

function plainNumber(cell: string | undefined): number {
  const text = (cell ?? "").trim();
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/.test(text) ? Number(text) : Number.NaN;
}

// Row numbers of the trace become line numbers of the file, and what is given stands as it was written there.
function withLine(
  fault: Fault,
  name: string,
  kept: readonly { readonly row: readonly string[]; readonly line: number }[],
  header: readonly string[],
  found: readonly { readonly column: Column; readonly at: number }[],
): Fault {
  const at = /^(.*)\.(\w+)\[(\d+)\]$/.exec(fault.path);
  const expected = fault.expected.replace(/row (\d+)/, (_, row: string) => `line ${kept[Number(row)]?.line}`);
  const there = at === null ? undefined : kept[Number(at[3])];
  if (at === null || there === undefined) return { ...fault, expected };
  const column = found.find((one) => one.column === at[2]);
  const written =
    column === undefined || column.column === "time"
      ? ""
      : `, written ${given(there.row[column.at]?.trim())} under ${given(header[column.at])}`;
  return {
    ...fault,
    path: `${name} line ${there.line}, ${at[2]}`,
    expected,
    given: `${fault.given}${written === "" ? "" : ` ${inside[at[2] as Column]}`.trimEnd()}${written}`,
  };
}
