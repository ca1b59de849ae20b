// What an answer is worth when leaks do not grow as it takes them to: made-up losses of one law, looked back at by others.
import { coordinateAt, valueAt } from "../../src/chance/belief.ts";
import { normalQuantile } from "../../src/chance/normal.ts";
import { randomBits } from "../../src/chance/random.ts";
import { nedc } from "../../src/driving/nedc.ts";
import { clock, weekOf, workdays } from "../../src/driving/pattern.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import { pooled } from "../../src/lookback/answer/pool.ts";
import { sorted, spreadOf } from "../../src/lookback/answer/spread.ts";
import { explanationsOf, type Explanation } from "../../src/lookback/causes.ts";
import { place } from "../../src/lookback/common.ts";
import type { Evidence } from "../../src/lookback/evidence.ts";
import { askedOf, benchOf, problemOf, type Bench } from "../../src/lookback/question.ts";
import { temperedAnswer } from "../../src/lookback/sampler/tempered.ts";
import { shownBy } from "../../src/lookback/shown.ts";
import { expectedDrops, missingAt } from "../../src/lookback/terms.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { weigh } from "../../src/lookback/weigh.ts";
import { celsius, days, hole, leaking, van } from "../emerge/van.ts";

const litre = 1e-3;

/** The invented van on one kind of trip, prepared for its loss alone, and all laws of growth. */
export function lossShop(): Bench {
  const week = weekOf([{ trace: nedc, startsAt: clock(6, 30), days: workdays }]);
  const { opening: _, hiding: __, ...site } = leaking("supply-line", hole(1e-4));
  const visit: Visit = {
    name: "made up",
    unit: van,
    week,
    site,
    shield: true,
    weekday: 0,
    dayOfYear: 120,
    at: days(120),
    evidence: [],
    added: [],
  };
  const shown = shownBy(van, site, [], 9);
  return benchOf(visit, prepareLoss(van, week, celsius(15)), shown);
}

export const lawsOf = (bench: Bench): readonly Explanation[] =>
  explanationsOf(bench.visit).filter(({ cause }) => cause === "slow leak");

/** A made-up visit: a leak of a law drawn from what is believed, what it lost and how it drips with the errors of measuring. */
export function madeUp(bench: Bench, law: Explanation, seed: number): { evidence: Evidence[]; age: number } {
  for (let attempt = 0; ; attempt++) {
    const random = randomBits(seed, attempt, 5);
    const values = Float64Array.from(law.unknowns, ({ belief }) =>
      valueAt(belief, coordinateAt(belief, random() + 2 ** -33)),
    );
    const truth = askedOf(bench, law, values);
    const { at } = bench.visit;
    const error = 0.15 * litre;
    // "Full" was read off a stick with an error: those truths count that would have read just so.
    if (random() > Math.exp(-0.5 * (values[place.short]! / error) ** 2)) continue;
    const missing = missingAt(truth, at) + error * normalQuantile(random() + 2 ** -33);
    // What brings a customer in is told by what is measured, so the belief in the truth stays what it is.
    if (!(missing > 0.4 * litre && missing < 4 * litre)) continue;
    const drops = { name: "drops", kind: "drops", at, count: 0, time: 120, moment: "idling hot" } as const;
    return {
      evidence: [
        { name: "known full", kind: "known full", at: 0, error },
        { name: "missing", kind: "fluid missing", at, volume: missing, error },
        { ...drops, count: arrivals(expectedDrops(drops, truth), random) },
      ],
      age: values[place.age]!,
    };
  }
}

function arrivals(mean: number, random: () => number): number {
  let count = 0;
  for (let left = mean; (left += Math.log(1 - random())) > 0; count++);
  return count;
}

/** Intervals that should hold the age in nine of ten cases: by all laws averaged by the evidence, and by the first of them alone. */
export function nineTenths(
  bench: Bench,
  by: readonly Explanation[],
  evidence: readonly Evidence[],
  seed: number,
  more = { guesses: 250, moves: 3 },
) {
  const done = by.map((explanation, i) => {
    const { unknowns, logLikelihood } = problemOf(bench, explanation, evidence);
    const options = { ...more, seed: seed + i };
    return {
      task: { explanation: i, foretells: false, ...options },
      answered: {
        answer: temperedAnswer({ unknowns, logLikelihood }, options),
        foretold: new Float64Array(0),
      },
    };
  });
  const interval = (count: number) => {
    const weighed = weigh(bench, by.slice(0, count), done.slice(0, count));
    const { values, weights } = pooled(weighed, ({ runs }, r, row) => {
      const { values: all, dimensions } = runs[r]!.answer;
      return all[row * dimensions + place.age]!;
    });
    return spreadOf(sorted(values, weights)).nineTenths;
  };
  return { averaged: interval(by.length), alone: interval(1) };
}
