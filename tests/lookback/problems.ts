// Problems with known answers: a leak of an unknown age, seen through what is missing, what drips, a first spot and an earlier look.
import type { Problem, Unknown } from "../../src/lookback/sampler/problem.ts";
import { measured, within } from "../../src/chance/terms.ts";

export type Evidence = "volume" | "drip" | "spot" | "look";

/** Rate [mL/d] so many days after the leak opened. */
const rate = (days: number, k: number, first = 6) => first * Math.exp(k * days);
/** Lost [mL] by then. */
const lost = (days: number, k: number, first = 6) => (first * Math.expm1(k * days)) / k;
/** Days ago at which so much [mL] had been soaked up. */
const spotAgo = (s: number, k: number, first = 6, soaked = 150) => s - Math.log1p((k * soaked) / first) / k;
/** Probability that a look finds a leak of a rate [mL/d]. */
const found = (q: number) => 1 / (1 + Math.exp(-(Math.log(q) - Math.log(12)) / 0.35));

function term(evidence: Evidence, s: number, k: number, first = 6, soaked = 150): number {
  switch (evidence) {
    case "volume":
      return measured(1300, lost(s, k, first), 130);
    case "drip":
      return measured(Math.log(45), Math.log(rate(s, k, first)), 0.2);
    case "spot":
      return within(20, 34, spotAgo(s, k, first, soaked), 5);
    case "look":
      return s > 60 ? Math.log1p(-found(rate(s - 60, k, first))) : 0;
  }
}

export const checkChances = {
  rate,
  lost,
  spotAgo,
  found,
  term,
  logRate: (s: number, k: number) => Math.log(rate(s, k)),
};

const age: Unknown = { name: "age", belief: { law: "lognormal", middle: 60, spread: 0.6 }, jumps: [60] };
const growth: Unknown = { name: "growth", belief: { law: "lognormal", middle: 0.03, spread: 0.5 } };

/** Age and growth unknown; the first rate 6 mL/d and 150 mL soaked up are known. */
export const drain = (evidence: readonly Evidence[]): Problem => ({
  unknowns: [age, growth],
  logLikelihood: ([s, k]) => evidence.reduce((sum, item) => sum + term(item, s!, k!), 0),
});

/** The same with first rate and soaked-up volume unknown as well, and all four pieces of evidence. */
export const fourUnknowns = (): Problem => ({
  unknowns: [
    age,
    growth,
    { name: "first rate", belief: { law: "lognormal", middle: 6, spread: 0.6 } },
    { name: "soaked up", belief: { law: "lognormal", middle: 150, spread: 0.5 } },
  ],
  logLikelihood: ([s, k, q, soaked]) =>
    term("volume", s!, k!, q!) +
    term("drip", s!, k!, q!) +
    term("spot", s!, k!, q!, soaked!) +
    term("look", s!, k!, q!),
});

/** A constant 25 mL/d, age 60 ± 30 d and 300 ± 100 mL soaked up: everything normal, so the answer has a closed form. */
export const constantRate = (evidence: readonly ("missing" | "ground" | "spot")[]): Problem => ({
  unknowns: [
    { name: "age", belief: { law: "normal", middle: 60, spread: 30 } },
    { name: "soaked up", belief: { law: "normal", middle: 300, spread: 100 } },
  ],
  logLikelihood: ([s, soaked]) =>
    evidence.reduce((sum, item) => {
      if (item === "missing") return sum + measured(1300, 25 * s!, 150);
      return (
        sum +
        (item === "ground" ? measured(1050, 25 * s! - soaked!, 120) : measured(950, 25 * s! - soaked!, 100))
      );
    }, 0),
});

/**
 * A made-up visit of a drain with a known truth: volume and drip measured with the given standard errors' throws, a look 60 days ago that found
 * it or not by a throw from 0 to 1. Returns the log-likelihood of guesses, with errors narrowed by a factor.
 */
export function drainSeen(
  s: number,
  k: number,
  noise: readonly [number, number],
  look: number,
): (values: Float64Array, narrowed: number) => number {
  const volume = lost(s, k) + 130 * noise[0];
  const drip = Math.log(rate(s, k)) + 0.2 * noise[1];
  const finds = (age: number, growth: number) => (age > 60 ? found(rate(age - 60, growth)) : 0);
  const seen = look < finds(s, k);
  return ([age, growth], narrowed) => {
    const chance = finds(age!, growth!);
    return (
      measured(volume, lost(age!, growth!), 130 * narrowed) +
      measured(drip, Math.log(rate(age!, growth!)), 0.2 * narrowed) +
      (seen ? Math.log(chance) : Math.log1p(-chance))
    );
  };
}
