// When something happened, as people tell it: about a day, between two, before, after, not by then.

import type { When } from "../lookback/evidence.ts";
import { given } from "../units/parse.ts";
import type { FaultList } from "./fault-list.ts";
import {
  momentExample,
  momentExpected,
  momentGiven,
  momentOf,
  WITHIN_DAY,
  type Moment,
  type VisitClock,
} from "./visit-clock.ts";
import { assumed, type Assume } from "./visit-assumed.ts";

/** What moments are read with: the clocks, and where faults and assumptions go. */
export interface Dating {
  readonly clock: VisitClock;
  readonly list: FaultList;
  readonly assume: Assume;
}

export interface WhenTold {
  readonly about?: unknown;
  readonly between?: unknown;
  readonly before?: unknown;
  readonly after?: unknown;
  readonly notSeenBy?: unknown;
  readonly error?: number;
}

const HOUR = 3600;
const DAY = 86400;
const mile = 1609.344;
/** Standard errors of what is told without one [s]. */
const ABOUT = 5 * DAY;
const EDGE = 2 * DAY;
export const whenForms = ["about", "between", "before", "after", "notSeenBy"] as const;
const formExample = '"about": "2024-10-12" or "between": ["2024-10-01", "2024-10-20"]';

/** A moment between the last full and the visit; a fault, and NaN, for any other. Half a day over is taken for the edge. */
export function momentIn({ clock, list }: Dating, path: string, text: unknown): Moment {
  const moment = momentOf(clock, text);
  list.want(moment !== null, path, momentExpected, momentGiven(clock, text), momentExample);
  if (moment === null) return { at: Number.NaN, error: DAY };
  const { at } = moment;
  list.want(
    !(at < -DAY / 2),
    path,
    `nothing before the last full (${clock.date}): what came earlier cannot be weighed`,
    given(text),
    momentExample,
  );
  list.want(!(at > clock.at + DAY / 2), path, "nothing after the visit", given(text), momentExample);
  return { ...moment, at: Math.min(clock.at, Math.max(0, at)) };
}

/** The moment of a look or a measurement: the visit where nothing else is said. */
export const momentOrVisit = (dating: Dating, path: string, text: unknown): Moment =>
  text === undefined ? { at: dating.clock.at, error: 0 } : momentIn(dating, path, text);

/** When an event came; null with the reason in the list. */
export function whenOf(dating: Dating, path: string, told: WhenTold): When | null {
  const { clock, list } = dating;
  const said = whenForms.filter((form) => told[form] !== undefined);
  list.want(
    said.length === 1,
    path,
    `when it was, in one of the forms ${whenForms.join(", ")}`,
    said.length === 0 ? "none of them" : said.join(" and "),
    formExample,
  );
  const [form] = said;
  if (form === undefined || said.length > 1) return null;
  const at = `${path}.${form}`;
  const text = told[form];
  if (form === "between") return spanOf(dating, at, text, told.error);
  const moment = momentIn(dating, at, text);
  if (moment.driven !== undefined) {
    const { by, error } = moment.driven;
    if (told.error === undefined)
      dating.assume(
        `${path}.error`,
        `${formWords[form]} ${String(text)}: right to ${Math.round(error / mile)} mi, two times in three`,
        assumed("an odometer is read to the mile, and weeks of driving differ"),
      );
    // An error of time is that of the miles that are driven in it.
    const metres = told.error === undefined ? error : (told.error * clock.distance) / clock.at;
    return { ...around(form, by, metres, clock.distance), of: clock.distance };
  }
  const usual = usualError(form, moment.error);
  if (told.error === undefined)
    dating.assume(
      `${path}.error`,
      `${formWords[form]} ${String(text)}: right to ${spell(usual)}, two times in three`,
      assumed(form === "about" ? "a date from memory" : "a day is easily mistaken for the one beside it"),
    );
  return around(form, moment.at, told.error ?? usual, clock.at);
}

const formWords = { about: "about", before: "before", after: "after", notSeenBy: "not seen by" } as const;

/** Who tells the hour knows it: only a day is mistaken for another [s]. */
function usualError(form: Exclude<(typeof whenForms)[number], "between">, error: number): number {
  if (error < WITHIN_DAY) return Math.max(error, HOUR);
  return Math.max(error, form === "about" ? ABOUT : EDGE);
}

const spell = (seconds: number): string =>
  seconds < DAY ? `${Math.round(seconds / HOUR)} h` : `${Math.round(seconds / DAY)} days`;

/** About a moment: half of a standard error to either side, which together with what is left of the error spreads by just that error. */
export const about = (at: number, error: number): When => ({
  from: at - error / 2,
  to: at + error / 2,
  error: error * Math.sqrt(11 / 12),
});

function around(
  form: Exclude<(typeof whenForms)[number], "between">,
  at: number,
  error: number,
  visit: number,
): When {
  switch (form) {
    case "about":
      return about(at, error);
    case "before":
      return { from: -Infinity, to: at, error };
    case "after":
      return { from: at, to: visit, error };
    case "notSeenBy":
      return { from: at, to: Infinity, error };
  }
}

function spanOf(dating: Dating, path: string, text: unknown, error: number | undefined): When | null {
  const { list, clock } = dating;
  const two = Array.isArray(text) && text.length === 2 ? (text as readonly unknown[]) : null;
  list.want(
    two !== null,
    path,
    "two moments, the earlier first",
    given(text),
    '["2024-10-01", "2024-10-20"]',
  );
  if (two === null) return null;
  const [from, to] = two.map((moment, i) => momentIn(dating, `${path}[${i}]`, moment));
  list.want(
    !(to!.at < from!.at),
    path,
    "two moments in the order of time",
    given(text),
    '["2024-10-01", "2024-10-20"]',
  );
  if (from!.driven !== undefined && to!.driven !== undefined) {
    const metres = Math.max(from!.driven.error, to!.driven.error);
    return {
      from: from!.driven.by,
      to: to!.driven.by,
      error: error === undefined ? metres : (error * clock.distance) / clock.at,
      of: clock.distance,
    };
  }
  const own = Math.max(from!.error, to!.error);
  return { from: from!.at, to: to!.at, error: error ?? (own < WITHIN_DAY ? own : Math.max(own, DAY)) };
}
