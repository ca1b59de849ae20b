// The report as one page that needs nothing else: style and pictures stand in it, and no script.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { UnitSystem } from "../../src/units/show.ts";
import { cautions } from "./cautions.ts";
import { escaped } from "./escaped.ts";
import type { Drawing } from "./pictures.ts";
import { tableHtml } from "./table.ts";
import { leakNote, tintNote, type Report } from "./report.ts";

const style = readFileSync(join(import.meta.dirname, "report.css"), "utf8");

export function page(report: Report, system: UnitSystem): string {
  const { name, about, leak, story, ending, books, tables, pictures } = report;
  const paragraphs = (texts: readonly string[]) => texts.map((text) => `<p>${escaped(text)}</p>`).join("\n");
  const figures = (...names: readonly RegExp[]) =>
    pictures
      .filter((picture) => names.some((wanted) => wanted.test(picture.name)))
      .map(figure)
      .join("\n");
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(name)}</title>
<style>
${style}</style>
</head>
<body>
<header>
<p class="kind">Fluid loss in an automatic transmission: what happened, and when</p>
<h1>${escaped(name[0]!.toUpperCase() + name.slice(1))}</h1>
${about === "" ? "" : `<p>${escaped(about)}</p>`}
<fieldset class="switch">
<legend>Pictures in</legend>
${choice("US", "US units", system)}
${choice("SI", "SI units", system)}
</fieldset>
</header>
<main>
<section>
<h2>In short</h2>
${paragraphs(leak === "" ? [] : [leak])}
${paragraphs(story)}
<p>${escaped(ending)}</p>
</section>
<section class="cautions">
<h2>Before anything is done about it</h2>
<ul>
${cautions.map((caution) => `<li>${escaped(caution)}</li>`).join("\n")}
</ul>
</section>
<section>
<h2>What happened</h2>
${figures(/^history$/)}
${tableHtml(tables.events, system)}
<p>${escaped(leakNote)}</p>
${figures(/^last-part$/)}
</section>
${pictures.some(({ name }) => name.startsWith("close-up")) ? `<section>\n<h2>The moments that matter</h2>\n${figures(/^close-up/)}\n</section>` : ""}
<section>
<h2>What a teardown would find</h2>
${tableHtml(tables.clutches, system)}
<p>${escaped(tintNote)}</p>
</section>
<section>
<h2>No pressure, no clutch, no harm?</h2>
<p>True at the left end of the picture, where a valve takes the pressure away at once. A leak takes it away over minutes
and hours, and the clutch is neither on nor off all that time.</p>
${figures(/^fade$/)}
${tableHtml(tables.fades, system)}
${figures(/^clutch-states$/, /^slip-heat$/)}
</section>
<section>
<h2>What the bay would have measured</h2>
${figures(/^bay-ladder$/)}
${tableHtml(tables.bay, system)}
</section>
<section class="ranges">
<h2>How far to trust this</h2>
${paragraphs(books)}
${tables.ranges.rows.length > 0 ? tableHtml(tables.ranges, system) : "<p>No input of this case says within which range it is known.</p>"}
</section>
</main>
</body>
</html>
`;
}

function choice(value: UnitSystem, says: string, chosen: UnitSystem): string {
  const checked = value === chosen ? " checked" : "";
  return `<label><input type="radio" name="units" value="${value}"${checked}> ${says}</label>`;
}

function figure({ title, says, draw }: Drawing): string {
  return `<figure>
<figcaption><strong>${escaped(title)}.</strong> ${escaped(says)}</figcaption>
<div class="drawing us">${draw("US")}</div>
<div class="drawing si">${draw("SI")}</div>
</figure>`;
}
