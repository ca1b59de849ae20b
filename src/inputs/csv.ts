// A user's own drive as CSV: time and speed, perhaps grade and lateral acceleration, with units in the header.

import { mendTrace, type Mending } from "../driving/mend.ts";
import { traceFrom, type TraceColumns } from "../driving/trace-from.ts";
import type { Trace } from "../driving/trace.ts";
import { codedError, isCoded, type Fault } from "../errors.ts";
import { given } from "../units/parse.ts";
import { numberIn, tableOf, type Row, type Table } from "./csv-table.ts";
import { columnNames, factorOf, readAs, unitsSaid, type Column } from "./csv-units.ts";

/** Units of columns whose header names none, such as { speed: "mph" }. */
export type ColumnUnits = Partial<Record<Column, string>>;

/** How a CSV is read: units that it does not name, and what of it may be mended. */
export interface CsvOptions {
  readonly units?: ColumnUnits;
  readonly mend?: Mending;
}

/** A drive that was read, and all that was passed over, taken for granted or mended on the way, a sentence each. */
export interface ReadTrace {
  readonly trace: Trace;
  readonly remarks: readonly string[];
}

const inside: Record<Column, string> = { time: "s", speed: "m/s", grade: "", lateral: "m/s2" };
const examples: Record<Column, string> = {
  time: '"time [s]"',
  speed: '"speed [mph]"',
  grade: '"grade [%]"',
  lateral: '"lateral [m/s2]"',
};

interface Found {
  readonly column: Column;
  readonly at: number;
  readonly factor: number;
}

/**
 * The drive in a CSV text as `readTrace` reads it, unmended and without its remarks. A drive that begins at a speed is driven
 * from standstill all the same, and so covers less than it says (`statistics` tells its `startSpeed`).
 */
export function traceFromCsv(name: string, text: string, unitsOf: ColumnUnits = {}): Trace {
  return readTrace(name, text, { units: unitsOf }).trace;
}

/**
 * The drive in a CSV text, separated by commas, semicolons, tabs or blanks (numbers may have a decimal comma where commas do not
 * part columns). A line names time and speed with their units, perhaps grade and lateral acceleration: "time [s],speed [mph]",
 * "time_s;speed_kmh", "Test Time, secs" (in quotes among commas), "seconds", "cycMps"; units may also stand on a line of their own under
 * the names. Title lines before it, remarks (#), blank lines and other columns are left alone. Two columns without a header are time
 * and speed in the units of the options. Repeated times, gaps while moving and a rolling start are mended as far as `mend` asks;
 * what was done, and a rolling start that was left, is told in `remarks`.
 * What `traceFrom` refuses, refuses here with the line numbers of the file. Throws "bad-trace" with every fault.
 */
export function readTrace(name: string, text: string, { units = {}, mend = {} }: CsvOptions = {}): ReadTrace {
  const table = tableOf(text);
  const faults: Fault[] = [];
  const { found, rows, remarks } = columnsOf(name, table, units, faults);
  if (faults.length > 0) throw codedError("bad-trace", faults);
  const numberAt = ({ cells }: Row, at: number) => numberIn(cells[at], table.separator);
  faults.push(...rows.flatMap((row) => faultsOf(name, row, found, numberAt)));
  const columns = Object.fromEntries(
    found.map(({ column, at, factor }) => [
      column,
      Float64Array.from(rows, (row) => numberAt(row, at) * factor),
    ]),
  ) as unknown as Omit<TraceColumns, "name">;
  const mended = mendTrace({ name, ...columns }, mend);
  const lines = mended.from.map((row) => rows[row]!);
  remarks.push(...mended.mended.map(({ row, what }) => `line ${rows[row]!.line}: ${what}`));
  try {
    const trace = traceFrom(mended.columns);
    if (faults.length === 0) return { trace, remarks: [...remarks, ...rolling(trace)] };
  } catch (error) {
    if (!isCoded(error)) throw error;
    faults.push(
      ...error.faults
        .filter((fault) => fault.given !== "NaN")
        .map((fault) => withLine(fault, name, lines, table.header?.cells ?? [], found)),
    );
  }
  throw codedError("bad-trace", faults);
}

const rolling = ({ speed }: Trace): string[] =>
  speed[0]! > 0
    ? [
        `it begins at ${speed[0]!.toPrecision(3)} m/s, but a trip starts from standstill: less is driven than it says, unless a lead-in (leadIn) is asked for`,
      ]
    : [];

