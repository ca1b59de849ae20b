// Text of a page whose dates and amounts stay whole where a line ends.

import { splitAtWholes } from "../../report/whole.ts";
import { element } from "./element.ts";

export const dated = (text: string): (Node | string)[] =>
  splitAtWholes(text).map((part, i) => (i % 2 === 1 ? element("span", { class: "unbroken" }, part) : part));
