// What looking back costs: the sampler against the quadrature of the same problem, one guess, and a whole visit.
import { exactAnswer } from "../../src/lookback/sampler/exact.ts";
import { moments } from "../../src/lookback/answer/spread.ts";
import { column } from "../../src/lookback/sampler/problem.ts";
import { temperedAnswer } from "../../src/lookback/sampler/tempered.ts";
import { earlyAnswer } from "../../src/lookback/early.ts";
import { lookBack, lookBackHands } from "../../src/lookback/lookback.ts";
import { drain, fourUnknowns } from "../lookback/problems.ts";
import { hiddenCase, workshop } from "../lookback/hidden.ts";
import { cpuTime, median } from "./clock.ts";

export interface LookbackCost {
  /** Effective samples of the age a second of processor time, on the problem of four unknowns: guesses over the variance of their mean between seeds. */
  readonly effectivePerSecond: number;
  /** Processor time of two thousand guesses of two unknowns over that of their quadrature. */
  readonly overQuadrature: number;
  /** A visit with every kind of evidence that a case has, 4000 guesses, prepared: by the clock [s], by new threads and by those of three visits before; and its early answer, nothing prepared [s]. */
  readonly visit: number;
  readonly again: number;
  readonly early: number;
}

function seconds(run: () => void): number {
  const from = cpuTime();
  run();
  return (cpuTime() - from) / 1e6;
}

export async function costOfLookback(): Promise<LookbackCost> {
  const means: number[] = [];
  let spread = 0;
  const four = seconds(() => {
    for (let seed = 0; seed < 40; seed++) {
      const draws = temperedAnswer(fourUnknowns(), { guesses: 1000, moves: 5, seed });
      const { mean, variance } = moments(column(draws, 0), draws.weights);
      means.push(mean);
      spread += variance / 40;
    }
  });
  const even = means.map(() => 1 / means.length);
  const two = () => drain(["volume", "drip", "spot", "look"]);
  temperedAnswer(two(), { guesses: 2000, moves: 5, seed: 1 });
  exactAnswer(two());
  const sampled = median(
    [1, 2, 3].map((seed) => seconds(() => temperedAnswer(two(), { guesses: 2000, moves: 5, seed }))),
  );
  const exact = median([1, 2, 3].map(() => seconds(() => exactAnswer(two()))));
  const shop = workshop();
  const { visit } = hiddenCase(shop, 7);
  earlyAnswer(visit, 1);
  let from = performance.now();
  earlyAnswer(visit, 2);
  const early = (performance.now() - from) / 1000;
  from = performance.now();
  await lookBack(visit, shop.prepared, { guesses: 4000, seed: 1 });
  const visited = (performance.now() - from) / 1000;
  const hands = lookBackHands();
  for (const seed of [2, 3, 4]) await lookBack(visit, shop.prepared, { guesses: 4000, seed, hands });
  from = performance.now();
  await lookBack(visit, shop.prepared, { guesses: 4000, seed: 1, hands });
  const again = (performance.now() - from) / 1000;
  await Promise.all(hands.map((hand) => hand.dismiss()));
  return {
    effectivePerSecond: (40 * spread) / moments(means, even).variance / four,
    overQuadrature: sampled / exact,
    visit: visited,
    again,
    early,
  };
}
