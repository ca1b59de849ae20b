// What each guess foretells, as a table: a row a guess, a column a number. What is answered is read off it.

import type { EventName } from "../history/watch.ts";
import { milesOf } from "./along.ts";
import type { Explanation } from "./causes.ts";
import { findsLeak } from "./finding.ts";
import { looksAhead } from "./looks-ahead.ts";
import { askedOf, type Bench } from "./question.ts";
import type { Draws } from "./sampler/problem.ts";
import { flowAt, missingAt, seenAt, termOf, type Asked } from "./terms.ts";

/** A table of numbers; `columns` names them. */
export interface Table {
  readonly columns: readonly string[];
  readonly rows: Float64Array;
}

/** Moments of the curve of what is missing: so many, evenly from the visit's second 0 to the visit. */
export const CURVE = 25;
/**
 * And some of a guess's own, by which these shares of what it loses by the visit were gone, the opening first: a loss within a trip would fall between two
 * even moments. A unit that runs dry loses its last more and more slowly, so they lie closer towards the end.
 */
const GONE = [0, 0.1, 0.3, 0.5, 0.7, 0.85, 0.95, 0.99, 1] as const;
export const OWN = GONE.length;

/** Events that a guess may foretell, by the prepared week's own list: what never comes to this unit has no column. */
const eventsOf = ({ prepared }: Bench): readonly { name: EventName; clutch?: string }[] => [
  { name: "hiding place full" },
  { name: "first spot on the ground" },
  ...prepared.thresholds.map(({ name, clutch }) => (clutch === undefined ? { name } : { name, clutch })),
];

/** Name of an event's column. */
export const eventColumn = (name: string, clutch?: string): string =>
  clutch === undefined ? `when ${name}` : `when ${name}, ${clutch}`;

/** The same moment by the miles, on the visit's clock. */
export const milesColumn = (event: string): string => `by the miles ${event}`;

export function columnsOf(bench: Bench): readonly string[] {
  const looks = bench.visit.evidence.flatMap(({ kind, name }) =>
    kind === "looked" ? [`open at ${name}`, `wet at ${name}`, `found at ${name}`] : [],
  );
  return [
    "opened",
    "opened by the miles",
    "missing",
    "flow hot",
    "flow parked",
    ...Array.from({ length: CURVE }, (_, i) => `missing ${i}`),
    ...Array.from({ length: OWN }, (_, i) => [`own moment ${i}`, `own missing ${i}`]).flat(),
    ...eventsOf(bench).flatMap(({ name, clutch }) => [
      eventColumn(name, clutch),
      milesColumn(eventColumn(name, clutch)),
    ]),
    ...looks,
    ...looksAhead.map(({ name }) => `will show ${name}`),
    ...bench.visit.evidence.map(({ name }) => `says ${name}`),
  ];
}

/** A leak wets what is around it from about a drop in a quarter of an hour [m³/s]. */
const WET = 0.2e-6 / 3600;

/** The opening, the moments by which those shares of the loss were gone, and the visit, on the visit's clock [s]; all at the visit where nothing leaks by then. */
function ownMoments({ opensAt, course }: Asked, at: number): number[] {
  const first = Math.min(at, Math.max(0, opensAt));
  const { lostBy, lostWhen } = course();
  const [before, all] = [lostBy(first), lostBy(at)];
  const moments = new Array<number>(OWN).fill(at);
  if (!(all > before)) return moments;
  moments[0] = first;
  for (let k = 1; k < OWN - 1; k++) {
    const gone = lostWhen(before + (all - before) * GONE[k]!);
    moments[k] = Math.max(moments[k - 1]!, Math.min(at, gone));
  }
  return moments;
}

/** Rows of numbers of the guesses of an explanation, in the order of the columns. */
export function foretell(
  bench: Bench,
  explanation: Explanation,
  { values, count, dimensions: n }: Pick<Draws, "values" | "count" | "dimensions">,
): Float64Array {
  const wide = columnsOf(bench).length;
  const out = new Float64Array(count * wide);
  const events = eventsOf(bench);
  const { visit } = bench;
  // Of a guess that was taken more than once and not moved since there are copies: one in five.
  const rowOf = new Map<string, number>();
  for (let g = 0; g < count; g++) {
    const guess = values.subarray(g * n, (g + 1) * n);
    const name = guess.join();
    const like = rowOf.get(name);
    if (like !== undefined) {
      out.copyWithin(g * wide, like * wide, (like + 1) * wide);
      continue;
    }
    rowOf.set(name, g);
    const asked = askedOf(bench, explanation, guess);
    let c = g * wide;
    // Dates are the calendar's, which is not the visit's clock where that counts miles.
    const dated = (clock: number) => visit.at - asked.stretch * (visit.at - clock);
    out[c++] = dated(asked.opensAt);
    const stood = asked.course().over();
    const miles = (clock: number) => milesOf(bench, stood, visit.at, clock);
    out[c++] = miles(asked.opensAt);
    out[c++] = missingAt(asked, visit.at);
    out[c++] = flowAt(asked, visit.at, "idling hot");
    out[c++] = flowAt(asked, visit.at, "parked");
    for (let i = 0; i < CURVE; i++) out[c++] = missingAt(asked, (visit.at * i) / (CURVE - 1));
    for (const moment of ownMoments(asked, visit.at)) {
      out[c++] = moment;
      out[c++] = missingAt(asked, moment);
    }
    for (const { name, clutch } of events) {
      const unseen = explanation.unseen && name === "first spot on the ground";
      const when = unseen ? Infinity : asked.course().when(name, clutch);
      out[c++] = dated(when);
      out[c++] = miles(when);
    }
    for (const item of visit.evidence)
      if (item.kind === "looked") {
        const flow = seenAt(item, asked);
        out[c++] = asked.opensAt <= item.at ? 1 : 0;
        out[c++] = flow >= WET ? 1 : 0;
        out[c++] = findsLeak(item.look, flow);
      }
    for (const look of looksAhead) out[c++] = look.foretell(asked);
    for (const item of visit.evidence) out[c++] = termOf(item, asked);
  }
  return out;
}
