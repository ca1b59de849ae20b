// When things happen, counted in seconds from the midnight that a case starts at.

import type { PlainCase } from "./case-schema.ts";
import type { Towed } from "../history/towing.ts";
import { timeToThrough } from "../physics/leak/rub-through.ts";
import { dateSeconds, lastSecond } from "./dates.ts";
import { daysOf } from "./to-week.ts";

/** Fluid added: so long after the start [s], volume [m³] at its temperature [K]. */
export interface Entry {
  readonly kind: "top-up";
  readonly after: number;
  readonly volume: number;
  readonly temperature: number;
}

/** When the leak opens: so many seconds after the start, at an odometer reading [m], or after so many seconds of running. */
export type Opens = { readonly after: number } | { readonly odometer: number } | { readonly running: number };

/** Seconds from the start of the case to a date; NaN when one of them is none. */
export function sinceStart({ start }: Pick<PlainCase, "start">, date: string): number {
  return dateSeconds(date) - dateSeconds(start.date);
}

export function opensOf(tree: PlainCase): Opens {
  const { opens, leak } = tree;
  // A line that is still being rubbed leaks when the wall is through, whatever else is said.
  if (leak?.kind === "rub" && leak.wornAtStart !== undefined) {
    const { tubeDiameter, wall, wornAtStart, wornInHundredHours } = leak;
    return { running: timeToThrough(tubeDiameter / 2, wall, wornAtStart, wornInHundredHours) };
  }
  if ("running" in opens) return opens;
  if ("date" in opens) return { after: sinceStart(tree, opens.date) };
  return "after" in opens ? { after: opens.after } : { odometer: opens.odometer };
}

/** What is towed and when, in seconds from the start. */
export function towedOf(tree: PlainCase): Towed | undefined {
  if (tree.towed === undefined) return undefined;
  const { days, from, until, ...trailer } = tree.towed;
  return {
    trailer,
    days: daysOf(days),
    from: from === undefined ? 0 : sinceStart(tree, from),
    until: until === undefined ? Infinity : lastSecond(until) - dateSeconds(tree.start.date),
  };
}

export function entriesOf(tree: PlainCase): readonly Entry[] {
  return tree.entries.map(({ kind, date, volume, temperature }) => ({
    kind,
    after: sinceStart(tree, date),
    volume,
    temperature,
  }));
}
