// All that an ensemble has to say: on the screen, and as a page with its pictures.

import { curveAt } from "../../src/ensemble/bands.ts";
import type { Ensemble } from "../../src/ensemble/ensemble.ts";
import { keyOf, type CurveName } from "../../src/ensemble/outcome.ts";
import { rankInputs } from "../../src/ensemble/ranks.ts";
import { varianceOf, type VarianceStudy } from "../../src/ensemble/variance.ts";
import { wordsFor } from "../../src/plots/event-words.ts";
import { ensembleStrip, eventRows } from "../../src/plots/ensemble-bands.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { cautions } from "../report/cautions.ts";
import { drawn } from "../report/drawn.ts";
import {
  cautionSection,
  drawnAt,
  figure,
  framed,
  paragraphs,
  section,
  type Drawing,
} from "../report/frame.ts";
import { aboutIn, type Loaded } from "../report/load-case.ts";
import { rangesTable } from "../report/ranges-table.ts";
import { standAlone } from "../report/slim-svg.ts";
import { tableHtml, tableText, type Table } from "../report/table.ts";
import { bandTable, isTold, rankTable, varianceTable } from "./tables.ts";

export interface EnsembleReport {
  readonly name: string;
  readonly about: string;
  readonly notes: readonly string[];
  readonly bands: Table;
  readonly rankings: readonly Table[];
  readonly ranges: Table;
  readonly pictures: Readonly<Record<"events" | "curves", Drawing>>;
}

/** With fewer members no input stands out from chance. */
const FEW = 20;
/** What a reader wants to know the reasons of, as far as it happens in half of the members. */
const asked = ["first spot on the ground", "first sustained slip", "damage 1", "no drive"];

export function reportOf(
  { given, data }: Loaded,
  result: Ensemble,
  study: VarianceStudy | null,
): EnsembleReport {
  const told = result.events.filter((event) => asked.includes(event.key) && event.share >= 0.5);
  const ranks = result.outcomes.length < FEW ? [] : told.map((event) => rankInputs(result, event.key));
  const shares = study === null ? [] : told.map((event) => varianceOf(study, event.key));
  const { clutches } = given.unit.build;
  return {
    name: given.name,
    about: aboutIn(data),
    notes: [
      ...notesOf(result),
      ...[ranks[0], shares[0]].flatMap((table) =>
        table === undefined ? [] : [`The ranking: ${table.method}.`],
      ),
      ...(ranks.length < told.length ? [`With fewer than ${FEW} members nothing can be ranked.`] : []),
    ],
    bands: bandTable(given, result),
    rankings: [
      ...ranks.map((table, i) => rankTable(table, wordsFor(told[i]!), clutches)),
      ...shares.map((table, i) => varianceTable(table, wordsFor(told[i]!), clutches)),
    ],
    ranges: {
      ...rangesTable(given, new Set(result.inputs.map(({ path }) => path))),
      title: "What was varied",
    },
    pictures: {
      events: {
        name: "event-bands",
        title: "When it happens",
        says: "Thin, nine members of ten; thick, half of them; stroke, the median; ring, the case as written. What runs out at the right had not happened by the end of some members.",
        draw: drawn((picture) => eventRows(rowsOf(result), picture)),
      },
      curves: {
        name: "curve-bands",
        title: "The curves",
        says: "Pale, nine members of ten; darker, half of them; line, the median; dashed, the case as written.",
        draw: drawn((picture) =>
          ensembleStrip(
            {
              curves: result.curves.running,
              asWritten: writtenOf(result),
              low: given.unit.build.sump.stick.low,
            },
            picture,
          ),
        ),
      },
    },
  };
}

const rowsOf = ({ events, asWritten, curves }: Ensemble) => ({
  events: events.filter(isTold),
  asWritten: Object.fromEntries(asWritten.events.map((event) => [keyOf(event), event.running])),
  to: curves.running.times.at(-1) ?? 0,
});

/** The curves of the case as written, as far as it goes. */
function writtenOf({ asWritten, curves }: Ensemble) {
  const curve = (name: CurveName) =>
    curves.running.times.map((time) => {
      const value = curveAt(asWritten, "running", name, time);
      return Number.isNaN(value) || time > asWritten.end.running ? null : value;
    });
  return {
    level: curve("level"),
    lost: curve("lost"),
    slipEnergy: curve("slipEnergy"),
    damage: curve("damage"),
  };
}

function notesOf({ inputs, outcomes, refused, unsound, ailing }: Ensemble): string[] {
  const n = outcomes.length;
  return [
    `${inputs.length} numbers of the case were varied, each over its range and independently of the others. ` +
      "Each member was filled to the level at which the unit as written idles hot.",
    `The case as written takes every number as its file tells it, which need not be the middle of its range, and bands of ${n} members are rough themselves: it may stand outside them.`,
    ...(refused > 0
      ? [`${refused} members besides contradicted themselves: no such unit can be built.`]
      : []),
    ...(unsound > 0
      ? [
          `${unsound === 1 ? "1 member besides was" : `${unsound} members besides were`} passed over: full and tight, they would starve their cooler at hot idle or draw air in a ` +
            "launch, a stop or a turn, so that nobody would have built them.",
        ]
      : []),
    ...(ailing.length > 0
      ? [
          `${ailing.length} of ${n} members ${ailing.length === 1 ? "shows" : "show"} something before the leak opens all the same. ` +
            "Where the unit is known to have shown nothing, narrow what makes them so (pickup, hold-up, clutch circuit).",
        ]
      : []),
    "“Later” is later than the end of a member's history: by then it had not happened.",
  ];
}

/** What is printed. */
export function screenText(
  { name, about, notes, bands, rankings }: EnsembleReport,
  system: UnitSystem,
): string {
  return [
    name,
    "",
    ...(about === "" ? [] : [about, ""]),
    ...[bands, ...rankings].map((table) => tableText(table, system)),
    ...notes,
    "",
    "Before anything is done about it",
    ...cautions.map((caution) => `  ${caution}`),
    "",
  ].join("\n");
}

/** The page, and each picture in the chosen units. */
export function filesOf(report: EnsembleReport, system: UnitSystem): Map<string, string> {
  return new Map([
    ["report.html", page(report, system)],
    ...Object.values(report.pictures).map(
      ({ name, draw }) => [`${name}.svg`, standAlone(draw(system, drawnAt.wide))] as const,
    ),
  ]);
}

function page(report: EnsembleReport, system: UnitSystem): string {
  const { name, about, notes, bands, rankings, ranges, pictures } = report;
  return framed({
    kind: "Fluid loss in an automatic transmission: how sure the answer is",
    title: `${name}: how sure`,
    name,
    about,
    system,
    sections: [
      section("In short", paragraphs(notes)),
      cautionSection(),
      section(
        "When it happens",
        `${figure(pictures.events)}\n${tableHtml(bands)}\n${figure(pictures.curves)}`,
      ),
      section(
        "What it hangs on",
        rankings.length > 0
          ? rankings.map(tableHtml).join("\n")
          : "<p>Nothing was ranked: there are too few members, or no harm comes in half of them.</p>",
      ),
      section("How far to trust this", tableHtml(ranges), "ranges"),
    ],
  });
}
