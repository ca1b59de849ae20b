// In which order the dates of a case must come: its start, the leak, what is towed, what is added, the end of the span.

import { told } from "./build-rule.ts";
import { given } from "../units/parse.ts";
import type { PlainCase } from "./case-schema.ts";
import { dateExample, dateExpected, dateSeconds, lastSecond } from "./dates.ts";
import type { FaultList } from "./fault-list.ts";
import { sinceStart } from "./moments.ts";

/** Adds every contradiction of the dates that are `there`. */
export function dateRules(tree: PlainCase, there: (path: string) => boolean, { want }: FaultList): void {
  const { start, span } = tree;
  const known = !Number.isNaN(dateSeconds(start.date)) && !start.date.includes(":");
  want(known, "start.date", "a date; the case begins at its midnight", given(start.date), '"2024-03-04"');

  if (there("opens")) {
    const { opens } = tree;
    if ("date" in opens) {
      const after = sinceStart(tree, opens.date);
      want(
        !Number.isNaN(dateSeconds(opens.date)),
        "opens.date",
        dateExpected,
        given(opens.date),
        dateExample,
      );
      want(
        !(after < 0),
        "opens.date",
        `a date from ${start.date} on, when the case starts`,
        given(opens.date),
        dateExample,
      );
      want(!(after > span), "opens.date", "a date before the span ends", given(opens.date), dateExample);
    }
    if ("after" in opens)
      want(
        !(opens.after > span),
        "opens.after",
        "a time before the span ends",
        `${opens.after} s`,
        '"30 days"',
      );
    if ("odometer" in opens)
      want(
        !(opens.odometer < start.odometer),
        "opens.odometer",
        "no less than the odometer at the start",
        told.distance(opens.odometer),
        '"60200 mi"',
      );
  }
  if (there("towed") && tree.towed !== undefined) {
    const { from, until } = tree.towed;
    const begins = sinceStart(tree, from ?? start.date);
    const ends = lastSecond(until ?? start.date) - dateSeconds(start.date);
    if (from !== undefined)
      want(!Number.isNaN(begins) || !known, "towed.from", dateExpected, given(from), dateExample);
    if (until !== undefined) {
      want(!Number.isNaN(ends) || !known, "towed.until", dateExpected, given(until), dateExample);
      want(!(ends < begins), "towed.until", "a date no earlier than towed.from", given(until), dateExample);
    }
  }
  if (!there("entries")) return;
  tree.entries.forEach(({ date }, i) => {
    const path = `entries[${i}].date`;
    const after = sinceStart(tree, date);
    want(!Number.isNaN(dateSeconds(date)), path, dateExpected, given(date), dateExample);
    want(!(after < 0), path, `a date from ${start.date} on, when the case starts`, given(date), dateExample);
    want(!(after > span), path, "a date before the span ends", given(date), dateExample);
    const before = tree.entries[i - 1];
    want(
      !(before !== undefined && after < sinceStart(tree, before.date)),
      path,
      "entries in the order of their dates",
      given(date),
      dateExample,
    );
  });
}
