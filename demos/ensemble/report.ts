// All that an ensemble has to say: on the screen, and as a page with its pictures.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseHTML } from "linkedom";
import { curveAt } from "../../src/ensemble/bands.ts";
import type { Ensemble } from "../../src/ensemble/ensemble.ts";
import { keyOf, type CurveName } from "../../src/ensemble/outcome.ts";
import { rankInputs } from "../../src/ensemble/ranks.ts";
import { varianceOf, type VarianceStudy } from "../../src/ensemble/variance.ts";
import { wordsFor } from "../../src/plots/event-words.ts";
import { ensembleStrip, eventRows } from "../../src/plots/ensemble-bands.ts";
import type { Picture } from "../../src/plots/picture.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { cautions } from "../report/cautions.ts";
import { escaped } from "../report/escaped.ts";
import type { Loaded } from "../report/load-case.ts";
import { rangesTable } from "../report/ranges-table.ts";
import { slimSvg, standAlone } from "../report/slim-svg.ts";
import { tableHtml, tableText, type Table } from "../report/table.ts";
import { bandTable, isTold, rankTable, varianceTable } from "./tables.ts";

export interface EnsembleReport {
  readonly name: string;
  readonly notes: readonly string[];
  readonly tables: readonly Table[];
  readonly ranges: Table;
  readonly pictures: readonly {
    readonly name: string;
    readonly title: string;
    readonly draw: (system: UnitSystem) => string;
  }[];
}

const WIDTH = 760;
/** With fewer members no input stands out from chance. */
const FEW = 20;
/** What a reader wants to know the reasons of, as far as it happens in half of the members. */
const asked = ["first spot on the ground", "first sustained slip", "damage 1", "no drive"];

export function reportOf(loaded: Loaded, result: Ensemble, study: VarianceStudy | null): EnsembleReport {
  const { given, data } = loaded;
  const told = result.events.filter((event) => asked.includes(event.key) && event.share >= 0.5);
  const ranks = result.outcomes.length < FEW ? [] : told.map((event) => rankInputs(result, event.key));
  const shares = study === null ? [] : told.map((event) => varianceOf(study, event.key));
  const drawn = (draw: (picture: Picture) => SVGSVGElement) => (system: UnitSystem) =>
    slimSvg(draw({ system, width: WIDTH, document: blankDocument() }).outerHTML);
  const { running } = result.curves;
  const written = (name: CurveName) =>
    running.times.map((time) => {
      const value = curveAt(result.asWritten, "running", name, time);
      return Number.isNaN(value) || time > result.asWritten.end.running ? null : value;
    });
  const ranges = rangesTable(given, data);
  const paths = new Set(result.inputs.map(({ path }) => path));
  return {
    name: given.name,
    notes: [
      ...notesOf(result),
      ...[ranks[0], shares[0]].flatMap((table) =>
        table === undefined ? [] : [`The ranking: ${table.method}.`],
      ),
      ...(ranks.length < told.length ? [`With fewer than ${FEW} members nothing can be ranked.`] : []),
    ],
    tables: [
      bandTable(given, result),
      ...ranks.map((table, i) => rankTable(table, wordsFor(told[i]!))),
      ...shares.map((table, i) => varianceTable(table, wordsFor(told[i]!))),
    ],
    ranges: {
      ...ranges,
      title: "What was varied",
      rows: ranges.rows.filter(([path]) => paths.has(String(path))),
    },
    pictures: [
      {
        name: "event-bands",
        title: "When it happens: thin, nine members of ten; thick, half of them; ring, the case as written",
        draw: drawn((picture) =>
          eventRows(
            {
              events: result.events.filter(isTold),
              asWritten: Object.fromEntries(
                result.asWritten.events.map((event) => [keyOf(event), event.running]),
              ),
              to: running.times.at(-1) ?? 0,
            },
            picture,
          ),
        ),
      },
      {
        name: "curve-bands",
        title: "The curves: nine members of ten, half of them, the median; dashed, the case as written",
        draw: drawn((picture) =>
          ensembleStrip(
            {
              curves: running,
              asWritten: {
                level: written("level"),
                lost: written("lost"),
                slipEnergy: written("slipEnergy"),
                damage: written("damage"),
              },
              low: given.unit.build.sump.stick.low,
            },
            picture,
          ),
        ),
      },
    ],
  };
}

