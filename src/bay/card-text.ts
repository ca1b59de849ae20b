// The bay card as plain text, in US or SI units with the others in brackets.

import { retold } from "../units/retold.ts";
import { show, type ShownKind, type UnitSystem } from "../units/show.ts";
import { asRead, asReadInBoth } from "./as-read.ts";
import type { Band } from "./bands.ts";
import type { BayCard } from "./bay-card.ts";
import type { BayRow, ValueKind } from "./bay-row.ts";

/** One card as a table of even columns; below it what is easily misread, and the cautions. */
export function cardText(card: BayCard, system: UnitSystem): string {
  const lines = columns([
    ["test", "condition", "reads", "verdict", "a sound unit", "note"],
    ...[...card.rows, ...card.misreadings].map((row) => cells(row, system)),
  ]);
  return [
    `Bay card: ${card.unit}, ${shortText(card.shortage, system)}`,
    "",
    ...lines.slice(0, card.rows.length + 1),
    "",
    "Read at the wrong moment, the same dipstick shows:",
    ...lines.slice(card.rows.length + 1),
    "",
    ...card.notes,
    ...card.cautions,
    "",
  ].join("\n");
}

function shortText(shortage: number, system: UnitSystem): string {
  if (shortage === 0) return "correct fill";
  return `${show(Math.abs(shortage), "volume", system)} ${shortage > 0 ? "short" : "too much"}`;
}

function cells(
  { test, condition, kind, value, band, beside, verdict, note }: BayRow,
  system: UnitSystem,
): string[] {
  const reads = value === null ? "not reached" : valueText(value, kind, system);
  const also = beside === undefined ? "" : `; ${bandText(beside, kind, system)}`;
  const said = verdict === "within" ? verdict : verdict.toUpperCase();
  return [test, retold(condition, system), reads, said, `${bandText(band, kind, system)}${also}`, note ?? ""];
}

function valueText(value: number, kind: ValueKind, system: UnitSystem): string {
  if (kind === "seconds") return `${value.toFixed(2)} s`;
  if (kind === "ratio") return value.toFixed(2);
  return asReadInBoth(value, kind, system);
}

function bandText({ low, high, kind: origin }: Band, kind: ValueKind, system: UnitSystem): string {
  const from = origin === "common practice" ? "practice" : origin;
  if (low === null) return high === null ? "any" : `at most ${valueText(high, kind, system)}, ${from}`;
  if (high === null) return `at least ${valueText(low, kind, system)}, ${from}`;
  if (kind === "seconds") return `${low} to ${high} s, ${from}`;
  if (kind === "ratio") return `${low} to ${high}, ${from}`;
  const other = system === "US" ? "SI" : "US";
  return `${span(low, high, kind, system)} (${span(low, high, kind, other)}), ${from}`;
}

const span = (low: number, high: number, kind: ShownKind, system: UnitSystem): string =>
  `${asRead(low, kind, system).split(" ")[0]!} to ${asRead(high, kind, system)}`;

/** Rows of cells as lines, each column as wide as its widest cell. */
function columns(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows) row.forEach((cell, i) => (widths[i] = Math.max(widths[i] ?? 0, cell.length)));
  return rows.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join("  ")
      .trimEnd(),
  );
}
