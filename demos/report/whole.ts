// What a line's end must not tear on a page: dates, which a narrow column breaks at their hyphens, and numbers, which it parts from their units.

import { shownUnits } from "../../src/units/show.ts";

const date = /(\d{4}-\d{2}-\d{2})/;

/** The text in pieces, its amounts unbroken; every second one, from the second on, is a date. */
export const splitAtDates = (text: string): string[] => unbroken(text).split(date);

/** Units besides those of amounts in SI: of time, shares, and small parts. */
const others = ["%", "ms", "s", "min", "hour", "day", "week", "running", "ft/s", "oz", "g", "MPa", "Pa"];
const longestFirst = [...shownUnits, ...others].sort((a, b) => b.length - a.length);
/** A number or the bracket of its interval, and a unit, also of several. */
const amount = new RegExp(`([\\d)]) (${longestFirst.join("|")})(?=s?(?![\\w/]))`, "g");

/** Keeps each number with its unit, and what is in front of a number with that, on one line. */
export const unbroken = (text: string): string =>
  text
    .replace(amount, (_, number: string, unit: string) => `${number}\u00a0${unit.replaceAll(" ", "\u00a0")}`)
    .replace(/([<>±]) (?=\d)/g, "$1\u00a0");
