// What a line's end must not tear on a page: dates, which a narrow column breaks at their hyphens, and numbers, which it parts from their units.

import { shownUnits } from "../../src/units/show.ts";

/** Units besides those of amounts in SI: of time, shares, and small parts. */
const others = ["%", "ms", "s", "min", "hour", "day", "week", "ft/s", "oz", "g", "MPa", "Pa"];
const units = [...shownUnits, ...others].sort((a, b) => b.length - a.length).join("|");
/** A date; or a number with what is in front of it, the bracket after an interval, and a unit, also of several. */
const whole = new RegExp(
  `(\\d{4}-\\d{2}-\\d{2}|(?:[<>±] )?-?\\d[\\d.,]*(?:e[+-]?\\d+)?\\)? (?:${units})s?(?![\\w/]))`,
);

/** The text in pieces; every second one, from the second on, is a date or an amount. */
export const splitAtWholes = (text: string): string[] => text.split(whole);
