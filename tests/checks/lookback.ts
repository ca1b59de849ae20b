// Looking back: the statistics against problems whose answers others have worked out, by quadrature, by other samplers, in closed form.
import { counted, lessThan, moreThan, within } from "../../src/chance/terms.ts";
import { coordinateAt, logDensity, type Belief } from "../../src/chance/belief.ts";
import { logNormalBelow, normalBelow } from "../../src/chance/normal.ts";
import { varianceAfter } from "../../src/lookback/answer/next-look.ts";
import { dots, intervalScore, moments, quantile, sorted } from "../../src/lookback/answer/spread.ts";
import { exactAnswer, exactQuantile, type ExactAnswer } from "../../src/lookback/sampler/exact.ts";
import { paretoSmoothed, trustedShape } from "../../src/lookback/sampler/pareto.ts";
import { column, type Draws, type Problem } from "../../src/lookback/sampler/problem.ts";
import { temperedAnswer } from "../../src/lookback/sampler/tempered.ts";
import { effectiveSize } from "../../src/lookback/sampler/weights.ts";
import { checkChances, constantRate, drain, fourUnknowns, type Evidence } from "../lookback/problems.ts";
import type { Check } from "./check.ts";

const quadrature = "Gauss-Legendre quadrature of the same problem, scipy 1.17.1";
const chains = "Markov chains on the same problem, JAGS 4.3.1";
const closedForm = "closed form of the same problem";

const row = (
  claim: string,
  source: string,
  expected: number,
  got: () => number,
  tolerance: Check["tolerance"],
  because?: string,
): Check => ({
  claim,
  link: "looking back",
  source,
  kind: "computed",
  expected,
  got,
  tolerance,
  ...(because === undefined ? {} : { because }),
});
const near = (relative: number) => ({ relative });
const digits = (absolute: number) => ({ absolute });

/** Work that several rows share is done once. */
function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

const meanOf = (answer: Draws, unknown: number) => moments(column(answer, unknown), answer.weights).mean;
const deviationOf = (answer: Draws, unknown: number) =>
  Math.sqrt(moments(column(answer, unknown), answer.weights).variance);
function correlation(answer: Draws): number {
  const [a, b] = [column(answer, 0), column(answer, 1)];
  const [ma, mb] = [moments(a, answer.weights), moments(b, answer.weights)];
  let sum = 0;
  for (let i = 0; i < answer.count; i++) sum += answer.weights[i]! * (a[i]! - ma.mean) * (b[i]! - mb.mean);
  return sum / Math.sqrt(ma.variance * mb.variance);
}
const shareOver = (answer: Draws, value: number) => {
  const s = column(answer, 0);
  let sum = 0;
  for (let i = 0; i < answer.count; i++) if (s[i]! > value) sum += answer.weights[i]!;
  return sum;
};

// Two unknowns, age s [d] and growth k [1/d], with one piece of evidence after another.
const exactly = (...evidence: Evidence[]) => {
  const problem = drain(evidence);
  return once(() => ({ problem, answer: exactAnswer(problem, 24) }));
};
const volume = exactly("volume");
const volumeAndDrip = exactly("volume", "drip");
const withSpot = exactly("volume", "drip", "spot");
const all = exactly("volume", "drip", "spot", "look");
const dripAndLook = exactly("drip", "look");

function posterior(
  name: string,
  found: () => { problem: Problem; answer: ExactAnswer },
  expected: { s: [number, number]; k: [number, number]; evidence: number },
  tolerance: number,
): Check[] {
  const text = (what: string) => `two unknowns, ${name}: ${what}`;
  return [
    row(text("mean age [d]"), quadrature, expected.s[0], () => meanOf(found().answer, 0), near(tolerance)),
    row(
      text("deviation of age [d]"),
      quadrature,
      expected.s[1],
      () => deviationOf(found().answer, 0),
      near(tolerance),
    ),
    row(
      text("mean growth [1/d]"),
      quadrature,
      expected.k[0],
      () => meanOf(found().answer, 1),
      near(tolerance),
    ),
    row(
      text("deviation of growth [1/d]"),
      quadrature,
      expected.k[1],
      () => deviationOf(found().answer, 1),
      near(tolerance),
    ),
    row(
      text("logarithm of the evidence"),
      quadrature,
      expected.evidence,
      () => found().answer.logEvidence,
      near(tolerance),
    ),
  ];
}

