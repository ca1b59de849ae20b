// What every picture is given besides its data, and what makes a drawing a picture that stands alone.

import * as Plot from "@observablehq/plot";
import type { UnitSystem } from "../units/show.ts";
import { ink, letters } from "./ink.ts";

/** Whose units the axes show, how wide the picture is [px], and the document to draw into where there is no page. */
export interface Picture {
  readonly system: UnitSystem;
  readonly width: number;
  readonly document?: Document;
}

const SVG = "http://www.w3.org/2000/svg";

/** A Plot that is a bare svg in this project's ink, never a figure around one. */
export function draw(options: Plot.PlotOptions, { document }: Picture): SVGSVGElement {
  const style = { fontSize: `${letters}px`, color: ink.text, background: "none", overflow: "visible" };
  return Plot.plot({ ...options, style, ...(document ? { document } : {}) }) as SVGSVGElement;
}

/** Makes a drawing one image for those who listen to it, and well-formed where it stands alone. */
export function sealed(svg: SVGSVGElement, says: string): SVGSVGElement {
  svg.setAttribute("xmlns", SVG);
  svg.setAttribute("role", "img");
  for (const inner of svg.querySelectorAll("[aria-label]")) inner.removeAttribute("aria-label");
  svg.setAttribute("aria-label", says);
  return svg;
}

/** An empty svg of a size, in which drawings are put together. */
export function sheet(width: number, height: number, { document: given }: Picture): SVGSVGElement {
  const svg = (given ?? document).createElementNS(SVG, "svg") as SVGSVGElement;
  const set = (name: string, value: string | number) => svg.setAttribute(name, String(value));
  set("width", width);
  set("height", height);
  set("viewBox", `0 0 ${width} ${height}`);
  set("font-family", "system-ui, sans-serif");
  set("font-size", letters);
  set("fill", ink.text);
  return svg;
}
