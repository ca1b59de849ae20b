// Which values of a number are possible, and the words that say so in units that people write.

import { quantityKinds, type Kind } from "../units/kinds.ts";
import { show, shownKinds, type ShownKind } from "../units/show.ts";

/** A limit [SI] as text. */
export type Tell = (value: number) => string;

/** Which values are possible; anything else is refused, with `words` to say so. */
export interface Limits {
  readonly words: (tell: Tell) => string;
  readonly holds: (value: number) => boolean;
  readonly whole?: true;
}

export const above = (low: number): Limits => ({
  words: (tell) => `above ${tell(low)}`,
  holds: (value) => value > low,
});
export const atLeast = (low: number): Limits => ({
  words: (tell) => `${tell(low)} or more`,
  holds: (value) => value >= low,
});
export const between = (low: number, high: number): Limits => ({
  words: (tell) => `from ${tell(low)} to ${tell(high)}`,
  holds: (value) => value >= low && value <= high,
});
export const aboveTo = (low: number, high: number): Limits => ({
  words: (tell) => `above ${tell(low)} and up to ${tell(high)}`,
  holds: (value) => value > low && value <= high,
});
export const wholeAtLeast = (low: number): Limits => ({
  words: (tell) => `a whole number, ${tell(low)} or more`,
  holds: (value) => Number.isInteger(value) && value >= low,
  whole: true,
});
export const anything: Limits = { words: () => "", holds: () => true };

const isShown = (kind: Kind): kind is Kind & ShownKind => (shownKinds as readonly string[]).includes(kind);

/** How the limits of a kind are told: in the units of the trade with SI beside them. Nothing is nothing in any unit. */
export const limitOf =
  (kind: Kind): Tell =>
  (value) => {
    if (value === 0) return "0";
    if (kind === "time") return timeText(value);
    return isShown(kind) ? show(value, kind, "US") : `${value} ${quantityKinds[kind].si}`;
  };

function timeText(seconds: number): string {
  const size = Math.abs(seconds);
  if (size < 60) return `${seconds} s`;
  return size < 3600 ? `${seconds / 60} min` : `${seconds / 3600} h`;
}
