// The text of a recorded drive as rows: which mark parts its columns, where its header stands, and what stands before it.

import { dsvFormat } from "d3";
import { readAs, type Column } from "./csv-units.ts";

/** A row with the number of its line in the file. */
export interface Row {
  readonly cells: readonly string[];
  readonly line: number;
}

/** Rows of numbers under a header; without one (`header` undefined) the first rows are numbers already. */
export interface Table {
  readonly separator: string;
  readonly header: Row | undefined;
  readonly rows: readonly Row[];
  /** Lines before the header that are neither blank nor remarks. */
  readonly titles: readonly number[];
}

const separators = [";", "\t", ",", " "];
/** A header stands within so many lines, or there is none. */
const MOST_TITLES = 40;

/** Cells of every line that is not blank. */
function rowsOf(text: string, separator: string): Row[] {
  const parted =
    separator === " "
      ? text
          .split(/\r\n|\r|\n/)
          .map(byBlanks)
          .join("\n")
      : text;
  return dsvFormat(separator === " " ? "\t" : separator)
    .parseRows(parted)
    .map((cells, i) => ({ cells: cells.map((cell) => cell.trim()), line: i + 1 }))
    .filter(({ cells }) => cells.some((cell) => cell !== ""));
}

// Blanks part columns, but not a name from its unit in brackets; where columns stand apart by more than one, a single one parts words.
function byBlanks(line: string): string {
  const close = line.trim().replaceAll(/\s+(?=[[(])/g, "");
  return close.replaceAll(/\S {2,}\S/.test(close) && /[A-Za-z]/.test(close) ? / {2,}/g : / +/g, "\t");
}

/** A number as it is written: with a point, or a comma where commas do not part columns. NaN: it is none. */
export function numberIn(cell: string | undefined, separator: string): number {
  const text = separator === "," ? (cell ?? "") : (cell ?? "").replace(",", ".");
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/.test(text) ? Number(text) : Number.NaN;
}

const isRemark = ({ cells }: Row): boolean => cells[0]!.startsWith("#");
const uncommented = ({ cells, line }: Row): Row => {
  const first = cells[0]!.replace(/^#+\s*/, "");
  return { cells: first === "" ? cells.slice(1) : [first, ...cells.slice(1)], line };
};
const names = ({ cells }: Row, column: Column): boolean =>
  cells.some((cell) => readAs(column, cell) !== undefined);
const isHeader = (row: Row): boolean => names(row, "time") && names(row, "speed");

const isNumbers = ({ cells }: Row, separator: string): boolean =>
  cells.filter((cell) => !Number.isNaN(numberIn(cell, separator))).length > 1;

/** Reads a text as a table; what cannot be read as one comes as its first line with nothing under it. */
export function tableOf(text: string): Table {
  const whole = text.replace(/^\uFEFF/, "");
  const parsed = separators.map((separator) => ({ separator, all: rowsOf(whole, separator) }));
  const heads = (all: readonly Row[]) => all.slice(0, MOST_TITLES);
  // Numbers that are parted as the header is tell its separator for sure; a header may also be written as a remark.
  for (const numbered of [true, false])
    for (const written of [(row: Row) => row, uncommented])
      for (const { separator, all } of parsed) {
        const header = heads(all)
          .map(written)
          .find((row) => !isRemark(row) && isHeader(row));
        if (header === undefined) continue;
        const table = under(header, all, separator);
        if (!numbered || table.rows.slice(0, 2).some((row) => isNumbers(row, separator))) return table;
      }
  for (const { separator, all } of parsed) {
    const data = all.filter((row) => !isRemark(row));
    const first = data.findIndex((row) => isNumbers(row, separator));
    if (first === 0) return { separator, header: undefined, rows: data, titles: [] };
    // What stands right over the numbers should have named them.
    if (first > 0) return under(data[first - 1]!, all, separator);
  }
  const all = parsed.at(-2)!.all;
  return under(all[0] ?? { cells: [""], line: 1 }, all, ",");
}

const under = (header: Row, all: readonly Row[], separator: string): Table => {
  const said = all.filter((row) => !isRemark(row));
  return {
    separator,
    header,
    rows: said.filter(({ line }) => line > header.line),
    titles: said.filter(({ line }) => line < header.line).map(({ line }) => line),
  };
};
