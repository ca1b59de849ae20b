// Reads a table of reference-data: the header names the columns, every cell below is a number.
import { readFileSync } from "node:fs";

export type Row = Readonly<Record<string, number>>;

export function tableOf(path: string): readonly Row[] {
  const text = readFileSync(new URL(`../../reference-data/${path}`, import.meta.url), "utf8");
  const [header = "", ...lines] = text.trim().split("\n");
  const names = header.split(",");
  return lines.map((line, at) => {
    const cells = line.split(",").map(Number);
    if (cells.length !== names.length || cells.some(Number.isNaN)) throw new Error(`${path}, row ${at + 1}`);
    return Object.fromEntries(names.map((name, column) => [name, cells[column] ?? NaN]));
  });
}

/** The one number of a column in the row whose key column has this value; fails when there is no such row. */
export function cell(table: readonly Row[], key: string, value: number, column: string): number {
  const found = table.find((row) => row[key] === value)?.[column];
  if (found === undefined) throw new Error(`no row with ${key} = ${value}, or no column ${column}`);
  return found;
}

/** Root mean square of a deviation over all rows: one number to which every row of a table contributes. */
export function overAll(
  table: readonly Row[],
  deviation: (at: (column: string) => number) => number,
): number {
  const squares = table.map((row) => deviation((column) => row[column] ?? NaN) ** 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / table.length);
}
