// The head of every page: where one is, the title, the units.

import { element } from "./element.ts";
import { unitSwitch } from "./units.ts";

/** Puts the head on the page; `above` is the address of the list of pages. */
export function masthead(title: string, above: string): HTMLElement {
  const nav = element(
    "nav",
    { "aria-label": "Pages" },
    element("a", { href: above }, "Sumpfall"),
    element("span", { "aria-hidden": "true" }, " / "),
    "how transmissions lose their fluid and burn",
  );
  return element(
    "header",
    { class: "masthead" },
    element("div", { class: "top" }, nav, unitSwitch()),
    element("h1", {}, title),
  );
}
