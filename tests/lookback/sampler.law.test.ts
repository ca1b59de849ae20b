// The sampler and the exact route: what must hold whatever the problem.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkBelief, coordinateAt, shareBelow, type Belief } from "../../src/chance/belief.ts";
import { logNormal, logNormalBelow, logNormalBetween, normalBelow } from "../../src/chance/normal.ts";
import { logAdd, logSum } from "../../src/chance/terms.ts";
import { varianceAfter, varianceAfterYesNo } from "../../src/lookback/answer/next-look.ts";
import { moments, quantile, sorted, spreadOf } from "../../src/lookback/answer/spread.ts";
import { likelihood, likelihoodWord, outOfTwenty } from "../../src/lookback/answer/words.ts";
import { exactAnswer } from "../../src/lookback/sampler/exact.ts";
import { gaussLegendre } from "../../src/lookback/sampler/gauss-legendre.ts";
import { column } from "../../src/lookback/sampler/problem.ts";
import { temperedAnswer } from "../../src/lookback/sampler/tempered.ts";
import { effectiveSize, normalised, resampled } from "../../src/lookback/sampler/weights.ts";
import { checkChances, drain, fourUnknowns } from "./problems.ts";

const options = { guesses: 400, moves: 3, seed: 5 };

describe("guesses", () => {
  test("the same seed gives the same numbers, another one others", () => {
    const a = temperedAnswer(fourUnknowns(), options);
    expect(temperedAnswer(fourUnknowns(), options).values).toEqual(a.values);
    expect(temperedAnswer(fourUnknowns(), { ...options, seed: 6 }).values).not.toEqual(a.values);
  });

  test("dear evidence asked after the cheap leaves the answer as it is", () => {
    const { unknowns } = drain([]);
    const exact = exactAnswer(drain(["volume", "drip", "spot", "look"]), 24);
    const twice = temperedAnswer(
      {
        unknowns,
        logLikelihood: ([s, k]) => checkChances.term("volume", s!, k!) + checkChances.term("drip", s!, k!),
        further: ([s, k]) => checkChances.term("spot", s!, k!) + checkChances.term("look", s!, k!),
      },
      { guesses: 2000, moves: 10, seed: 3 },
    );
    // Four run-to-run deviations of the mean (0.12 d) and of the evidence (0.05), found over 40 seeds.
    expect(
      Math.abs(moments(column(twice, 0), twice.weights).mean - moments(column(exact, 0), exact.weights).mean),
    ).toBeLessThan(0.48);
    expect(Math.abs(twice.logEvidence - exact.logEvidence)).toBeLessThan(0.2);
  });

  test("without evidence they are what was believed", () => {
    const answer = temperedAnswer(drain([]), { guesses: 4000, moves: 1, seed: 2 });
    expect(answer.logEvidence).toBeCloseTo(0, 12);
    const { middle } = spreadOf(sorted(column(answer, 0)));
    expect(middle).toBeGreaterThan(60 * Math.exp(-4 * 0.0119)); // four standard errors of a lognormal's median, 1.25·0.6/√4000
    expect(middle).toBeLessThan(60 * Math.exp(4 * 0.0119));
  });

  test("dear evidence that rules out all that the cheap evidence led to is met on the way there, not called impossible", () => {
    // 4.5 measured, right to 0.2, of something that anything from 0 to 6 may be, and that cannot be over 3.5: five errors below.
    const problem = {
      unknowns: [{ name: "missing", belief: { law: "uniform", low: 0, high: 6 } as const }],
      logLikelihood: ([x]: Float64Array) => logNormal(4.5, x!, 0.2),
      further: ([x]: Float64Array) => (x! > 3.5 ? -Infinity : 0),
    };
    const exact = Math.log(normalBelow(-5) / 6);
    for (let seed = 1; seed <= 8; seed++) {
      const answer = temperedAnswer(problem, { guesses: 400, moves: 5, seed });
      expect(Math.abs(answer.logEvidence - exact)).toBeLessThan(0.6);
      expect(Math.max(...answer.values)).toBeLessThanOrEqual(3.5);
      // A normal's tail from five errors on has a mean of 5.19 errors.
      expect(Math.abs(moments(column(answer, 0), answer.weights).mean - (4.5 - 0.2 * 5.1865))).toBeLessThan(
        0.02,
      );
    }
  });

  test("an answer that is given up costs a part of its steps, and its evidence is a bound from above", () => {
    const far = {
      unknowns: drain([]).unknowns,
      logLikelihood: ([s]: Float64Array) => -2000 - 400 * (s! - 3) ** 2,
    };
    const whole = temperedAnswer(far, options);
    const givenUp = temperedAnswer(far, { ...options, least: -200 });
    expect(givenUp.steps.length).toBeLessThan(whole.steps.length);
    expect(givenUp.logEvidence).toBeLessThanOrEqual(-200);
    expect(givenUp.logEvidence).toBeGreaterThan(whole.logEvidence);
    expect(temperedAnswer(fourUnknowns(), { ...options, least: -200 })).toEqual(
      temperedAnswer(fourUnknowns(), options),
    );
  });

  test("evidence that nothing can explain ends at once, with no evidence at all", () => {
    const { unknowns } = drain([]);
    const answer = temperedAnswer({ unknowns, logLikelihood: () => -Infinity }, options);
    expect(answer.logEvidence).toBe(-Infinity);
    expect(answer.values.every(Number.isFinite)).toBe(true);
  });

  test.each([
    ["guesses", { ...options, guesses: 50 }],
    ["moves", { ...options, moves: 0 }],
    ["seed", { ...options, seed: -1 }],
  ])("%s out of range are refused by name", (name, wrong) => {
    expect(() => temperedAnswer(drain([]), wrong)).toThrow(name);
  });

  test.each<[string, Belief]>([
    ["a spread of 0", { law: "normal", middle: 1, spread: 0 }],
    ["a logarithm of 0", { law: "lognormal", middle: 0, spread: 1 }],
    ["bounds the wrong way round", { law: "uniform", low: 2, high: 1 }],
  ])("a belief with %s is refused", (_, belief) => {
    expect(() => checkBelief("age", belief)).toThrow("age");
  });
});

