// Laws used outside their range during a history: noted as they happen, told at the end. Silence would be the only wrong answer.

import type { Range } from "../errors.ts";
import type { LeakOpening } from "../physics/build.ts";
import { openingLaws } from "./opening-laws.ts";
import type { Engagement } from "./shift.ts";
import type { Walk } from "./walk.ts";
import { watchedLaws } from "./watched-laws.ts";

/** So much warmer than ever before, and the laws' ranges are looked at again [K]. */
const WARMER = 1;
/** So much more air drawn, or at the pump, than ever before, and they are looked at too. */
const AIRIER = 2e-3;

/** Lowest and highest value at which a law was used; Infinity and -Infinity: it was not. */
export interface Used {
  readonly range: Range;
  low: number;
  high: number;
}

/** What a walk has used, by `watchedLaws` and by `openingLaws`. */
export interface Outside {
  readonly laws: readonly Used[];
  readonly opening: readonly Used[];
  /** The temperature that calls for the next look while nothing slips [K]. */
  warmest: number;
  /** The share of gas in what is drawn and at the pump that calls for one. */
  airiest: number;
  foamiest: number;
}

/** None used yet. */
export const noneUsed = (laws: readonly { readonly range: Range }[]): Used[] =>
  laws.map(({ range }) => ({ range, low: Infinity, high: -Infinity }));

/** Of a walk that begins at a temperature [K] at which nothing needs a look; without one its first step is looked at. */
export const newOutside = (stood = -WARMER): Outside => ({
  laws: noneUsed(watchedLaws),
  opening: noneUsed(openingLaws),
  warmest: stood + WARMER,
  airiest: 0,
  foamiest: 0,
});

/** All of it in one list. */
export const usedIn = ({ laws, opening }: Outside): Used[] => [...laws, ...opening];

/** After every step: what is warmer or holds more air than ever before, and every slip, is looked at. */
export function noteStep(outside: Outside, walk: Walk, engagement: Engagement): void {
  const { temperature, gasDrawn } = walk.now;
  const { gas } = walk.state;
  if (temperature > outside.warmest || gasDrawn > outside.airiest || gas > outside.foamiest) {
    outside.warmest = Math.max(outside.warmest, temperature + WARMER);
    outside.airiest = Math.max(outside.airiest, gasDrawn + AIRIER);
    outside.foamiest = Math.max(outside.foamiest, gas + AIRIER);
    noteRanges(outside, walk, engagement);
  } else if (walk.slip.heat > 0) noteRanges(outside, walk, engagement);
}

/** Looks at every watched law at this instant. */
export function noteRanges({ laws, opening }: Outside, walk: Walk, engagement: Engagement): void {
  for (let i = 0; i < watchedLaws.length; i++) widen(laws[i]!, watchedLaws[i]!.value(walk, engagement));
  const { unit, state } = walk;
  if (unit.leak === null || state.leakAge < 0) return;
  noteOpening(opening, unit.leak.opening, state.leakAge, state.clock - state.leakOpenedAt);
}

/** Looks at the laws of an opening so long after it opened, by running and in all [s]. */
export function noteOpening(
  used: readonly Used[],
  opening: LeakOpening,
  age: number,
  calendar: number,
): void {
  for (let i = 0; i < openingLaws.length; i++) widen(used[i]!, openingLaws[i]!.value(opening, age, calendar));
}

/** A law is used at a value too; undefined: it is not. */
export function widen(used: Used, value: number | undefined): void {
  if (value === undefined) return;
  if (value < used.low) used.low = value;
  if (value > used.high) used.high = value;
}

/** What is said of a law around the value at which it was used: the same each time, so it is put into words once. */
const words = new WeakMap<Range, { readonly before: string; readonly after: string }>();

function wordsOf(range: Range): { readonly before: string; readonly after: string } {
  let known = words.get(range);
  if (known === undefined) {
    const { law, quantity, unit, low, high } = range;
    const of = unit === "1" ? "" : ` ${unit}`;
    known = {
      before: `${law} used at ${quantity} = `,
      after: `${of} (holds from ${low} to ${high}${of})`,
    };
    words.set(range, known);
  }
  return known;
}

/** In words: which law, at which value, and where it holds. */
export function outsideOf(used: readonly Used[]): string[] {
  const told: string[] = [];
  for (const { range, low, high } of used) {
    const past = low < range.low ? low : high > range.high ? high : undefined;
    if (past === undefined) continue;
    const { before, after } = wordsOf(range);
    told.push(before + past.toPrecision(4) + after);
  }
  return told;
}
