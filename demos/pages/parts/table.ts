// A table of the report on a page, in the reader's units.

import { effect } from "@preact/signals-core";
import { saidIn } from "../../report/said.ts";
import type { Table } from "../../report/table.ts";
import { element } from "./element.ts";
import { system } from "./units.ts";

/** Draws anew when the units change. On a narrow screen it scrolls by itself, not the page. */
export function tableOf({ title, columns, rows, grave }: Table): HTMLElement {
  const place = element("div", { class: "wide scrolls", tabindex: 0, role: "region" });
  effect(() => {
    const says = (said: Table["title"]) => saidIn(said, system.value);
    const alignedBy = (i: number) => (columns[i]!.right === true ? undefined : "words");
    const head = columns.map((column, i) =>
      element("th", { scope: "col", class: alignedBy(i) }, says(column.says)),
    );
    const body = rows.map((row, r) =>
      element(
        "tr",
        { class: grave?.(r) === true ? "grave" : undefined },
        ...row.map((cell, i) =>
          i === 0
            ? element("th", { scope: "row" }, says(cell))
            : element("td", { class: alignedBy(i) }, says(cell)),
        ),
      ),
    );
    place.setAttribute("aria-label", says(title));
    place.replaceChildren(
      element(
        "table",
        {},
        element("caption", {}, says(title)),
        element("thead", {}, element("tr", {}, ...head)),
        element("tbody", {}, ...body),
      ),
    );
  });
  return place;
}