function quantiles(
  name: string,
  found: () => { problem: Problem; answer: ExactAnswer },
  expected: readonly number[],
  tolerance: number,
): Check[] {
  return [0.05, 0.25, 0.5, 0.75, 0.95].map((p, i) =>
    row(
      `two unknowns, ${name}: ${100 * p} % quantile of age [d]`,
      quadrature,
      expected[i]!,
      () => exactQuantile(found().problem, found().answer, 0, p),
      near(tolerance),
    ),
  );
}

// One unknown with a normal belief, 60 ± 30, and what a look says.
const age: Belief = { law: "normal", middle: 60, spread: 30 };
const oneUnknown = (logLikelihood: (s: number) => number, jumps: readonly number[] = []) =>
  once(() =>
    exactAnswer(
      { unknowns: [{ name: "age", belief: age, jumps }], logLikelihood: ([s]) => logLikelihood(s!) },
      48,
    ),
  );
const notSeen = oneUnknown((s) => lessThan(50, s, 8));
const seen = oneUnknown((s) => moreThan(50, s, 8));
const between = oneUnknown((s) => (s >= 30 && s <= 45 ? 0 : -Infinity), [30, 45]);
const reported = oneUnknown((s) => within(20, 34, s, 5));
const full = oneUnknown((s) => (s < 90 ? 0 : -Infinity), [90]);
const fullProblem: Problem = {
  unknowns: [{ name: "age", belief: age, jumps: [90] }],
  logLikelihood: ([s]) => (s! < 90 ? 0 : -Infinity),
};

// Linear and normal: exact by closed form.
const linear = (evidence: readonly ("missing" | "ground" | "spot")[]) =>
  once(() => exactAnswer(constantRate(evidence), 24));
const three = linear(["missing", "ground", "spot"]);

// Guesses on the same problems. Tolerances: four times the spread over 30 seeds of another program on the same problem.
const fourTimes = "four times the run-to-run deviation over 30 seeds";
const guessedTwo = once(() =>
  temperedAnswer(drain(["volume", "drip", "spot", "look"]), { guesses: 2000, moves: 5, seed: 1 }),
);
const guessedPair = once(() =>
  temperedAnswer(drain(["volume", "drip"]), { guesses: 2000, moves: 5, seed: 1 }),
);
const guessedFour = once(() => temperedAnswer(fourUnknowns(), { guesses: 8000, moves: 10, seed: 1 }));
const fourQuantile = (p: number) => quantile(sorted(column(guessedFour(), 0)), p);

// Exponential tails, whose true shape is known.
const exponential = (rate: number) =>
  once(() => {
    const x = Array.from({ length: 1000 }, (_, i) => -Math.log(1 - (i + 0.5) / 1000) / rate);
    const smoothed = paretoSmoothed(x.map((value) => (rate - 1) * value));
    const mean = x.reduce((sum, value, i) => sum + Math.exp(smoothed.logWeights[i]!) * value, 0);
    return { ...smoothed, mean, raw: effectiveSize(x.map((value) => Math.exp((rate - 1) * value))) / 1000 };
  });
const looPackage = "R package loo 2.5.1 on the same weights";

const after = once(() => {
  const { answer } = volumeAndDrip();
  const [s, k] = [column(answer, 0), column(answer, 1)];
  const foretold = (of: (s: number, k: number) => number) => s.map((value, i) => of(value, k[i]!));
  const left = (of: (s: number, k: number) => number, error: number) =>
    varianceAfter(s, answer.weights, { foretold: foretold(of), error });
  return {
    spot: left(checkChances.spotAgo, 5),
    lateSpot: left(checkChances.spotAgo, 15),
    drip: left(checkChances.logRate, 0.1),
    volume: left(checkChances.lost, 50),
  };
});

const lognormal = sorted(
  Float64Array.from({ length: 200_001 }, (_, i) =>
    Math.exp(
      Math.log(11.4) + 0.2 * coordinateAt({ law: "normal", middle: 0, spread: 1 }, (i + 0.5) / 200_001),
    ),
  ),
);
const twentyDots = once(() => dots(lognormal, 20));

