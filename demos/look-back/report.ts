// All that a look back has to say: on the screen, as a page with its pictures, and as data.

import { drivenBy } from "../../src/inputs/visit.ts";
import type { EventName } from "../../src/history/watch.ts";
import { causeBars, nextLookBars } from "./bars.ts";
import { eventDates } from "../../src/plots/event-dates.ts";
import { missingCurve } from "../../src/plots/missing-curve.ts";
import { openingDots } from "../../src/plots/opening-dots.ts";
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
import { linesInBoth, type Said } from "../report/said.ts";
import { stretched } from "../report/stretched.ts";
import { refillTable } from "../report/part-table.ts";
import { standAlone } from "../report/slim-svg.ts";
import { tableHtml, tableText, type Table } from "../report/table.ts";
import { calendarOf, curveOf } from "./curve.ts";
import { toldEvents } from "./events.ts";
import { noOpening } from "./instead.ts";
import { dayIn } from "./moments.ts";
import {
  aheadTable,
  assumptionTable,
  causeTable,
  clutchTable,
  eventTable,
  evidenceTable,
  flowTable,
  openingTable,
  unknownTable,
} from "./tables.ts";
import { costsOf, costTable, goesWithSaid, goesWithSentences, goneTable } from "./goes-with.ts";
import {
  type Coming,
  lookPicture,
  lookSentencesFor,
  lookTable,
  payingSentences,
  tellsOfLooks,
} from "./looking-again.ts";
import { eventNotes, flowNotes, outsideNotes } from "./notes.ts";
import { narrowing, narrowingNote, reservations, sentences, type Telling } from "./told.ts";

export interface LookBackReport {
  readonly telling: Telling;
  /** Leaks that may come to this vehicle, as they are believed possible. */
  readonly coming: Coming;
  /** Guesses that were walked trip by trip. */
  readonly walks: number;
  readonly seed: number;
  readonly guesses: number;
}

/** What is printed. */
export function screenText({ telling, walks, coming }: LookBackReport, system: UnitSystem): string {
  const { read } = telling;
  const text = (table: Table): string[] => (table.rows.length > 0 ? [tableText(table, system)] : []);
  const noted = (says: readonly string[]): string[] => (says.length > 0 ? [...says, ""] : []);
  return [
    read.visit.name,
    "",
    ...noted(read.about === undefined ? [] : [read.about]),
    ...reservations(telling),
    "",
    ...sentences(telling, system),
    "",
    ...text(openingTable(telling)),
    ...text(causeTable(telling)),
    ...text(eventTable(telling)),
    ...noted(eventNotes(telling)),
    ...text(clutchTable(telling)),
    ...noted(walks > 0 ? [walkNote(walks, telling)] : []),
    ...text(goneTable(telling)),
    ...text(refillTable(read.visit.unit, read.own.build)),
    ...text(costTable(telling, coming)),
    ...noted(goesWithSentences(telling, coming, system)),
    ...text(aheadTable(telling)),
    ...noted(telling.answer.ahead.length === 0 ? [] : narrowingNote(telling)), // else it was said above
    ...text(lookTable(coming)),
    ...noted([...lookSentencesFor(coming, system), ...payingSentences(read, coming, system)]),
    ...cautions.slice(0, -1),
    "",
  ].join("\n");
}

const walkNote = (walks: number, { answer }: Telling): string =>
  `${answer.clutches.some(({ of }) => of !== null) ? "What each clutch lost, how often" : "How often"} it gave way, temperature, damage and char are those of ${walks === 1 ? "one guess that was" : `${walks} guesses that were`} driven trip by trip: so few tell the size, not the odds. It gave way where it began to slip while it carried a gear, however shortly (a slip is told above only once it lasts a second); what burns it while it is being applied is not counted there.`;

/** The page, each picture in the chosen units, and the answer as data. */
export function filesOf(report: LookBackReport, system: UnitSystem): Map<string, string> {
  return new Map([
    ["report.html", page(report, system)],
    ["answer.json", dataOf(report)],
    ...pictures(report).map(
      ({ name, draw }) => [`${name}.svg`, standAlone(draw(system, drawnAt.wide))] as const,
    ),
  ]);
}

const nothing = (text: string): string => `<p>${text}</p>`;

