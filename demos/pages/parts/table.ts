// A table of the report on a page, in the reader's units.

import { effect } from "@preact/signals-core";
import { saidIn } from "../../report/said.ts";
import type { Table } from "../../report/table.ts";
import { dated } from "./dated.ts";
import { element } from "./element.ts";
import { system } from "./units.ts";

/** Draws anew when the units change. On a phone its rows become cards; the roles keep it a table there. */
export function tableOf({ title, columns, rows, grave }: Table): HTMLElement {
  const place = element("div", { class: "wide" });
  effect(() => {
    const says = (said: Table["title"]) => saidIn(said, system.value);
    const alignedBy = (i: number) => (columns[i]!.right === true ? undefined : "words");
    const head = columns.map((column, i) =>
      element("th", { scope: "col", role: "columnheader", class: alignedBy(i) }, says(column.says)),
    );
    const body = rows.map((row, r) =>
      element(
        "tr",
        { role: "row", class: grave?.(r) === true ? "grave" : undefined },
        ...row.map((cell, i) => {
          const text = says(cell);
          if (i === 0) return element("th", { scope: "row", role: "rowheader", class: alignedBy(i) }, text);
          const label = text === "" ? undefined : says(columns[i]!.says);
          return element("td", { role: "cell", class: alignedBy(i), "data-label": label }, ...dated(text));
        }),
      ),
    );
    place.replaceChildren(
      element(
        "table",
        { class: "cards", role: "table" },
        element("caption", {}, says(title)),
        element("thead", { role: "rowgroup" }, element("tr", { role: "row" }, ...head)),
        element("tbody", { role: "rowgroup" }, ...body),
      ),
    );
  });
  return place;
}
