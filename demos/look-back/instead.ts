// What to do where no look narrows an opening date, because there hardly is a leak to date.

import type { CauseName } from "../../src/lookback/causes.ts";
import type { Answer } from "../../src/lookback/answer/answer.ts";

/** The next step by what is likeliest. It is told for causes other than a leak since the last full. */
const steps: Readonly<Partial<Record<CauseName, string>>> = {
  "never filled":
    "set the level hot, by the maker's procedure, write down what goes in, and check it again after a week of driving. A level that stays says that nothing leaks; one that falls says that something does, and is a new visit with a known full before it",
  "worn pump or seals":
    "set the level hot, then read the line pressure at the tap against the maker's figures: with the right fill a low pressure is the pump's or the seals', not the level's",
  "wrong or aged fluid":
    "find out which fluid was filled and when; change it for the one that the maker names, set the level hot, and drive it again before anything else is judged",
  "older leak":
    "find out from earlier visits and bills since when it has needed fluid: the leak is likely older than the last full, and no date here tells of that",
};

/** What is told in the place of a look: nothing while a leak since the last full is at least as likely as the scale's "very unlikely". */
export function insteadSentences({ opened, causes }: Pick<Answer, "opened" | "causes">): string[] {
  if (opened !== null && opened.chance > 0.2) return [];
  const step = causes[0] === undefined ? undefined : steps[causes[0].cause];
  return [
    opened === null
      ? "No further look narrows when a leak opened: there is hardly one to date."
      : "A look that narrows when a leak opened helps little: there hardly is one to date.",
    ...(step === undefined ? [] : [`What to do instead: ${step}.`]),
  ];
}

/** What stands where the dates of an opening would. */
export const noOpening =
  "There is next to no sign of a leak that opened since it was last full, so there is no date to tell.";