const finite = fc.double({ min: -40, max: 40, noNaN: true });

describe("the normal law", () => {
  test("its logarithm rises with z and is finite far out", () => {
    fc.assert(
      fc.property(finite, fc.double({ min: 1e-3, max: 5, noNaN: true }), (z, more) => {
        expect(logNormalBelow(z + more)).toBeGreaterThanOrEqual(logNormalBelow(z));
        expect(Number.isFinite(logNormalBelow(z))).toBe(true);
      }),
    );
  });
  test("what lies between is the same on either side, and what is left of two pieces", () => {
    fc.assert(
      fc.property(finite, fc.double({ min: 0.01, max: 3, noNaN: true }), (a, width) => {
        const [b, c] = [a + width, a + 2 * width];
        expect(logNormalBetween(a, b)).toBeCloseTo(logNormalBetween(-b, -a), 9);
        const both = logAdd(logNormalBetween(a, b), logNormalBetween(b, c));
        expect(both / logNormalBetween(a, c)).toBeCloseTo(1, 6);
      }),
    );
    expect(logNormalBetween(1, 1)).toBe(-Infinity);
    expect(Math.exp(logNormalBetween(-1, 1))).toBeCloseTo(normalBelow(1) - normalBelow(-1), 14);
  });
  test("a belief's coordinate at a share gives the share back", () => {
    const beliefs: Belief[] = [
      { law: "normal", middle: 3, spread: 2 },
      { law: "lognormal", middle: 60, spread: 0.6 },
      { law: "uniform", low: -1, high: 4 },
      { law: "log-uniform", low: 0.1, high: 10 },
    ];
    for (const belief of beliefs)
      for (const p of [1e-6, 0.05, 0.5, 0.9])
        expect(shareBelow(belief, coordinateAt(belief, p))).toBeCloseTo(p, 12);
  });
  test("sums of exponentials do not leave the range", () => {
    expect(logSum([-1000, -1000])).toBeCloseTo(-1000 + Math.LN2, 12);
    expect(logSum([-Infinity, -Infinity])).toBe(-Infinity);
    expect(logAdd(-Infinity, 3)).toBe(3);
  });
});

