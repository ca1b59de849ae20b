// What the doubt hangs on, of functions whose answer is known: intervals hold the truth as often as they say, and what matters is told from what does not.
import { describe, expect, it } from "vitest";
import { randomBits } from "../../src/chance/random.ts";
import { normalQuantile } from "../../src/chance/normal.ts";
import { rankInputs } from "../../src/ensemble/ranks.ts";
import { pickFreeze, sobolIndices } from "../../src/ensemble/sobol.ts";

type Function = (u: Float64Array) => number;
interface Known {
  readonly name: string;
  readonly f: Function;
  readonly first: readonly number[];
  readonly total: readonly number[];
}

/** Ishigami and Homma (1990, recalled), a = 7, b = 0.1: the variances of sin x₁ (1 + b x₃⁴) + a sin² x₂ in closed form. */
function ishigami(): Known {
  const [a, b, p] = [7, 0.1, Math.PI];
  const alone = [0.5 * (1 + (b * p ** 4) / 5) ** 2, (a * a) / 8, 0];
  const joint = b * b * p ** 8 * (1 / 18 - 1 / 50);
  const all = alone[0]! + alone[1]! + joint;
  return {
    name: "Ishigami's",
    f: (u) => {
      const [x, y, z] = Array.from(u, (share) => p * (2 * share - 1));
      return Math.sin(x!) * (1 + b * z! ** 4) + a * Math.sin(y!) ** 2;
    },
    first: alone.map((v) => v / all),
    total: [alone[0]! + joint, alone[1]!, joint].map((v) => v / all),
  };
}

/** Sobol's product (1993, recalled): factor i has the variance 1/(3(1 + aᵢ)²) about a mean of one, and they are independent. */
function product(): Known {
  const weights = [0, 1, 4.5, 9];
  const alone = weights.map((a) => 1 / (3 * (1 + a) ** 2));
  const others = (left: number) =>
    alone.reduce((before, v, i) => (i === left ? before : before * (1 + v)), 1);
  const all = others(-1) - 1;
  return {
    name: "Sobol's",
    f: (u) => weights.reduce((before, a, i) => (before * (Math.abs(4 * u[i]! - 2) + a)) / (1 + a), 1),
    first: alone.map((v) => v / all),
    total: alone.map((v, i) => (v * others(i)) / all),
  };
}

const DESIGNS = 150;

describe.each([
  { rows: 64, least: 0.84, ...ishigami() },
  { rows: 256, least: 0.87, ...ishigami() },
  { rows: 64, least: 0.84, ...product() },
  { rows: 256, least: 0.87, ...product() },
])("of $name function, with $rows rows,", ({ rows, least, f, first, total }) => {
  const d = first.length;
  const designs = Array.from({ length: DESIGNS }, (_, seed) => {
    const { a, b, ab } = pickFreeze(rows, d, seed);
    const answers = (points: readonly Float64Array[]) => Float64Array.from(points, f);
    return sobolIndices(answers(a), answers(b), ab.map(answers));
  });
  const tally = (i: number, which: "first" | "total") => {
    const truth = (which === "first" ? first : total)[i]!;
    let [held, width, square] = [0, 0, 0];
    for (const indices of designs) {
      const { [which]: value, [`${which}Interval` as const]: interval } = indices[i]!;
      if (interval[0] <= truth && truth <= interval[1]) held++;
      width += (interval[1] - interval[0]) / DESIGNS;
      square += (value - truth) ** 2 / DESIGNS;
    }
    // A normal interval of nine tenths is 3.29 deviations wide.
    return { share: held / DESIGNS, wide: width / (3.29 * Math.sqrt(square)) };
  };
  const each = Array.from({ length: d }, (_, i) => [tally(i, "first"), tally(i, "total")]).flat();

  it("nine of ten intervals hold the truth, those of no index far less or more", () => {
    for (const { share } of each) {
      expect(share).toBeGreaterThan(0.8);
      expect(share).toBeLessThan(0.98);
    }
    const mean = each.reduce((sum, { share }) => sum + share, 0) / each.length;
    expect(mean).toBeGreaterThan(least);
    expect(mean).toBeLessThan(0.93);
  });

  it("and they are as wide as the estimates scatter, and no wider than the few sequences ask for", () => {
    for (const { wide } of each) {
      expect(wide).toBeGreaterThan(0.85);
      expect(wide).toBeLessThan(1.5);
    }
  });
});