function page(report: LookBackReport, system: UnitSystem): string {
  const { telling, walks, coming } = report;
  const { read, answer } = telling;
  const drawings = pictures(report);
  const picture = (name: string): string => {
    const found = drawings.find((drawing) => drawing.name === name);
    return found === undefined ? "" : figure(found);
  };
  const flow = flowTable(telling);
  const ways = openingTable(telling);
  const looks = aheadTable(telling);
  const clutches = clutchTable(telling);
  return framed({
    kind: "Fluid loss in an automatic transmission: looking back from a visit",
    title: `${read.visit.name}: looking back`,
    name: read.visit.name,
    ...(read.about === undefined ? {} : { about: read.about }),
    system,
    sections: [
      section("In short", paragraphs([...reservations(telling), ...said(telling)])),
      cautionSection(),
      section(
        "When the leak opened",
        answer.opened === null
          ? nothing(noOpening)
          : `${picture("opening")}\n${ways.rows.length === 0 ? "" : tableHtml(ways)}\n${flow === null ? "" : tableHtml(flow)}\n${paragraphs(flowNotes(telling))}`,
      ),
      section("Was it the leak?", `${picture("causes")}\n${tableHtml(causeTable(telling))}`),
      section(
        "What was missing, and when",
        `${picture("missing")}\n${picture("events")}\n${tableHtml(eventTable(telling))}\n${paragraphs(eventNotes(telling))}`,
      ),
      section(
        "What a teardown would show",
        `${tableHtml(clutches)}\n${walks > 0 ? paragraphs([walkNote(walks, telling)]) : ""}`,
      ),
      section(
        "What goes with it",
        `${paragraphs(goesWithSaid(telling, coming))}\n${[
          goneTable(telling),
          costTable(telling, coming),
          refillTable(read.visit.unit, read.own.build),
        ]
          .filter(({ rows }) => rows.length > 0)
          .map(tableHtml)
          .join("\n")}`,
      ),
      section(
        "What to look at next",
        `${looks.rows.length === 0 ? "" : `${picture("next")}\n${tableHtml(looks)}`}\n${paragraphs(narrowingNote(telling))}`,
      ),
      section(
        "Before it happens again",
        `${paragraphs(linesInBoth((each) => [...lookSentencesFor(coming, each), ...payingSentences(read, coming, each)]))}\n${picture("looking-again")}\n${tellsOfLooks(coming) ? tableHtml(lookTable(coming)) : ""}`,
      ),
      section(
        "What this rests on",
        [
          ...[evidenceTable(telling), assumptionTable(telling), unknownTable(telling)].map(tableHtml),
          paragraphs([
            ...linesInBoth((each) => stretched(answer.outside, each)),
            ...outsideNotes(telling, walks),
          ]),
        ].join("\n"),
        "ranges",
      ),
    ],
  });
}

const said = (telling: Telling): Said[] => linesInBoth((system) => sentences(telling, system));

function pictures({ telling, coming }: LookBackReport): Drawing[] {
  const { answer } = telling;
  const drawing = (
    name: string,
    title: string,
    says: string,
    draw: Parameters<typeof drawn>[0],
  ): Drawing => ({
    name,
    title,
    says,
    draw: drawn(draw),
  });
  const { opened } = answer;
  const calendar = calendarOf(telling);
  return [
    ...(opened === null
      ? []
      : [
          drawing(
            "opening",
            `When it opened, in ${opened.dots.length} cases like this`,
            "Each dot is one case, all as likely: count those on either side of a date. Under them, thin, nine tenths; thick, half; stroke, the middle.",
            (picture) => openingDots({ calendar, dots: opened.dots, when: opened.when }, picture),
          ),
        ]),
    drawing("causes", "What may be behind it", "Bars, after the evidence; strokes, before it.", (picture) =>
      causeBars(answer, picture),
    ),
    drawing(
      "missing",
      "What was missing",
      "Pale, nine cases in ten; darker, half of them; line, the middle. Dots with two standard errors, what was measured; dashed, fluid added.",
      (picture) => missingCurve(curveOf(telling), picture),
    ),
    drawing(
      "events",
      "When it happened",
      "Of the cases in which it had come by the visit: thin, nine tenths; thick, half; stroke, the middle. At the right, in how many it had.",
      (picture) =>
        eventDates(
          {
            calendar,
            events: toldEvents(telling).map((event) => ({ ...event, name: event.name as EventName })),
          },
          picture,
        ),
    ),
    ...(narrowing(answer).length === 0
      ? []
      : [
          drawing(
            "next",
            "What each look would still leave",
            "Bars, how closely the opening date would be known after the look, a standard deviation; strokes, now.",
            (picture) => nextLookBars(answer, picture),
          ),
        ]),
    ...(tellsOfLooks(coming)
      ? [
          drawing(
            "looking-again",
            "Leaks that burn a clutch before a look finds them",
            "Of the leaks that may come to this vehicle, as it is driven, and burn a clutch or stop it; a line for each kind of look.",
            (picture) => lookPicture(coming, picture),
          ),
        ]
      : []),
  ];
}

/** The answer as data: SI, seconds of the visit's clock, with dates beside them. How likely a look should have found it only where that was asked for. */
function dataOf({ telling, coming, seed, guesses, walks }: LookBackReport): string {
  const { read, answer, looks: tellLooks } = telling;
  const { looks, ...rest } = answer;
  const dated = (at: number, driven: number) => ({
    seconds: at,
    date: dayIn(read, at),
    odometer: `${Math.round(drivenBy(read, driven) / 1000)} km${read.clock.odometer === null ? " after the last full" : ""}`,
  });
  const both = (at: readonly number[], driven: readonly number[]) =>
    at.map((one, i) => dated(one, driven[i]!));
  return `${JSON.stringify(
    {
      caution: cautions.at(-1),
      name: read.visit.name,
      seed,
      guesses,
      walks,
      clock: read.clock,
      standIn: { build: !read.own.build, fluid: !read.own.fluid },
      sentences: { US: sentences(telling, "US"), SI: sentences(telling, "SI") },
      opened:
        answer.opened === null
          ? null
          : {
              chance: answer.opened.chance,
              middle: dated(answer.opened.when.middle, answer.opened.driven.middle),
              half: both(answer.opened.when.half, answer.opened.driven.half),
              nineTenths: both(answer.opened.when.nineTenths, answer.opened.driven.nineTenths),
            },
      answer: tellLooks ? { ...rest, looks } : rest,
      costs: costsOf(telling, coming),
      coming: coming.leaks,
      assumptions: read.assumptions,
    },
    null,
    1,
  )}\n`;
}
