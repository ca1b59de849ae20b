// What is known of a guess before it is followed: never less than what following it tells, so that what is spared changes no answer.
import { beforeAll, describe, expect, test } from "vitest";
import { coordinateAt, valueAt } from "../../src/chance/belief.ts";
import { randomBits } from "../../src/chance/random.ts";
import { mostOf } from "../../src/lookback/at-most.ts";
import { explanationsOf } from "../../src/lookback/causes.ts";
import type { Evidence } from "../../src/lookback/evidence.ts";
import { askedOf, benchOf, problemOf, type Bench } from "../../src/lookback/question.ts";
import { moveAbout } from "../../src/lookback/sampler/moves.ts";
import { begun, believed } from "../../src/lookback/sampler/first.ts";
import type { Problem } from "../../src/lookback/sampler/problem.ts";
import { shownBy } from "../../src/lookback/shown.ts";
import { termOf } from "../../src/lookback/terms.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { days } from "../emerge/van.ts";
import { lossShop } from "./grown-otherwise.ts";

const litre = 1e-3;
const now = days(120);
const item = (more: object): Evidence => ({ name: JSON.stringify(more), ...more }) as Evidence;

/** Every kind that is asked without events, at the visit and before it, in favour of a leak and against it. */
const evidence: readonly Evidence[] = [
  item({ kind: "known full", at: 0, error: 0.15 * litre }),
  item({ kind: "known full", at: days(60), error: 0.15 * litre }),
  item({ kind: "fluid missing", at: now, volume: 2 * litre, error: 0.15 * litre, by: "the jug" }),
  item({ kind: "fluid missing", at: days(80), volume: 1 * litre, error: 0.1 * litre, by: "the jug" }),
  item({
    kind: "fluid drained",
    at: now,
    volume: 3 * litre,
    error: 0.1 * litre,
    stays: 4 * litre,
    staysError: 0.3 * litre,
  }),
  item({ kind: "dipstick", at: now, temperature: 343.15, position: 0.2, error: 0.1 }),
  item({ kind: "off the dipstick", at: now, temperature: 343.15, error: 0.1 }),
  item({ kind: "drops", at: now, count: 40, time: 120, moment: "idling hot" }),
  item({ kind: "drops", at: now, count: 0, time: 600, moment: "parked" }),
  item({ kind: "drops", at: days(70), count: 7, time: 600, moment: "parked", dropVolume: 4e-8 }),
  ...(["walk round", "look underneath", "shield taken off"] as const).flatMap((look) =>
    [true, false].flatMap((seen) => [
      item({ kind: "looked", at: now, look, seen }),
      item({ kind: "looked", at: days(50), look, seen }),
    ]),
  ),
  item({ kind: "line pressure", at: now, pressure: 4e5, error: 8e3 }),
  item({ kind: "cooler flow", at: now, flow: 5e-5, error: 4e-6 }),
  item({ kind: "learned trim", at: now, pressure: 2e4, error: 5e3 }),
  item({ kind: "fluid in the coolant", at: now, found: false }),
];

let bench: Bench;
beforeAll(() => {
  const { visit, prepared } = lossShop();
  const clutch = visit.unit.build.clutches[0]!.name;
  const learned = item({ kind: "learned fill", at: now, clutch, time: 0.02, error: 0.01 });
  const asks: Visit = { ...visit, at: now, evidence: [...evidence, learned] };
  bench = benchOf(asks, prepared, shownBy(asks.unit, asks.site, asks.evidence));
});

const values = ({ unknowns }: Pick<Problem, "unknowns">, i: number): Float64Array => {
  const random = randomBits(17, i);
  return Float64Array.from(unknowns, ({ belief }) =>
    valueAt(belief, coordinateAt(belief, random() + 2 ** -33)),
  );
};

test("no item says more for a guess that is followed than it could before: every kind, behind a shield and without, 150 guesses of every explanation", () => {
  let near = 0;
  for (const shield of [true, false]) {
    const asks: Bench = { ...bench, visit: { ...bench.visit, shield } };
    for (const explanation of explanationsOf(asks.visit))
      for (let i = 0; i < 150; i++) {
        const asked = askedOf(asks, explanation, values(explanation, i));
        const most = asks.visit.evidence.map((one) => mostOf(one, asked));
        asks.visit.evidence.forEach((one, k) => {
          const said = termOf(one, asked);
          expect(most[k]!, `${explanation.cause}: ${one.name}`).toBeGreaterThanOrEqual(said - 1e-9);
          if (most[k]! - said < 0.1) near++;
        });
      }
  }
  // It is no bound that says nothing: many items come near it.
  expect(near).toBeGreaterThan(10_000);
});

describe("a problem that knows the most", () => {
  /** Few enough items that many guesses remain. */
  const only = (indices: readonly number[]) => indices.map((i) => bench.visit.evidence[i]!);
  const both = (explanation: number): readonly [Problem, Problem] => {
    const one = explanationsOf(bench.visit)[explanation]!;
    const { further: _, ...problem } = problemOf(bench, one, only([0, 2, 7, 11]));
    const { atMost: __, ...plain } = problem;
    return [problem, plain];
  };

  test("moves its guesses as one that does not, to the bit, and follows fewer", () => {
    const [problem, plain] = both(0);
    const moved = [problem, plain].map((one) => {
      let followed = 0;
      const counted: Problem = {
        ...one,
        logLikelihood: (guess) => {
          followed++;
          return one.logLikelihood(guess);
        },
      };
      const { points, logLikelihood, power } = begun(plain, 100, 5);
      moveAbout(counted, {
        points,
        logLikelihood,
        further: new Float64Array(100),
        others: points.slice(),
        power,
        furtherPower: 0,
        moves: 5,
        seed: 5,
        round: 1,
      });
      return { points, logLikelihood, followed };
    });
    expect(moved[0]!.points).toEqual(moved[1]!.points);
    expect(moved[0]!.logLikelihood).toEqual(moved[1]!.logLikelihood);
    expect(moved[0]!.followed).toBeLessThan(0.8 * moved[1]!.followed);
  });

  test("begins with the same guesses, power and evidence, within a ten-thousandth of one guess", () => {
    for (const explanation of [0, 1, 2, 3]) {
      const [problem, plain] = both(explanation);
      const [spared, whole] = [begun(problem, 200, 9), begun(plain, 200, 9)];
      expect(spared.power).toBeCloseTo(whole.power, 6);
      expect(spared.logEvidence).toBeCloseTo(whole.logEvidence, 6);
      expect(spared.points).toEqual(whole.points);
    }
  });

  test("with no guess that is possible still ends", () => {
    const none: Problem = { ...both(0)[1], logLikelihood: () => -Infinity, atMost: () => 0 };
    const { points, logEvidence } = begun(none, 100, 2);
    expect(logEvidence).toBe(-Infinity);
    expect(points).toEqual(believed(none, 800, 2).slice(0, points.length));
  });
});