function notesOf({ inputs, outcomes, refused, unsound, ailing }: Ensemble): string[] {
  const n = outcomes.length;
  return [
    `${inputs.length} numbers of the case were varied, each over its range and independently of the others. ` +
      "Each member was filled to the level at which the unit as written idles hot.",
    ...(refused > 0 ? [`${refused} draws besides contradicted themselves: no such unit can be built.`] : []),
    ...(unsound > 0
      ? [
          `${unsound} draws besides were passed over: full and tight, they would starve their cooler at hot idle or draw air in a ` +
            "launch, a stop or a turn, so that nobody would have built them.",
        ]
      : []),
    ...(ailing.length > 0
      ? [
          `${ailing.length} of ${n} members show something before the leak opens all the same. ` +
            "Where the unit is known to have shown nothing, narrow what makes them so (pickup, hold-up, clutch circuit).",
        ]
      : []),
    "What had not happened by the end of a member's history counts as later than the end.",
  ];
}

/** What is printed. */
export function screenText({ name, notes, tables }: EnsembleReport, system: UnitSystem): string {
  return [name, "", ...tables.map((table) => tableText(table, system)), ...notes, ""].join("\n");
}

const style = readFileSync(join(import.meta.dirname, "../report/report.css"), "utf8");

/** The page, and each picture in the chosen units. */
export function filesOf(report: EnsembleReport, system: UnitSystem): Map<string, string> {
  return new Map([
    ["report.html", page(report, system)],
    ...report.pictures.map(({ name, draw }) => [`${name}.svg`, standAlone(draw(system))] as const),
  ]);
}

function page({ name, notes, tables, ranges, pictures }: EnsembleReport, system: UnitSystem): string {
  const paragraphs = notes.map((text) => `<p>${escaped(text)}</p>`).join("\n");
  const figures = pictures.map(
    ({ title, draw }) => `<figure>
<figcaption><strong>${escaped(title)}.</strong></figcaption>
<div class="drawing us">${draw("US")}</div>
<div class="drawing si">${draw("SI")}</div>
</figure>`,
  );
  const choice = (value: UnitSystem) =>
    `<label><input type="radio" name="units" value="${value}"${value === system ? " checked" : ""}> ${value} units</label>`;
  const [bands, ...rankings] = tables;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(name)}: how sure</title>
<style>
${style}</style>
</head>
<body>
<header>
<p class="kind">Fluid loss in an automatic transmission: how sure the answer is</p>
<h1>${escaped(name[0]!.toUpperCase() + name.slice(1))}</h1>
<fieldset class="switch">
<legend>Pictures in</legend>
${choice("US")}
${choice("SI")}
</fieldset>
</header>
<main>
<section>
<h2>In short</h2>
${paragraphs}
</section>
<section class="cautions">
<h2>Before anything is done about it</h2>
<ul>
${cautions.map((caution) => `<li>${escaped(caution)}</li>`).join("\n")}
</ul>
</section>
<section>
<h2>When it happens</h2>
${figures[0]}
${tableHtml(bands!, system)}
${figures.slice(1).join("\n")}
</section>
<section>
<h2>What it hangs on</h2>
${rankings.length > 0 ? rankings.map((table) => tableHtml(table, system)).join("\n") : "<p>Nothing was ranked: there are too few members, or no harm comes in half of them.</p>"}
</section>
<section class="ranges">
<h2>How far to trust this</h2>
${tableHtml(ranges, system)}
</section>
</main>
</body>
</html>
`;
}

function blankDocument(): Document {
  return parseHTML("<!doctype html><html><body></body></html>").document as unknown as Document;
}
