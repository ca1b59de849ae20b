// Whether the numbers would come out the same again: runs that knew nothing of each other are held against each other.

import type { Conflict, Weighed } from "../posterior.ts";
import { place } from "../common.ts";
import { column, type Draws } from "../sampler/problem.ts";
import { moments, sorted, spreadOf } from "./spread.ts";

export interface Trust {
  readonly word: "trust" | "run longer" | "evidence conflicts";
  readonly says: string;
  /** How far two runs are apart in the age of the leak, as a share of its spread, and in the logarithm of the evidence: the worst of those that count. */
  readonly ages: number;
  /** The same of either end of the middle nine tenths of the age: runs may agree on the middle and not on how far it reaches. */
  readonly ends: number;
  readonly evidence: number;
  /** The least share of moves accepted in a step of those that count. */
  readonly accepted: number;
}

/** An explanation counts from this share on. */
const COUNTS = 0.05;
/**
 * Limits for the standard error of what runs say together: of the mean age as a share of its spread, of the logarithm of the evidence (shares of the
 * ways of growing are then right within a factor of two); and for acceptance.
 */
const AGES = 0.25;
/** Of either end of the middle nine tenths, as a share of the spread: about a seventh of how wide that is (3.3 spreads of a normal law). Assumed. */
const ENDS = 0.5;
const EVIDENCE = 0.6;
const ACCEPTED = 0.03;

/**
 * Standard error of the mean of numbers that runs came to, each worth its share of all guesses; infinite where there is but one, or where evidence is impossible (-Infinity) to some of
 * them and not to all. A number's own variance goes with one over its guesses.
 */
function errorOf(numbers: readonly number[], shares: readonly number[]): number {
  if (numbers.length < 2) return Infinity;
  if (numbers.every((one) => one === numbers[0])) return 0;
  if (!numbers.every(Number.isFinite)) return Infinity;
  return Math.sqrt(moments(numbers, shares).variance / (numbers.length - 1));
}

/** Each run's share of all guesses. */
function sharesOf(runs: Weighed["runs"]): number[] {
  const all = runs.reduce((sum, { answer }) => sum + answer.count, 0);
  return runs.map(({ answer }) => answer.count / all);
}

/** What a run tells of the age. */
interface RunAges {
  readonly mean: number;
  readonly variance: number;
  readonly low: number;
  readonly high: number;
}

function agesIn(answer: Draws): RunAges {
  const ages = column(answer, place.age);
  const [low, high] = spreadOf(sorted(ages, answer.weights)).nineTenths;
  return { ...moments(ages, answer.weights), low, high };
}

export function trustIn(weighed: readonly Weighed[], conflicts: readonly Conflict[]): Trust {
  const counting = weighed.filter(({ share }) => share > COUNTS);
  const told = counting.map(({ runs }) => ({
    shares: sharesOf(runs),
    ages: runs.map(({ answer }) => agesIn(answer)),
  }));
  /** The worst standard error of a number that runs tell of the age, as a share of its spread. */
  const worst = (number: (run: RunAges) => number): number =>
    Math.max(
      0,
      ...told.map(({ shares, ages: runs }) => {
        const within = runs.reduce((sum, { variance }, r) => sum + shares[r]! * variance, 0);
        return within > 0 ? errorOf(runs.map(number), shares) / Math.sqrt(within) : 0;
      }),
    );
  const ages = worst(({ mean }) => mean);
  const ends = Math.max(
    worst(({ low }) => low),
    worst(({ high }) => high),
  );
  const evidence = Math.max(
    0,
    ...counting.map(({ runs }) =>
      errorOf(
        runs.map(({ answer }) => answer.logEvidence),
        sharesOf(runs),
      ),
    ),
  );
  const accepted = Math.min(
    1,
    ...counting.flatMap(({ runs }) =>
      runs.flatMap(({ answer }) => answer.steps.map((step) => step.accepted)),
    ),
  );
  const impossible = weighed.every(({ logEvidence }) => logEvidence === -Infinity);
  const word =
    conflicts.length > 0 || impossible
      ? "evidence conflicts"
      : ages < AGES && ends < ENDS && evidence < EVIDENCE && accepted > ACCEPTED
        ? "trust"
        : "run longer";
  return { word, says: says[word], ages, ends, evidence, accepted };
}

const says = {
  trust:
    "Computed several times over, each time anew, it came out nearly the same: what differed is small beside the intervals told here.",
  "run longer":
    "Computed several times over, each time anew, it came out differently: ask for more guesses before leaning on it.",
  "evidence conflicts": "No explanation fits all that was seen: look at the conflicts before anything else.",
} as const;