it("a row left out is missed by its own sequence, and the same answers give the same indices", () => {
  const { f } = ishigami();
  const { a, b, ab } = pickFreeze(128, 3, 5);
  const kept = Array.from({ length: 128 }, (_, j) => j).filter((j) => j % 5 !== 0);
  const answers = (points: readonly Float64Array[]) => Float64Array.from(kept, (j) => f(points[j]!));
  const asked = () => sobolIndices(answers(a), answers(b), ab.map(answers), 1, kept);
  expect(asked()).toEqual(asked());
  const told = sobolIndices(answers(a), answers(b), ab.map(answers));
  told.forEach(({ first }, i) => {
    expect(first).toBeCloseTo(asked()[i]!.first, 12);
  });
  expect(told[0]!.firstInterval).not.toEqual(asked()[0]!.firstInterval);
});

it("an answer that never varies has indices of nothing, without doubt; two rows leave no interval narrower than they know", () => {
  const same = new Float64Array(16).fill(3);
  for (const { first, total, firstInterval, totalInterval } of sobolIndices(same, same, [same]))
    expect([first, total, ...firstInterval, ...totalInterval]).toEqual([0, 0, 0, 0, 0, 0]);
  const two = sobolIndices(Float64Array.of(1, 2), Float64Array.of(2, 4), [Float64Array.of(1, 3)]);
  expect(two[0]!.firstInterval.every((end) => !Number.isNaN(end))).toBe(true);
});

describe("ranks of the members", () => {
  const inputs = 12;
  /** Members at random, and an answer that rises with the first input, is least in the middle of the second, and hears nothing of ten. */
  const tableOf = (seed: number, n: number, known: boolean) => {
    const random = randomBits(seed, 4);
    const members = Array.from({ length: n }, (_, point) => ({
      point,
      values: Float64Array.from({ length: inputs }, random),
    }));
    const outcomes = members.map(({ values }) => {
      const hears = known ? values[0]! + 6 * (values[1]! - 0.5) ** 2 : 0;
      const running = 100 + hears + 0.2 * normalQuantile(0.0001 + 0.9998 * random());
      const event = { name: "x", clock: running, running, distance: running, lost: 0 };
      return { events: [event], end: event } as never;
    });
    const paths = Array.from({ length: inputs }, (_, i) => ({ path: `input ${i}` }) as never);
    return rankInputs({ inputs: paths, members, outcomes }, "x");
  };
  const mattering = (table: ReturnType<typeof tableOf>) =>
    table.inputs
      .filter((input) => input.class === "matters")
      .map(({ path }) => path)
      .sort();

  it("tell what matters, one way or not one way, from what cannot be told from chance", () => {
    const table = tableOf(1, 200, true);
    expect(mattering(table)).toEqual(["input 0", "input 1"]);
    expect(table.inputs.slice(0, 2).map(({ path }) => path)).toEqual(["input 0", "input 1"]);
    const second = table.inputs[1]!;
    expect(Math.abs(second.correlation)).toBeLessThan(table.chance);
    expect(second.share).toBeGreaterThan(table.chanceShare);
  });

  it("of an answer that hears none of them tell any at all in about one of twenty ensembles", () => {
    const ensembles = 80;
    const any = Array.from(
      { length: ensembles },
      (_, seed) => mattering(tableOf(seed, 60, false)).length > 0,
    );
    const share = any.filter(Boolean).length / ensembles;
    expect(share).toBeGreaterThan(0);
    expect(share).toBeLessThan(0.1);
  });
});
