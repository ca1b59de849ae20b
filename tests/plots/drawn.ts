// What every picture must pass: read headless, it is well-formed XML, says what it shows, and holds no number that is none.

import { parseHTML } from "linkedom";
import { expect } from "vitest";
import type { Picture } from "../../src/plots/picture.ts";
import type { UnitSystem } from "../../src/units/show.ts";

/** A document where there is no page. */
export const paper = (): Document =>
  parseHTML("<!doctype html><html><body></body></html>").document as unknown as Document;

export const pictures: readonly (readonly [UnitSystem, number])[] = [
  ["US", 320],
  ["US", 1100],
  ["SI", 320],
  ["SI", 1100],
];

/** Draws in both systems, narrow and wide; checks each and hands its texts on. */
export function drawEach(
  draw: (picture: Picture) => Element,
  see: (texts: readonly string[], system: UnitSystem) => void,
) {
  for (const [system, width] of pictures) {
    const svg = draw({ system, width, document: paper() });
    sound(svg, width);
    see(
      [...svg.querySelectorAll("text")].map((text) => text.textContent ?? ""),
      system,
    );
  }
}

/** Fails unless the picture is an image with a name, fits its width and is well-formed, with numbers only. */
export function sound(svg: Element, width: number): void {
  expect(svg.getAttribute("role")).toBe("img");
  expect(svg.getAttribute("aria-label")?.length).toBeGreaterThan(20);
  expect(svg.getAttribute("xmlns")).toBe("http://www.w3.org/2000/svg");
  expect(Number(svg.getAttribute("width"))).toBe(width);
  expect(svg.querySelectorAll("g[aria-label]")).toHaveLength(0);
  const text = svg.outerHTML;
  expect(notWellFormed(text)).toBe("");
  for (const [, name, value] of text.matchAll(/ ([\w:-]+)="([^"]*)"/g))
    if (name !== "aria-label") expect(`${name}=${value}`).not.toMatch(/NaN|Infinity|undefined|null/);
}

/** What is wrong with a piece of XML: tags that do not close, attributes without quotes, loose signs; empty when nothing is. */
export function notWellFormed(xml: string): string {
  const open: string[] = [];
  const tag = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g;
  const loose = xml.replace(tag, (_, closing: string, name: string, attributes: string, empty: string) => {
    const names = [...attributes.matchAll(/([\w:-]+)="/g)].map(([, attribute]) => attribute);
    if (new Set(names).size < names.length) open.push(`twice in <${name}>: ${names.join(" ")}`);
    if (closing === "/") {
      if (open.at(-1) === name) open.pop();
      else open.push(`</${name}>`);
    } else if (empty === "") open.push(name);
    return "";
  });
  if (open.length > 0) return `not closed: ${open.join(" ")}`;
  const stray = /[<>]|&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[\da-f]+);)/i.exec(loose.replace(/>(?=[^<]*$)/, ""));
  return stray
    ? `loose "${stray[0]}" in "${loose.slice(Math.max(0, stray.index - 20), stray.index + 20)}"`
    : "";
}
