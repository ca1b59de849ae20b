// Shares and spreads as a table's cell.

import type { Spread } from "../../src/lookback/answer/spread.ts";
import type { ShownKind } from "../../src/units/show.ts";
import { lastPlace, showSpread, threeFigures, toPlace } from "../../src/units/show-spread.ts";
import { inBoth, type Both } from "../report/said.ts";

/** A probability that was computed: no number of guesses makes it 0 or 1. */
export const percent = (share: number): string =>
  share > 0.995 ? "> 99 %" : share < 0.005 ? "< 1 %" : `${Math.round(100 * share)} %`;

const bandOf = ([middle, low, high]: readonly string[]): string =>
  low === high ? middle! : `${middle!} (${low!} to ${high!})`;

/** The middle, and the middle nine tenths in brackets, each in words of its own. */
export const band = ({ middle, nineTenths }: Spread, text: (value: number) => string): string =>
  bandOf([middle, ...nineTenths].map(text));

/** Bare numbers, to a last place that their width warrants, no finer than `least` or else three figures. */
export function banded({ middle, nineTenths }: Spread, least?: number): string {
  const values = [middle, ...nineTenths];
  const finest = least ?? threeFigures(Math.max(...values.map(Math.abs)));
  const place = lastPlace(nineTenths[1] - nineTenths[0], finest);
  const texts = toPlace(values, place, least);
  return bandOf(
    texts.map((text) => (Number(text) === 0 && least !== undefined && least < 1 ? `< ${least}` : text)),
  );
}

/** Amounts in either system, in the unit for an amount of `size`. */
export const bandedIn = (spread: Spread, kind: ShownKind, size?: number): Both =>
  inBoth((system) => {
    const { texts, unit } = showSpread(spread, kind, system, size);
    return `${bandOf(texts)} ${unit}`;
  });
