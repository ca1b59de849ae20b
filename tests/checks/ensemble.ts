// Indices of functions whose answer is known, and a sequence whose points are known.
import { pickFreeze, sobolIndices, type SobolIndex } from "../../src/ensemble/sobol.ts";
import { primes, scrambledHalton } from "../../src/ensemble/sequence.ts";
import { quantiles } from "../../src/ensemble/quantiles.ts";
import type { Check, Kind } from "./check.ts";

type Function = (u: Float64Array) => number;

const ROWS = 16_384;
const known = new Map<Function, readonly SobolIndex[]>();

function indicesOf(f: Function, inputs: number): readonly SobolIndex[] {
  const { a, b, ab } = pickFreeze(ROWS, inputs, 1);
  const answers = (rows: readonly Float64Array[]) => Float64Array.from(rows, f);
  const found = known.get(f) ?? sobolIndices(answers(a), answers(b), ab.map(answers));
  known.set(f, found);
  return found;
}

// Ishigami and Homma's function with a = 7, b = 0.1 on (-π, π)³.
const ishigami: Function = (u) => {
  const [x1, x2, x3] = Array.from(u, (share) => Math.PI * (2 * share - 1));
  return Math.sin(x1!) + 7 * Math.sin(x2!) ** 2 + 0.1 * x3! ** 4 * Math.sin(x1!);
};
// Sobol's product with a = 0, 1, 4.5, 9 and four times 99.
const weights = [0, 1, 4.5, 9, 99, 99, 99, 99];
const product: Function = (u) =>
  weights.reduce((before, a, i) => (before * (Math.abs(4 * u[i]! - 2) + a)) / (1 + a), 1);
const slopes = [1, 2, 3];
const linear: Function = (u) => slopes.reduce((sum, slope, i) => sum + slope * u[i]!, 0);

const because = "an estimate on 16 384 rows: its scatter over seeds is a third of this";

const index = (
  f: Function,
  inputs: number,
  input: number,
  which: "first" | "total",
  name: string,
  source: string,
  kind: Kind,
  expected: number,
): Check => ({
  claim: `${which === "first" ? "first-order" : "total"} index of input ${input} of ${name}`,
  link: "ensemble",
  source,
  kind,
  expected,
  got: () => indicesOf(f, inputs)[input - 1]![which],
  tolerance: { absolute: which === "first" ? 0.03 : 0.015 },
  because,
});

const ishigamiSource =
  "Ishigami and Homma, An importance quantification technique in uncertainty analysis for computer models, 1990";
const sobolSource = "Sobol, Sensitivity estimates for nonlinear mathematical models, 1993";
const saltelliSource =
  "Saltelli et al., Variance based sensitivity analysis of model output, Computer Physics Communications 181, 2010";

export const checks: readonly Check[] = [
  ...[0.3139, 0.4424, 0].map((expected, i) =>
    index(ishigami, 3, i + 1, "first", "the Ishigami function", ishigamiSource, "recalled", expected),
  ),
  ...[0.5576, 0.4424, 0.2437].map((expected, i) =>
    index(ishigami, 3, i + 1, "total", "the Ishigami function", ishigamiSource, "recalled", expected),
  ),
  ...[0.7162, 0.179, 0.0237, 0.0072].map((expected, i) =>
    index(product, 8, i + 1, "first", "a product of eight", sobolSource, "recalled", expected),
  ),
  ...[0.7871, 0.2422, 0.0343].map((expected, i) =>
    index(product, 8, i + 1, "total", "a product of eight", saltelliSource, "recalled", expected),
  ),
  ...slopes.map((slope, i) =>
    index(
      linear,
      3,
      i + 1,
      "first",
      "a sum of three",
      "closed form, slope squared over their sum",
      "computed",
      slope ** 2 / 14,
    ),
  ),
  ...slopes.map((slope, i) =>
    index(
      linear,
      3,
      i + 1,
      "total",
      "a sum of three",
      "closed form, slope squared over their sum",
      "computed",
      slope ** 2 / 14,
    ),
  ),
  {
    claim: "the hundredth prime, base of the hundredth coordinate, is 541",
    link: "ensemble",
    source: "Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 24.9",
    kind: "recalled",
    expected: 541,
    got: () => primes(100)[99]!,
    tolerance: { absolute: 0 },
  },
  {
    claim: "the mean of a product of eight over 4096 points of a scrambled Halton sequence is 1",
    link: "ensemble",
    source: sobolSource,
    kind: "recalled",
    expected: 1,
    got: () => {
      const sequence = scrambledHalton(8, 1);
      const point = new Float64Array(8);
      let sum = 0;
      for (let i = 0; i < ROWS; i++) {
        sequence(i, point);
        sum += product(point);
      }
      return sum / ROWS;
    },
    tolerance: { absolute: 0.002 },
    because: "random points scatter by 0.011: a sequence that fills the box does five times better",
  },
  {
    claim: "the quarter quantile of 1, 2, 3, 4 is 1.75",
    link: "ensemble",
    source: "Hyndman and Fan, Sample quantiles in statistical packages, 1996, definition 7",
    kind: "recalled",
    expected: 1.75,
    got: () => quantiles([4, 2, 1, 3], [0.25])[0]!,
    tolerance: { absolute: 1e-12 },
  },
];
