// Progress, cancel, and what is told of work that goes on beside the page.

import { element } from "./element.ts";

/** The bar; `told` is read out to a listener, `where` only seen. */
export function workBar() {
  const progress = element("progress", { max: 1, "aria-label": "Progress of the computation" });
  const cancel = element("button", { type: "button" }, "Cancel");
  const told = element("p", { role: "status", "aria-live": "polite" });
  const where = element("p", { class: "where", "aria-hidden": "true" });
  const said = element("div", { class: "said" }, told, where);
  return {
    element: element("div", { class: "work wide" }, progress, cancel, said),
    progress,
    cancel,
    told,
    where,
  };
}
