// Words that are the same in both systems of units, or once in each: the page holds both, and its switch shows one.

import { show, type ShownKind, type UnitSystem } from "../../src/units/show.ts";
import { escaped } from "./escaped.ts";
import { splitAtWholes } from "./whole.ts";

/** The same said in each system. */
export type Both = Readonly<Record<UnitSystem, string>>;
/** Words without units, or in both systems. */
export type Said = string | Both;

/** Puts an amount [SI] into words, to three figures or as many as it is known to. */
export type Tell = (value: number, kind: ShownKind, figures?: number) => string;

/** "65 psi": the chosen unit alone. */
export const alone =
  (system: UnitSystem): Tell =>
  (value, kind, figures) =>
    show(value, kind, system, figures).split(" (")[0]!;

/** "65 psi (448 kPa)": the chosen unit first. */
export const withOther =
  (system: UnitSystem): Tell =>
  (value, kind, figures) =>
    show(value, kind, system, figures);

/** What is said once in each system. */
export const inBoth = (say: (system: UnitSystem) => string): Both => ({ US: say("US"), SI: say("SI") });

/** Sentences that are the same ones in both systems, each with its own units. */
export function linesInBoth(say: (system: UnitSystem) => readonly string[]): Both[] {
  const SI = say("SI");
  return say("US").map((US, i) => ({ US, SI: SI[i]! }));
}

export const saidIn = (said: Said, system: UnitSystem): string =>
  typeof said === "string" ? said : said[system];

/** For the page: as it is, or both with the class that the switch shows them by. */
export function saidHtml(said: Said): string {
  if (typeof said === "string") return textHtml(said);
  if (said.US === said.SI) return textHtml(said.US);
  return `<span class="us">${textHtml(said.US)}</span><span class="si">${textHtml(said.SI)}</span>`;
}

/** Text of the page, its dates and amounts each in one line. */
export const textHtml = (text: string): string =>
  splitAtWholes(text)
    .map((part, i) => (i % 2 === 1 ? `<span class="unbroken">${escaped(part)}</span>` : escaped(part)))
    .join("");
