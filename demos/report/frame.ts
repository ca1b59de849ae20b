// What the pages of the demos share: one file that needs nothing else, with a switch of units and no script.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { UnitSystem } from "../../src/units/show.ts";
import { cautions } from "./cautions.ts";
import { escaped } from "./escaped.ts";
import { saidHtml, textHtml, type Said } from "./said.ts";

const style = readFileSync(join(import.meta.dirname, "report.css"), "utf8");

/** One picture: the name of its file, what stands above it on the page, and the drawing in each system at each width [px]. */
export interface Drawing {
  readonly name: string;
  readonly title: Said;
  readonly says?: Said;
  readonly draw: (system: UnitSystem, width: number) => string;
}

/** Widths that pictures are drawn at: for a desk and paper, and for a phone, so that the letters keep their size [px]. */
export const drawnAt = { wide: 760, narrow: 336 } as const;

export interface Frame {
  /** What kind of page it is, its heading, and a line under that. */
  readonly kind: string;
  readonly title: string;
  readonly name: string;
  readonly about?: string;
  /** Whose units are shown at first. */
  readonly system: UnitSystem;
  readonly sections: readonly string[];
}

/** A whole page. */
export function framed({ kind, title, name, about = "", system, sections }: Frame): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>
${style}</style>
</head>
<body>
<header>
<p class="kind">${escaped(kind)}</p>
<h1>${escaped(name[0]!.toUpperCase() + name.slice(1))}</h1>
${about === "" ? "" : `<p class="quoted">${textHtml(about)}</p>`}
<fieldset class="switch">
<legend>Units</legend>
${choice("US", system)}
${choice("SI", system)}
</fieldset>
</header>
<main>
${sections.join("\n")}
</main>
</body>
</html>
`;
}

function choice(value: UnitSystem, chosen: UnitSystem): string {
  const checked = value === chosen ? " checked" : "";
  return `<label><input type="radio" name="units" value="${value}"${checked}> ${value}</label>`;
}

export const section = (heading: string, content: string, className = ""): string =>
  `<section${className === "" ? "" : ` class="${className}"`}>\n<h2>${escaped(heading)}</h2>\n${content}\n</section>`;

export const paragraphs = (texts: readonly Said[]): string =>
  texts.map((text) => `<p>${saidHtml(text)}</p>`).join("\n");

/** What hands and eyes need to know before any number is acted upon. */
export const cautionSection = (): string =>
  section(
    "Before anything is done about it",
    `<ul>\n${cautions.map((caution) => `<li>${escaped(caution)}</li>`).join("\n")}\n</ul>`,
    "cautions",
  );

/** A picture in both systems, each as wide as a desk and as narrow as a phone; the style shows one of the four. */
export function figure({ title, says = "", draw }: Drawing): string {
  const drawings = (["US", "SI"] as const).flatMap((system) =>
    Object.entries(drawnAt).map(
      ([room, width]) => `<div class="drawing ${system.toLowerCase()} ${room}">${draw(system, width)}</div>`,
    ),
  );
  return `<figure>
<figcaption><strong>${saidHtml(title)}.</strong> ${saidHtml(says)}</figcaption>
${drawings.join("\n")}
</figure>`;
}
