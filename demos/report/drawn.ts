// A picture drawn where there is no browser.

import { parseHTML } from "linkedom";
import type { Picture } from "../../src/plots/picture.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { slimSvg } from "./slim-svg.ts";

/** The text of a picture in a system at a width [px]. */
export const drawn =
  (draw: (picture: Picture) => SVGSVGElement) =>
  (system: UnitSystem, width: number): string =>
    slimSvg(draw({ system, width, document: blankDocument() }).outerHTML);

function blankDocument(): Document {
  return parseHTML("<!doctype html><html><body></body></html>").document as unknown as Document;
}
