// Weighed roughly first, an explanation is worth what it is worth when every guess is followed: also where the rough word is far off.
import { beforeAll, describe, expect, test } from "vitest";
import { explanationsOf, type CauseName } from "../../src/lookback/causes.ts";
import type { Evidence } from "../../src/lookback/evidence.ts";
import { problemOf, type Bench } from "../../src/lookback/question.ts";
import { wholeLikelihood } from "../../src/lookback/sampler/problem.ts";
import { temperedAnswer } from "../../src/lookback/sampler/tempered.ts";
import { days } from "../emerge/van.ts";
import { lossShop } from "./grown-otherwise.ts";

const litre = 1e-3;
let shop: Bench;
beforeAll(() => {
  shop = lossShop();
});

const at = days(88);
const full: Evidence = { name: "full", kind: "known full", at: 0, error: 0.24 * litre };
const missing = (when: number, litres: number, error: number): Evidence => ({
  name: `missing ${when}`,
  kind: "fluid missing",
  at: when,
  volume: litres * litre,
  error: error * litre,
});
const drops = (count: number, time: number): Evidence => ({
  name: "drops",
  kind: "drops",
  at,
  count,
  time,
  moment: "idling hot",
});
const meanOf = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0) / numbers.length;

/** Runs of either kind, and how far their means may be apart: these visits are hard, and runs of the same kind differ by one to two. */
const RUNS = 4;
const APART = 2;

describe("the evidence for", { timeout: 120_000 }, () => {
  test.each<[string, CauseName, string, Evidence[]]>([
    ["an older leak", "older leak", "steady", [full, missing(at, 2.2, 0.15), drops(36, 300)]],
    ["a crack near its end", "slow leak", "cracking", [full, missing(at, 0.9, 0.15), drops(300, 120)]],
    [
      "rust that grew within days",
      "slow leak",
      "rusting",
      [full, missing(at - days(3), 0.6, 0.15), missing(at, 1.6, 0.15), drops(100, 60)],
    ],
  ])("%s", (_, cause, law, evidence) => {
    const bench: Bench = { ...shop, visit: { ...shop.visit, at, evidence } };
    const explanation = explanationsOf(bench.visit).find((one) => one.cause === cause && one.law === law)!;
    const problem = problemOf(bench, explanation);
    const { unknowns } = problem;
    const followed = { unknowns, logLikelihood: (values: Float64Array) => wholeLikelihood(problem, values) };
    const runs = (asked: typeof problem) =>
      Array.from(
        { length: RUNS },
        (_, seed) => temperedAnswer(asked, { guesses: 250, moves: 3, seed }).logEvidence,
      );
    const [first, whole] = [runs(problem), runs(followed)];
    expect(
      Math.abs(meanOf(first) - meanOf(whole)),
      `${first.join(" ")} against ${whole.join(" ")}`,
    ).toBeLessThan(APART);
  });
});
