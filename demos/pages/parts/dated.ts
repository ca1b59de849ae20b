// Text of a page whose dates and amounts stay whole where a line ends.

import { splitAtDates } from "../../report/whole.ts";
import { element } from "./element.ts";

export const dated = (text: string): (Node | string)[] =>
  splitAtDates(text).map((part, i) => (i % 2 === 1 ? element("span", { class: "date" }, part) : part));
