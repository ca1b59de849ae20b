// A table as data, so that the screen and the page show the same numbers: the chosen system on the screen, either on the page.

import type { ShownKind, UnitSystem } from "../../src/units/show.ts";
import { escaped } from "./escaped.ts";
import { alone, inBoth, saidHtml, saidIn, textHtml, type Both, type Said } from "./said.ts";

/** The same amount in both systems; `mark` says on which side of a sound unit's band it is. */
export interface Amount extends Both {
  readonly mark?: string;
  /** What was seen besides; told on the page only. */
  readonly note?: string;
}

export type Cell = string | Amount;

/** An SI number in both systems. */
export const amount = (value: number, kind: ShownKind): Amount =>
  inBoth((system) => alone(system)(value, kind));

export interface Column {
  readonly says: Said;
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
  readonly title: Said;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Rows to look at first. */
  readonly grave?: (row: number) => boolean;
}

/** The table for the screen: even columns, the chosen units alone. */
export function tableText({ title, columns, rows }: Table, system: UnitSystem): string {
  const kept = columns.map((column, i) => ({ ...column, i })).filter(({ onlyOnPage }) => onlyOnPage !== true);
  const lines = [
    kept.map(({ says }) => saidIn(says, system)),
    ...rows.map((row) => kept.map(({ i }) => cellText(row[i]!, system))),
  ];
  const widths = kept.map((_, c) => Math.max(...lines.map((line) => line[c]!.length)));
  const laid = lines.map((line) =>
    line
      .map((cell, c) => (kept[c]!.right === true ? cell.padStart(widths[c]!) : cell.padEnd(widths[c]!)))
      .join("  ")
      .trimEnd(),
  );
  return [saidIn(title, system), ...laid.map((line) => `  ${line}`), ""].join("\n");
}

/**
 * The table for the page, in both systems; `data-us` and `data-si` name each cell where a phone shows the rows as cards, and the
 * roles keep it a table there.
 */
export function tableHtml({ title, columns, rows, grave }: Table): string {
  const side = (i: number) => {
    const { right, prose, whole } = columns[i]!;
    const names = [right && "number", prose && "prose", whole && "whole"].filter(Boolean);
    return names.length > 0 ? ` class="${names.join(" ")}"` : "";
  };
  const named = (i: number) => {
    const { says } = columns[i]!;
    return ` data-us="${escaped(saidIn(says, "US"))}" data-si="${escaped(saidIn(says, "SI"))}"`;
  };
  const head = columns
    .map(({ says }, i) => `<th scope="col" role="columnheader"${side(i)}>${saidHtml(says)}</th>`)
    .join("");
  const body = rows.map((row, r) => {
    const cells = row.map((cell, i) =>
      i === 0
        ? `<th scope="row" role="rowheader">${onPage(cell)}</th>`
        : `<td role="cell"${side(i)}${named(i)}>${onPage(cell)}</td>`,
    );
    return `<tr role="row"${grave?.(r) === true ? ' class="grave"' : ""}>${cells.join("")}</tr>`;
  });
  // Few short columns find room on a phone as they are.
  const cards = columns.length > 4 || columns.some(({ prose }) => prose);
  return (
    `<div class="table${cards ? " cards" : ""}" tabindex="0" role="region" aria-label="${escaped(saidIn(title, "US"))}"><table role="table">\n` +
    `<caption>${saidHtml(title)}</caption>\n<thead role="rowgroup"><tr role="row">${head}</tr></thead>\n` +
    `<tbody role="rowgroup">\n${body.join("\n")}\n</tbody></table></div>\n`
  );
}

function cellText(cell: Cell, system: UnitSystem): string {
  if (typeof cell === "string") return cell;
  return `${cell[system]}${cell.mark === undefined ? "" : `, ${cell.mark}`}`;
}

function onPage(cell: Cell): string {
  if (typeof cell === "string") return textHtml(cell);
  const mark =
    cell.mark === undefined ? "" : `, <em class="${cell.mark.split(" ")[0]}">${escaped(cell.mark)}</em>`;
  const note = cell.note === undefined ? "" : `<br><small class="note">${textHtml(cell.note)}</small>`;
  return `<span>${saidHtml(cell)}</span>${mark}${note}`;
}