export const checks: readonly Check[] = [
  // Terms of a likelihood.
  row(
    "log term of the missing volume at s = 60 d, k = 0.035 [-]",
    "scipy 1.17.1",
    -5.937781074627465,
    () => checkChances.term("volume", 60, 0.035),
    near(1e-10),
  ),
  row(
    "log term of the drip there",
    "scipy 1.17.1",
    0.5999806803190495,
    () => checkChances.term("drip", 60, 0.035),
    near(1e-10),
  ),
  row(
    "log term of the first spot there",
    "scipy 1.17.1",
    -2.920294788976483,
    () => checkChances.term("spot", 60, 0.035),
    near(1e-10),
  ),
  row(
    "log belief in age and growth there",
    "scipy 1.17.1",
    -0.6814291262658213,
    () =>
      logDensity({ law: "lognormal", middle: 60, spread: 0.6 }, Math.log(60)) +
      logDensity({ law: "lognormal", middle: 0.03, spread: 0.5 }, Math.log(0.035)),
    near(1e-12),
  ),
  row(
    "volume lost after 70 d at k = 0.035 [mL]",
    "scipy 1.17.1",
    1815.1451518668669,
    () => checkChances.lost(70, 0.035),
    near(1e-10),
  ),
  row(
    "rate at a look 60 d before, s = 70 d, k = 0.035 [mL/d]",
    "scipy 1.17.1",
    8.514405291559545,
    () => checkChances.rate(10, 0.035),
    near(1e-10),
  ),
  row(
    "probability that the look finds it",
    "scipy 1.17.1",
    0.2728083520846727,
    () => checkChances.found(checkChances.rate(10, 0.035)),
    near(1e-10),
  ),
  row(
    "log term of that look, nothing seen",
    "scipy 1.17.1",
    -0.31856522144977556,
    () => checkChances.term("look", 70, 0.035),
    near(1e-10),
  ),
  row(
    "all four log terms at s = 70 d, k = 0.035",
    "scipy 1.17.1",
    -24.40875367246795,
    () => drain(["volume", "drip", "spot", "look"]).logLikelihood(Float64Array.of(70, 0.035)),
    near(1e-10),
  ),
  row("Φ(-6)", "mpmath 1.3.0", 9.86587645037698e-10, () => normalBelow(-6), near(1e-12)),
  row("Φ(1.234)", "mpmath 1.3.0", 0.8913985478784757, () => normalBelow(1.234), near(1e-14)),
  row("ln Φ(-30)", "mpmath 1.3.0", Math.log(4.90671392714819e-198), () => logNormalBelow(-30), near(1e-13)),
  row(
    "no drip in ten minutes: rate that this leaves 5 % for [1/min]",
    closedForm,
    0.29957322735539906,
    () => -Math.log(0.05) / 10,
    near(1e-12),
  ),
  row(
    "14 drips in 5 minutes where a rate Gamma(2, 1) is believed: evidence",
    "scipy 1.17.1",
    0.03245273573943723,
    () => gammaEvidence(),
    near(1e-8),
  ),

  // One unknown.
  row(
    "nothing seen: probability",
    closedForm,
    0.3736966835882166,
    () => Math.exp(notSeen().logEvidence),
    near(1e-9),
  ),
  row("nothing seen: mean age [d]", closedForm, 30.618824505851233, () => meanOf(notSeen(), 0), near(1e-9)),
  row(
    "nothing seen: deviation [d]",
    closedForm,
    17.636669382896397,
    () => deviationOf(notSeen(), 0),
    near(1e-9),
  ),
  row("seen: probability", closedForm, 0.6263033164, () => Math.exp(seen().logEvidence), near(1e-9)),
  row("seen: mean age [d]", closedForm, 77.53087929502172, () => meanOf(seen(), 0), near(1e-9)),
  row("seen: deviation [d]", closedForm, 20.712272599387784, () => deviationOf(seen(), 0), near(1e-9)),
  row(
    "age known between 30 and 45 d: mean",
    "scipy 1.17.1",
    37.96378623476104,
    () => meanOf(between(), 0),
    near(1e-10),
  ),
  row(
    "age known between 30 and 45 d: deviation",
    "scipy 1.17.1",
    4.297231170269769,
    () => deviationOf(between(), 0),
    near(1e-10),
  ),
  row(
    "age known between 30 and 45 d: probability",
    "scipy 1.17.1",
    0.1498822847945298,
    () => Math.exp(between().logEvidence),
    near(1e-10),
  ),
  row(
    "age reported 20 to 34 d ± 5: probability",
    closedForm,
    0.10208754105498757,
    () => Math.exp(reported().logEvidence),
    near(1e-9),
  ),
  row(
    "age reported 20 to 34 d ± 5: mean",
    closedForm,
    28.452555044714135,
    () => meanOf(reported(), 0),
    near(1e-9),
  ),
  row(
    "age reported 20 to 34 d ± 5: deviation",
    closedForm,
    6.28415490115969,
    () => deviationOf(reported(), 0),
    near(1e-9),
  ),
  row("full 90 d ago: mean age [d]", "scipy 1.17.1", 51.372000871824646, () => meanOf(full(), 0), near(1e-8)),
  row(
    "full 90 d ago: deviation [d]",
    "scipy 1.17.1",
    23.805832419786228,
    () => deviationOf(full(), 0),
    near(1e-8),
  ),
  ...[
    [0.05, 8.18445514],
    [0.5, 53.99478941],
    [0.95, 85.17130057],
  ].map(([p, expected]) =>
    row(
      `full 90 d ago: ${100 * p!} % quantile [d]`,
      "scipy 1.17.1",
      expected!,
      () => exactQuantile(fullProblem, full(), 0, p!),
      near(1e-8),
    ),
  ),

  // Two unknowns, linear and normal.
  row(
    "constant rate, three facts: mean age [d]",
    "scipy 1.17.1",
    51.92247932,
    () => meanOf(three(), 0),
    near(1e-8),
  ),
  row(
    "constant rate, three facts: deviation of age [d]",
    "scipy 1.17.1",
    3.82939408,
    () => deviationOf(three(), 0),
    near(1e-8),
  ),
  row(
    "constant rate, three facts: mean of what was soaked up [mL]",
    "scipy 1.17.1",
    304.4513501,
    () => meanOf(three(), 1),
    near(1e-8),
  ),
  row(
    "constant rate, three facts: deviation of what was soaked up [mL]",
    "scipy 1.17.1",
    85.64992094,
    () => deviationOf(three(), 1),
    near(1e-8),
  ),
  row(
    "constant rate, three facts: correlation",
    "scipy 1.17.1",
    0.7029123997,
    () => correlation(three()),
    near(1e-8),
  ),
  row(
    "constant rate, three facts: logarithm of the evidence",
    "scipy 1.17.1",
    -19.9570245181,
    () => three().logEvidence,
    near(1e-8),
  ),
  ...(
    [
      ["missing", 52.30769231, 5.88348405],
      ["ground", 54.24944624, 6.11693849],
      ["spot", 50.34334764, 5.55889266],
    ] as const
  ).flatMap(([fact, mean, deviation]) => {
    const found = linear([fact]);
    return [
      row(
        `constant rate, ${fact} alone: mean age [d]`,
        "scipy 1.17.1",
        mean,
        () => meanOf(found(), 0),
        near(1e-8),
      ),
      row(
        `constant rate, ${fact} alone: deviation of age [d]`,
        "scipy 1.17.1",
        deviation,
        () => deviationOf(found(), 0),
        near(1e-8),
      ),
    ];
  }),
  ...(
    [
      [["missing", "ground"], 4.283386212],
      [["missing", "spot"], 4.077765996],
      [["ground", "spot"], 4.974248146],
    ] as const
  ).map(([facts, deviation]) => {
    const found = linear(facts);
    return row(
      `constant rate, ${facts.join(" and ")}: deviation of age [d]`,
      "scipy 1.17.1",
      deviation,
      () => deviationOf(found(), 0),
      near(1e-8),
    );
  }),

  // Two unknowns, growing.
  ...posterior(
    "volume",
    volume,
    { s: [69.31505748, 17.55777177], k: [0.03196705, 0.01518032], evidence: -8.51516685 },
    1e-5,
  ),
  ...posterior(
    "volume, drip and spot",
    withSpot,
    { s: [52.76950968, 4.96411215], k: [0.04217729, 0.00620908], evidence: -11.33777552 },
    1e-5,
  ),
  ...posterior(
    "volume, drip, spot and look",
    all,
    { s: [52.66628, 4.883127], k: [0.04227681, 0.00616062], evidence: -11.34835448 },
    1e-4,
  ),
  row(
    "two unknowns, volume, drip, spot and look: correlation",
    quadrature,
    -0.897277,
    () => correlation(all().answer),
    near(1e-4),
  ),
  row(
    "two unknowns, volume, drip, spot and look: probability that it is older than the look",
    quadrature,
    0.062561,
    () => shareOver(all().answer, 60),
    near(1e-3),
  ),
  ...posterior(
    "drip and look",
    dripAndLook,
    { s: [60.034553, 21.034549], k: [0.03690318, 0.01330206], evidence: -1.63108982 },
    1e-4,
  ),
  row(
    "two unknowns, drip and look: probability that it is older than the look",
    quadrature,
    0.431071,
    () => shareOver(dripAndLook().answer, 60),
    near(1e-3),
  ),
  ...quantiles("volume and drip", volumeAndDrip, [52.0771, 60.2951, 66.5856, 73.3861, 84.1265], 1e-4),
  ...quantiles("volume, drip, spot and look", all, [44.5566, 49.3755, 52.7137, 56.0061, 60.5512], 1e-3),
  ...quantiles("drip and look", dripAndLook, [31.9779, 45.4121, 56.8782, 71.0639, 98.6722], 1e-3),
  row(
    "two unknowns, volume and drip, by chains: mean age [d]",
    chains,
    67.113,
    () => meanOf(volumeAndDrip().answer, 0),
    digits(4 * 0.062),
    "four standard errors of the chains",
  ),
  row(
    "two unknowns, drip and look, by chains: mean age [d]",
    chains,
    60.066,
    () => meanOf(dripAndLook().answer, 0),
    digits(4 * 0.067),
    "four standard errors of the chains",
  ),

  // By guesses.
  row(
    "guesses, two unknowns: mean age [d]",
    quadrature,
    52.66628,
    () => meanOf(guessedTwo(), 0),
    digits(0.4),
    fourTimes,
  ),
  row(
    "guesses, two unknowns: deviation of age [d]",
    quadrature,
    4.883127,
    () => deviationOf(guessedTwo(), 0),
    digits(0.272),
    fourTimes,
  ),
  row(
    "guesses, two unknowns: logarithm of the evidence",
    quadrature,
    -11.34835448,
    () => guessedTwo().logEvidence,
    digits(0.192),
    fourTimes,
  ),
  row(
    "guesses, volume and drip: mean age [d]",
    quadrature,
    67.1460114,
    () => meanOf(guessedPair(), 0),
    digits(0.72),
    fourTimes,
  ),
  row(
    "guesses, four unknowns: mean age [d]",
    quadrature,
    50.6448,
    () => meanOf(guessedFour(), 0),
    digits(0.6),
    fourTimes,
  ),
  row(
    "guesses, four unknowns: deviation of age [d]",
    quadrature,
    11.2715,
    () => deviationOf(guessedFour(), 0),
    digits(0.56),
    fourTimes,
  ),
  row(
    "guesses, four unknowns: logarithm of the evidence",
    quadrature,
    -10.42335,
    () => guessedFour().logEvidence,
    digits(0.076),
    fourTimes,
  ),
  row(
    "guesses, four unknowns: mean first rate [mL/d]",
    quadrature,
    10.8363,
    () => meanOf(guessedFour(), 2),
    near(0.04),
    "5.8 mL/d of spread over some 1000 independent guesses, three deviations",
  ),
  row(
    "guesses, four unknowns: mean of what was soaked up [mL]",
    quadrature,
    232.997,
    () => meanOf(guessedFour(), 3),
    near(0.04),
    "104 mL of spread over some 1000 independent guesses, three deviations",
  ),
  ...[
    [0.05, 35.0],
    [0.25, 42.7],
    [0.5, 49.24],
    [0.75, 56.91],
    [0.95, 71.46],
  ].map(([p, expected]) =>
    row(
      `guesses, four unknowns: ${100 * p!} % quantile of age [d]`,
      chains,
      expected!,
      () => fourQuantile(p!),
      near(0.03),
      "a quantile spreads about twice as far as the mean",
    ),
  ),
  row(
    "four unknowns, by chains: mean age [d]",
    chains,
    50.662,
    () => meanOf(guessedFour(), 0),
    digits(0.6 + 4 * 0.07),
    fourTimes,
  ),

  // Weights.
  row(
    "weights 1, 2, 3, 4 are worth 10/3",
    closedForm,
    10 / 3,
    () => effectiveSize([1, 2, 3, 4]),
    near(1e-12),
  ),
  ...(
    [
      [1.25, 0.9400897285, 0.2367877359, 938.386, 0.9987681255],
      [2, 0.4423102605, 0.4970859613, 444.213, 0.9508708269],
      [5, 0.05980433125, 0.7574598327, 71.963, 0.61630522],
    ] as const
  ).flatMap(([rate, raw, shape, effective, mean]) => {
    const found = exponential(rate);
    return [
      row(
        `weights of an exponential tail, rate ${rate}: raw worth`,
        looPackage,
        raw,
        () => found().raw,
        near(1e-8),
      ),
      row(
        `weights of an exponential tail, rate ${rate}: shape`,
        looPackage,
        shape,
        () => found().shape,
        near(1e-3),
      ),
      row(
        `weights of an exponential tail, rate ${rate}: smoothed worth`,
        looPackage,
        effective,
        () => found().effective,
        near(1e-4),
      ),
      row(
        `weights of an exponential tail, rate ${rate}: smoothed mean`,
        looPackage,
        mean,
        () => found().mean,
        near(1e-4),
      ),
    ];
  }),
  ...[
    [100, 0.5],
    [320, 0.6008],
    [1000, 0.6667],
    [2200, 0.7],
  ].map(
    ([draws, shape]) =>
      ({
        ...row(
          `largest shape trusted with ${draws} draws`,
          "Vehtari, Simpson, Gelman, Yao and Gabry, Pareto smoothed importance sampling, 2024",
          shape!,
          () => trustedShape(draws!),
          digits(5e-5),
        ),
        kind: "recalled",
      }) as Check,
  ),

  // The next look.
  row(
    "variance left after a look at the first spot ± 5 d [d²]",
    quadrature,
    22.972158,
    () => after().spot,
    near(1e-5),
  ),
  row(
    "variance left after a look at the first spot ± 15 d [d²]",
    quadrature,
    70.631663,
    () => after().lateSpot,
    near(1e-5),
  ),
  row(
    "variance left after a second drip count ± 10 % [d²]",
    quadrature,
    56.603719,
    () => after().drip,
    near(1e-5),
  ),
  row(
    "variance left after a second volume ± 50 mL [d²]",
    quadrature,
    66.901954,
    () => after().volume,
    near(1e-5),
  ),
  row(
    "variance left after one linear look [d²]",
    closedForm,
    34.61538461538461,
    () => linearLook(),
    near(1e-4),
    "readings on a grid",
  ),

  // Showing it.
  ...(
    [
      [1, 7.70308238],
      [2, 8.54808312],
      [10, 11.25792134],
      [11, 11.54387174],
      [19, 15.20340855],
      [20, 16.87116838],
    ] as const
  ).map(([i, expected]) =>
    row(
      `dot ${i} of 20 for lognormal(ln 11.4, 0.2)`,
      "scipy 1.17.1",
      expected,
      () => twentyDots()[i - 1]!,
      near(1e-6),
    ),
  ),
  row(
    "interval 45 to 61, nine tenths, truth 50: score",
    closedForm,
    16,
    () => intervalScore(45, 61, 50, 0.9),
    near(1e-12),
  ),
  row(
    "interval 45 to 61, nine tenths, truth 70: score",
    closedForm,
    196,
    () => intervalScore(45, 61, 70, 0.9),
    near(1e-12),
  ),
];

/** Evidence of 14 drips in 5 minutes, a rate from Gamma(2, 1) per minute: its density as a likelihood over a wide even belief. */
function gammaEvidence(): number {
  const answer = exactAnswer({
    unknowns: [{ name: "rate", belief: { law: "uniform", low: 0, high: 40 } }],
    logLikelihood: ([rate]) => counted(14, 5 * rate!) + Math.log(rate!) - rate! + Math.log(40),
  });
  return Math.exp(answer.logEvidence);
}

/** An age with variance 900 d² seen through 25 mL/d with an error of 150 mL. */
function linearLook(): number {
  const answer = exactAnswer({ unknowns: [{ name: "age", belief: age }], logLikelihood: () => 0 }, 60);
  const s = column(answer, 0);
  return varianceAfter(s, answer.weights, { foretold: s.map((value) => 25 * value), error: 150 }, 2000);
}