describe("the rule of Gauss and Legendre", () => {
  test.each([1, 2, 5, 12, 40])("with %d nodes is exact up to its degree", (n) => {
    const { nodes, weights } = gaussLegendre(n);
    for (let degree = 0; degree < 2 * n; degree++) {
      const sum = nodes.reduce((total, x, i) => total + weights[i]! * x ** degree, 0);
      expect(sum).toBeCloseTo(degree % 2 === 0 ? 2 / (degree + 1) : 0, 12);
    }
  });
});

describe("weights", () => {
  const weightsOf = fc.array(fc.double({ min: -30, max: 0, noNaN: true }), { minLength: 2, maxLength: 50 });
  test("add up to 1, and are worth from one draw to all of them", () => {
    fc.assert(
      fc.property(weightsOf, (logs) => {
        const out = new Float64Array(logs.length);
        normalised(logs, out);
        expect(out.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
        expect(effectiveSize(out)).toBeGreaterThan(1 - 1e-9);
        expect(effectiveSize(out)).toBeLessThan(logs.length + 1e-9);
      }),
    );
  });
  test("a draw is taken as often as its weight says, to one", () => {
    fc.assert(
      fc.property(weightsOf, fc.double({ min: 0, max: 0.999, noNaN: true }), (logs, shift) => {
        const out = new Float64Array(logs.length);
        normalised(logs, out);
        const times = new Array<number>(logs.length).fill(0);
        for (const from of resampled(out, shift)) times[from]!++;
        times.forEach((count, i) => expect(Math.abs(count - out[i]! * logs.length)).toBeLessThan(1 + 1e-6));
      }),
    );
  });
});

describe("another look", () => {
  const answer = exactAnswer(drain(["volume", "drip"]), 8);
  const age = column(answer, 0);
  const now = moments(age, answer.weights).variance;
  test("never adds spread on average, and leaves less the closer it measures", () => {
    const foretold = age.map((s, i) => s * column(answer, 1)[i]!);
    const left = [1, 0.3, 0.1, 0.03].map((error) => varianceAfter(age, answer.weights, { foretold, error }));
    left.reduce(
      (before, after) => {
        expect(after).toBeLessThan(before);
        return after;
      },
      now * (1 + 1e-6),
    );
  });
  test("that answers yes or no leaves nothing only if the answer tells all", () => {
    expect(
      varianceAfterYesNo(
        age,
        answer.weights,
        age.map(() => 0.3),
      ),
    ).toBeCloseTo(now, 8);
    const tells = varianceAfterYesNo(
      age,
      answer.weights,
      age.map((s) => (s > 67 ? 1 : 0)),
    );
    expect(tells).toBeLessThan(0.5 * now);
  });
});

describe("words", () => {
  test("a word never stands without its number", () => {
    expect(likelihood(0.9)).toBe("very likely (in about 18 of 20 cases like this)");
    expect(likelihood(0.5)).toBe("roughly even (in about 10 of 20 cases like this)");
  });
  test("nothing is certain", () => {
    expect(outOfTwenty(1)).toBe("in more than 19 of 20 cases like this");
    expect(outOfTwenty(0)).toBe("in fewer than 1 of 100 cases like this");
    expect(outOfTwenty(0.02)).toBe("in fewer than 1 of 20 cases like this");
    expect(likelihoodWord(1)).toBe("almost certain");
  });
  test("a quantile that has not happened stays so", () => {
    const answer = sorted([1, 2, Infinity, Infinity]);
    expect(quantile(answer, 0.3)).toBeLessThan(2);
    expect(quantile(answer, 0.9)).toBe(Infinity);
  });
});
