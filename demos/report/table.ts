// A table as data, so that the screen and the page show the same numbers: in one unit on the screen, in both on the page.

import { show, type ShownKind, type UnitSystem } from "../../src/units/show.ts";
import { escaped } from "./escaped.ts";

/** The same amount in both systems; `mark` says on which side of a sound unit's band it is. */
export interface Amount {
  readonly US: string;
  readonly SI: string;
  readonly mark?: string;
  /** What was seen besides; told on the page only. */
  readonly note?: string;
}

export type Cell = string | Amount;

/** An SI number in both systems. */
export function amount(value: number, kind: ShownKind): Amount {
  return { US: inChosen(value, kind, "US"), SI: inChosen(value, kind, "SI") };
}

export interface Column {
  readonly says: string;
  /** Numbers stand at the right. */
  readonly right?: boolean;
  /** Never broken into lines on the page. */
  readonly whole?: boolean;
  /** Sentences, which need some width on the page. */
  readonly prose?: boolean;
  /** Left out on the screen, which is narrow. */
  readonly onlyOnPage?: boolean;
}

export interface Table {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Rows to look at first. */
  readonly grave?: (row: number) => boolean;
}

/** The table for the screen: even columns, the chosen units alone. */
export function tableText({ title, columns, rows }: Table, system: UnitSystem): string {
  const kept = columns.map((column, i) => ({ ...column, i })).filter(({ onlyOnPage }) => onlyOnPage !== true);
  const lines = [
    kept.map(({ says }) => says),
    ...rows.map((row) => kept.map(({ i }) => cellText(row[i]!, system))),
  ];
  const widths = kept.map((_, c) => Math.max(...lines.map((line) => line[c]!.length)));
  const laid = lines.map((line) =>
    line
      .map((cell, c) => (kept[c]!.right === true ? cell.padStart(widths[c]!) : cell.padEnd(widths[c]!)))
      .join("  ")
      .trimEnd(),
  );
  return [title, ...laid.map((line) => `  ${line}`), ""].join("\n");
}

/** The table for the page: both units, with the mark of a value beside it in words. */
export function tableHtml({ title, columns, rows, grave }: Table, system: UnitSystem): string {
  const side = (i: number) => {
    const { right, prose, whole } = columns[i]!;
    const names = [right && "number", prose && "prose", whole && "whole"].filter(Boolean);
    return names.length > 0 ? ` class="${names.join(" ")}"` : "";
  };
  const head = columns.map(({ says }, i) => `<th scope="col"${side(i)}>${escaped(says)}</th>`).join("");
  const body = rows.map((row, r) => {
    const cells = row.map((cell, i) =>
      i === 0 ? `<th scope="row">${onPage(cell, system)}</th>` : `<td${side(i)}>${onPage(cell, system)}</td>`,
    );
    return `<tr${grave?.(r) === true ? ' class="grave"' : ""}>${cells.join("")}</tr>`;
  });
  return (
    `<div class="table" tabindex="0" role="region" aria-label="${escaped(title)}"><table>\n` +
    `<caption>${escaped(title)}</caption>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${body.join("\n")}\n</tbody></table></div>\n`
  );
}

/** "65 psi": the chosen unit alone. */
export const inChosen = (value: number, kind: ShownKind, system: UnitSystem): string =>
  show(value, kind, system).split(" (")[0]!;

function cellText(cell: Cell, system: UnitSystem): string {
  if (typeof cell === "string") return cell;
  return `${cell[system]}${cell.mark === undefined ? "" : `, ${cell.mark}`}`;
}

function onPage(cell: Cell, system: UnitSystem): string {
  if (typeof cell === "string") return escaped(cell);
  const [first, second] = system === "US" ? [cell.US, cell.SI] : [cell.SI, cell.US];
  const other = first === second ? "" : ` <small>(${escaped(second)})</small>`;
  const mark =
    cell.mark === undefined ? "" : `, <em class="${cell.mark.split(" ")[0]}">${escaped(cell.mark)}</em>`;
  const note = cell.note === undefined ? "" : `<br><small class="note">${escaped(cell.note)}</small>`;
  return `<span>${escaped(first)}</span>${other}${mark}${note}`;
}