/** Where time, speed and the rest stand, in which units, and the rows of numbers; what is wrong is added to the faults. */
function columnsOf(
  name: string,
  { header, rows, separator, titles }: Table,
  stated: ColumnUnits,
  faults: Fault[],
): { found: Found[]; rows: readonly Row[]; remarks: string[] } {
  const remarks: string[] = [];
  if (header === undefined) return withoutHeader(name, rows, stated, faults);
  const path = `${name} line ${header.line}`;
  const whole = header.cells.join(separator);
  if (titles.length > 0) remarks.push(`lines before line ${header.line} are a title and were passed over`);
  const under = rows[0];
  let unitsUnder = false;
  const found = columnNames.flatMap((column): Found[] => {
    const read = header.cells.flatMap((cell, at) => {
      const as = readAs(column, cell);
      return as === undefined ? [] : [{ ...as, cell, at }];
    });
    const named = read.filter(({ fit }) => fit === "named");
    const held = named.length > 0 ? spelledOut(named) : read;
    const required = column === "time" || column === "speed";
    if (held.length > 1 || (required && held.length === 0))
      faults.push({ path, expected: `one column named ${column}, with its unit`, given: given(whole), example: examples[column] }); // prettier-ignore
    const one = held[0];
    if (one === undefined) return [];
    const below = one.hasUnit ? undefined : factorUnder(column, under?.cells[one.at]);
    if (below !== undefined) unitsUnder = true;
    const wanted = stated[column] ?? (column === "grade" ? "" : undefined);
    const factor =
      one.factor ?? below ?? (one.hasUnit || wanted === undefined ? undefined : factorOf(column, wanted));
    const next = header.cells[one.at + 1];
    if (factor === undefined && separator === "," && !one.hasUnit && next && factorOf(column, next) !== undefined)
      faults.push({
        path,
        expected: `names that hold a comma in quotes, since commas part the columns too`,
        given: given(whole),
        example: `"${one.cell}, ${next}" with its quotation marks`,
      });
    else if (factor === undefined)
      faults.push({ path, expected: `the unit of ${column}: ${unitsSaid[column]}`, given: given(one.cell), example: examples[column] }); // prettier-ignore
    if (one.fit === "fits") remarks.push(`${column} was taken from the column ${given(one.cell)}`);
    return [{ column, at: one.at, factor: factor ?? Number.NaN }];
  });
  const others = header.cells.filter((cell, at) => cell !== "" && found.every((one) => one.at !== at));
  if (others.length > 0)
    remarks.push(
      `passed over: ${others.length === 1 ? "the column" : "the columns"} ${others.map(given).join(", ")}`,
    );
  return { found, rows: unitsUnder ? rows.slice(1) : rows, remarks };
}

/** Of several columns that bear one name those that are more than a unit, if there are any: "secs" after an unquoted comma is no column beside "Test Time". */
function spelledOut<T extends { readonly cell: string; readonly hasUnit: boolean }>(
  named: readonly T[],
): readonly T[] {
  const noun = named.filter(
    ({ cell }) => factorOf("time", cell) === undefined && factorOf("speed", cell) === undefined,
  );
  return noun.length > 0 ? noun : named;
}

const factorUnder = (column: Column, cell: string | undefined): number | undefined => {
  const unit = /^[[(]?\s*(.*?)\s*[\])]?$/.exec(cell ?? "")![1]!;
  return unit === "" || !Number.isNaN(Number(unit)) ? undefined : factorOf(column, unit);
};

function withoutHeader(
  name: string,
  rows: readonly Row[],
  stated: ColumnUnits,
  faults: Fault[],
): { found: Found[]; rows: readonly Row[]; remarks: string[] } {
  const first = rows[0]!;
  const time = stated.time === undefined ? undefined : factorOf("time", stated.time);
  const speed = stated.speed === undefined ? undefined : factorOf("speed", stated.speed);
  if (first.cells.filter((cell) => cell !== "").length > 2 || time === undefined || speed === undefined)
    faults.push({
      path: `${name} line ${first.line}`,
      expected:
        "one column named time and one named speed, with their units; two columns without names are read where the units of time and speed are told by option",
      given: given(first.cells.join(" ")),
      example: '"time [s],speed [mph]", or the option { time: "s", speed: "mph" }',
    });
  return {
    found: [
      { column: "time", at: 0, factor: time ?? Number.NaN },
      { column: "speed", at: 1, factor: speed ?? Number.NaN },
    ],
    rows,
    remarks: [
      `no line names the columns: the first was taken for time [${stated.time}], the second for speed [${stated.speed}]`,
    ],
  };
}

/** What is no number in a row, and a time below zero. */
function faultsOf(
  name: string,
  row: Row,
  found: readonly Found[],
  numberAt: (row: Row, at: number) => number,
): Fault[] {
  return found.flatMap(({ column, at }) => {
    const path = `${name} line ${row.line}, ${column}`;
    const number = numberAt(row, at);
    if (Number.isNaN(number))
      return [{ path, expected: "a number", given: given(row.cells[at]), example: "12.5" }];
    if (column === "time" && number < 0)
      return [{ path, expected: "a time of 0 or more", given: row.cells[at]!, example: "0" }];
    return [];
  });
}

// Row numbers of the trace become line numbers of the file, and what is given stands as it was written there.
function withLine(
  fault: Fault,
  name: string,
  kept: readonly Row[],
  header: readonly string[],
  found: readonly Found[],
): Fault {
  const at = /^(.*)\.(\w+)\[(\d+)\]$/.exec(fault.path);
  const expected = fault.expected.replace(/row (\d+)/, (_, row: string) => `line ${kept[Number(row)]?.line}`);
  const there = at === null ? undefined : kept[Number(at[3])];
  if (at === null || there === undefined) return { ...fault, expected };
  const column = found.find((one) => one.column === at[2]);
  const written =
    column === undefined || column.column === "time"
      ? ""
      : `, written ${given(there.cells[column.at])}${header.length > 0 ? ` under ${given(header[column.at])}` : ""}`;
  return {
    ...fault,
    path: `${name} line ${there.line}, ${at[2]}`,
    expected,
    given: `${fault.given}${written === "" ? "" : ` ${inside[at[2] as Column]}`.trimEnd()}${written}`,
  };
}
