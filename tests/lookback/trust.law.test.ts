// When an answer is trusted: runs that knew nothing of each other must agree on its middle, on its ends, and on what it is worth.
import { describe, expect, test } from "vitest";
import { normalQuantile } from "../../src/chance/normal.ts";
import { trustIn } from "../../src/lookback/answer/trust.ts";
import { explanationsOf } from "../../src/lookback/causes.ts";
import type { Run, Weighed } from "../../src/lookback/posterior.ts";

const COUNT = 400;
const [explanation] = explanationsOf({ at: 1e7, shield: false, evidence: [], added: [] });

/** A run whose ages are normal: even quantiles, so that nothing is left to chance. */
function run(middle: number, spread: number, logEvidence = 0, accepted = 0.3): Run {
  const ages = Array.from({ length: COUNT }, (_, i) => middle + spread * normalQuantile((i + 0.5) / COUNT));
  return {
    seed: 1,
    foretold: new Float64Array(0),
    answer: {
      values: Float64Array.from(ages),
      count: COUNT,
      dimensions: 1,
      weights: new Float64Array(COUNT).fill(1 / COUNT),
      logLikelihood: new Float64Array(COUNT),
      logEvidence,
      steps: [{ power: 1, effective: COUNT, accepted }],
    },
  };
}
const weighed = (...runs: Run[]): Weighed => ({ explanation: explanation!, runs, logEvidence: 0, share: 1 });
const told = (...runs: Run[]) => trustIn([weighed(...runs)], []);

describe("runs are held against each other", () => {
  test("the same ages: trusted, with nothing between them", () => {
    expect(told(run(60, 10), run(60, 10))).toMatchObject({ word: "trust", ages: 0, ends: 0, evidence: 0 });
  });

  // Two runs of one middle, spreads 10·(1 ± a): their ends differ by 2·1.645·10·a about a middle; the standard error of two numbers that differ by d is d/2;
  // the mean variance is 100·(1 + a²). So ends = 1.645·a/√(1 + a²): ½ at a = 0.319.
  test.each([
    [0.1, "trust"],
    [0.3, "trust"],
    [0.35, "run longer"],
    [0.6, "run longer"],
  ])("the same middle, but spreads that differ by %d to either side: %s", (a, word) => {
    const answer = told(run(60, 10 * (1 - a)), run(60, 10 * (1 + a)));
    expect(answer.ages).toBeLessThan(1e-6);
    expect(answer.ends).toBeCloseTo((1.645 * a) / Math.hypot(1, a), 1);
    expect(answer.word).toBe(word);
  });

  // The standard error of two middles that differ by d is d/2, of a spread of 10.
  test.each([
    [4, "trust"],
    [6, "run longer"],
  ])("middles %d apart, of a spread of ten: %s", (apart, word) => {
    const answer = told(run(60, 10), run(60 + apart, 10));
    expect(answer.ages).toBeCloseTo(apart / 20, 2);
    expect(answer.word).toBe(word);
  });

  test("what they are worth, and whether they moved at all", () => {
    expect(told(run(60, 10, 0), run(60, 10, 3)).word).toBe("run longer");
    expect(told(run(60, 10, 0, 0.01), run(60, 10, 0)).word).toBe("run longer");
  });

  test("evidence that is impossible to one run and not to the other is no agreement; to both it is one", () => {
    expect(told(run(60, 10, -Infinity), run(60, 10, 0))).toMatchObject({
      word: "run longer",
      evidence: Infinity,
    });
    expect(told(run(60, 10, -Infinity), run(60, 10, -Infinity)).evidence).toBe(0);
  });

  test("an explanation that hardly counts is not asked", () => {
    const hardly = { ...weighed(run(60, 1), run(60, 30)), share: 0.04 };
    expect(trustIn([weighed(run(60, 10), run(60, 10)), hardly], []).word).toBe("trust");
  });
});
