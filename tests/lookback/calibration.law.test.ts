// The sampler against itself: over made-up cases the truth must lie anywhere among the draws, equally often; a likelihood that is too sure of itself must be caught.
import { describe, expect, test } from "vitest";
import { coordinateAt, valueAt } from "../../src/chance/belief.ts";
import { normalQuantile } from "../../src/chance/normal.ts";
import { randomBits } from "../../src/chance/random.ts";
import { column, type Problem } from "../../src/lookback/sampler/problem.ts";
import { temperedAnswer } from "../../src/lookback/sampler/tempered.ts";
import { bandAt, bandFor, binned, rankOf, throwsOf, unevenness, unevennessLimit } from "./calibration.ts";
import { drain, drainSeen } from "./problems.ts";

const CASES = 500;
const KEPT = 99;
const BINS = 20;
const GUESSES = 990;

/** Ranks of age, growth and log-likelihood over made-up cases; the answer's errors are `narrowed` by a factor. */
function ranks(narrowed: number): number[][] {
  const found: number[][] = [[], [], []];
  const { unknowns } = drain([]);
  for (let i = 0; i < CASES; i++) {
    const random = randomBits(2026, i);
    const truth = unknowns.map(({ belief }) => valueAt(belief, coordinateAt(belief, random() + 2 ** -33)));
    const noise = () => normalQuantile(random() + 2 ** -33);
    const seen = drainSeen(truth[0]!, truth[1]!, [noise(), noise()], random());
    const problem: Problem = { unknowns, logLikelihood: (values) => seen(values, narrowed) };
    const answer = temperedAnswer(problem, { guesses: GUESSES, moves: 2, seed: i });
    const thin = (values: ArrayLike<number>) =>
      Array.from({ length: KEPT }, (_, d) => values[d * (GUESSES / KEPT)]!);
    const throws = throwsOf(i);
    for (let j = 0; j < 2; j++) found[j]!.push(rankOf(truth[j]!, thin(column(answer, j)), throws));
    found[2]!.push(
      rankOf(problem.logLikelihood(Float64Array.from(truth)), thin(answer.logLikelihood), throws),
    );
  }
  return found;
}

describe("over five hundred made-up cases", { timeout: 180_000 }, () => {
  const limit = unevennessLimit(BINS, 0.001, 3);

  test("the truth's ranks are even: age, growth and likelihood", () => {
    const band = bandFor(1 - 0.001 / 3, CASES, BINS);
    for (const found of ranks(1)) {
      const counts = binned(found, KEPT, BINS);
      expect(unevenness(counts)).toBeLessThan(limit);
      let below = 0;
      counts.forEach((count, b) => {
        below += count;
        expect(below).toBeGreaterThanOrEqual(band.low[b]!);
        expect(below).toBeLessThanOrEqual(band.high[b]!);
      });
    }
  });

  test("a likelihood with errors of seven tenths is caught by age and by growth", () => {
    const [age, growth] = ranks(0.7).map((found) => unevenness(binned(found, KEPT, BINS)));
    expect(age).toBeGreaterThan(limit);
    expect(growth).toBeGreaterThan(limit);
  });
});

// Counts printed for a graphical test of 500 cases in 20 bins (scipy 1.17.1; the method Säilynoja, Bürkner and Vehtari, 2022).
describe("the band of even ranks", () => {
  test("is the one worked out elsewhere: 95 of a hundred", () => {
    const { gamma, low, high } = bandFor(0.95, 500, 20);
    expect(gamma).toBeCloseTo(0.0058746, 6);
    expect(low.join()).toBe("13,32,54,76,99,122,146,170,194,219,244,270,295,321,348,375,402,431,461,500");
    expect(high.join()).toBe("39,69,98,125,152,179,205,230,256,281,306,330,354,378,401,424,446,468,487,500");
  });
  test("and 999 of a thousand", () => {
    const { gamma, low, high } = bandFor(0.999, 500, 20);
    expect(gamma).toBeCloseTo(9.618e-5, 7);
    expect([low[0], high[0], low[9], high[9], low[18], high[18]]).toEqual([8, 46, 206, 294, 454, 492]);
  });
  test("for a thousand cases, at both levels", () => {
    const usual = bandAt(0.0055475, 1000, 20);
    expect([usual.low[0], usual.high[0], usual.low[9], usual.high[9], usual.low[18], usual.high[18]]).toEqual(
      [32, 70, 456, 544, 930, 968],
    );
    const strict = bandAt(8.807e-5, 1000, 20);
    expect([
      strict.low[0],
      strict.high[0],
      strict.low[9],
      strict.high[9],
      strict.low[18],
      strict.high[18],
    ]).toEqual([25, 79, 438, 562, 921, 975]);
  });
  // Quantiles printed in any table of the chi-square law; here scipy 1.17.1.
  test.each([
    [10, 0.01, 21.666],
    [10, 0.001, 27.8772],
    [20, 0.01, 36.1909],
    [20, 0.001, 43.8202],
    [25, 0.01, 42.9798],
    [25, 0.001, 51.1786],
  ])("chi-square for %d bins, false alarm %d: %d", (bins, alarm, expected) => {
    expect(unevennessLimit(bins, alarm, 1)).toBeCloseTo(expected, 4);
  });
});
