// Errors that several items share: what top-ups, one jug and looks of one kind have in common must count once.
import { beforeAll, describe, expect, test } from "vitest";
import { explanationsOf } from "../../src/lookback/causes.ts";
import { commonCount, place } from "../../src/lookback/common.ts";
import type { Evidence } from "../../src/lookback/evidence.ts";
import { askedOf, type Bench } from "../../src/lookback/question.ts";
import { exactAnswer } from "../../src/lookback/sampler/exact.ts";
import { column, type Draws } from "../../src/lookback/sampler/problem.ts";
import { moments } from "../../src/lookback/answer/spread.ts";
import { logLook, sharedUnknowns } from "../../src/lookback/shared.ts";
import { missingAt, termOf } from "../../src/lookback/terms.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { days } from "../emerge/van.ts";
import { lossShop } from "./grown-otherwise.ts";

let shop: Bench;
beforeAll(() => {
  shop = lossShop();
});

const litre = 1e-3;
const error = 0.1 * litre;

/** A unit that lacks three litres and has no leak, with only the shared error unknown: what its items say together. */
function overShared(more: Pick<Visit, "evidence" | "added">): Draws {
  const visit = { ...shop.visit, ...more };
  const explanation = explanationsOf(visit).find(({ cause }) => cause === "wrong or aged fluid")!;
  const [unknown] = sharedUnknowns(visit);
  return exactAnswer({
    unknowns: [unknown!],
    logLikelihood: ([common]) => {
      const values = Float64Array.from(explanation.unknowns, ({ belief }) =>
        "middle" in belief ? belief.middle : belief.low,
      );
      values[place.short] = 3 * litre;
      values[commonCount] = common!;
      const asked = askedOf({ ...shop, visit }, explanation, values);
      return visit.evidence.reduce((sum, item) => sum + termOf(item, asked), 0);
    },
  });
}

/** A litre poured in on a day, told to the error [m³]. */
const poured = (day: number, by = "the owner") => ({
  at: days(day),
  volume: litre,
  error,
  temperature: shop.visit.unit.build.fillTemperature,
  by,
});
const missing = (day: number, volume: number, by?: string): Evidence => ({
  name: `missing on day ${day}`,
  kind: "fluid missing",
  at: days(day),
  volume,
  error,
  ...(by === undefined ? {} : { by }),
});

/** Logarithm of a density of a volume in units of its error, in m³. */
const perError = (units: number, count: number) => units - count * Math.log(error);

describe("the error of what was poured in", () => {
  // Worked by hand. After one litre 3 - 1 = 2 l are missing, less or more by the one error of that litre: two measurements with errors of 1 each, both
  // one error too high, are normal with the covariance [[2, 1], [1, 2]]: determinant 3, inverse [[2, -1], [-1, 2]]/3, residues (1, 1) give 2/3:
  // ln p = -ln 2π - ½ ln 3 - ⅓. Taken for independent it would be -ln 2π - ln 2 - ½.
  test("is one error in two measurements after it", () => {
    const answer = overShared({
      added: [poured(10)],
      evidence: [missing(20, 2 * litre + error), missing(30, 2 * litre + error)],
    });
    const byHand = -Math.log(2 * Math.PI) - 0.5 * Math.log(3) - 1 / 3;
    expect(answer.logEvidence).toBeCloseTo(perError(byHand, 2), 9);
    // Told too much by (1 + 1)/(1 + 2) of its error: precision 1 of the belief and 1 of each measurement.
    const { mean, variance } = moments(column(answer, 0), answer.weights);
    expect(mean).toBeCloseTo(2 / 3, 9);
    expect(variance).toBeCloseTo(1 / 3, 9);
  });

  // Two litres of one person are wrong by two errors, not by √2: variance 1 + 2² = 5; residue 0.
  test("adds up over one person's bottles", () => {
    const answer = overShared({ added: [poured(10), poured(15)], evidence: [missing(30, litre)] });
    expect(answer.logEvidence).toBeCloseTo(perError(-0.5 * Math.log(2 * Math.PI * 5), 1), 9);
  });

  test("moves every reading of the level, a stick or a full check as well as what is measured missing", () => {
    const visit = { ...shop.visit, evidence: [], added: [poured(10)] };
    const explanation = explanationsOf(visit).find(({ cause }) => cause === "never filled")!;
    const values = Float64Array.from(explanation.unknowns, () => 1);
    const lacking = (common: number) => {
      values[commonCount] = common;
      return missingAt(askedOf({ ...shop, visit }, explanation, values), days(20));
    };
    expect(lacking(1) - lacking(0)).toBeCloseTo(error, 12);
  });

  test("is no unknown where nothing was poured in and no two items have one measure", () => {
    expect(sharedUnknowns({ added: [], evidence: [missing(30, litre, "the shop's jug")] })).toEqual([]);
    expect(sharedUnknowns({ added: [poured(1), poured(2)], evidence: [] }).map(({ name }) => name)).toEqual([
      "volumes told by the owner",
    ]);
  });
});

describe("one jug", () => {
  // Half of the variance comes again each time: covariance [[1, ½], [½, 1]], determinant ¾, residues (1, 1) give 2·½/¾ = 4/3.
  test("is as wrong the second time, by half of the variance", () => {
    const answer = overShared({
      added: [],
      evidence: [
        missing(20, 3 * litre + error, "the shop's jug"),
        missing(30, 3 * litre + error, "the shop's jug"),
      ],
    });
    const byHand = -Math.log(2 * Math.PI) - 0.5 * Math.log(3 / 4) - 2 / 3;
    expect(answer.logEvidence).toBeCloseTo(perError(byHand, 2), 9);
  });

  // What it read as a litre poured in was less, and what it reads missing is too much: 3 - 1 + 1·u and the reading's own √½·u: (1 + √½)² + ½ in all.
  test("tells too much of what it pours and of what it measures", () => {
    const answer = overShared({
      added: [poured(10, "the shop's jug")],
      evidence: [missing(20, 2 * litre, "the shop's jug")],
    });
    const variance = (1 + Math.SQRT1_2) ** 2 + 0.5;
    expect(answer.logEvidence).toBeCloseTo(perError(-0.5 * Math.log(2 * Math.PI * variance), 1), 9);
  });
});

describe("looks of one kind", () => {
  const together = (p: number, looks: readonly boolean[]) =>
    exactAnswer({
      unknowns: [{ name: "common", belief: { law: "normal", middle: 0, spread: 1 } }],
      logLikelihood: ([common]) => looks.reduce((sum, sees) => sum + logLook(sees, p, common), 0),
    }).logEvidence;
  const looked = (day: number, look: "walk round" | "look underneath", seen = false): Evidence => ({
    name: `look on day ${day}`,
    kind: "looked",
    at: days(day),
    look,
    seen,
  });

  test.each([0.02, 0.3, 0.6, 0.97])("one that sees with probability %d is as good as ever", (p) => {
    expect(together(p, [true])).toBeCloseTo(Math.log(p), 9);
    expect(together(p, [false])).toBeCloseTo(Math.log1p(-p), 9);
    expect(logLook(true, p, undefined)).toBe(Math.log(p));
    expect(logLook(false, p, undefined)).toBe(Math.log1p(-p));
  });

  // Correlation ½ and p = ½: no look sees where the shared part is lower than each look's own is high, that is, where one of n + 1 equal normal numbers is
  // the least of them: one case of n + 1. Independent looks would make it one of 2ⁿ.
  test.each([1, 2, 5, 20])(
    "%i that each see every other time all see nothing in one case of one more",
    (n) => {
      expect(together(0.5, Array<boolean>(n).fill(false))).toBeCloseTo(-Math.log(n + 1), 6);
    },
  );

  test("one more that finds nothing says less and less, and something still", () => {
    const logs = Array.from({ length: 12 }, (_, n) => together(0.6, Array<boolean>(n).fill(false)));
    const steps = logs.slice(1).map((log, i) => log - logs[i]!);
    steps.reduce((before, step) => {
      expect(step).toBeGreaterThan(before);
      expect(step).toBeLessThan(0);
      return step;
    }, -Infinity);
  });

  test("share an unknown from the second on, another kind has its own", () => {
    const names = (...evidence: Evidence[]) =>
      sharedUnknowns({ added: [], evidence }).map(({ name }) => name);
    expect(names(looked(1, "walk round"), looked(2, "look underneath"))).toEqual([]);
    expect(names(looked(1, "walk round"), looked(2, "walk round"), looked(3, "look underneath"))).toEqual([
      'looks of the kind "walk round"',
    ]);
  });

  test("a leak's own: over all that is shared, each look says what it says alone", () => {
    const explanation = (visit: Visit) =>
      explanationsOf(visit).find(({ law, cause }) => law === "steady" && cause === "slow leak")!;
    const says = (evidence: Evidence[], common?: number) => {
      const visit = { ...shop.visit, evidence };
      const one = explanation(visit);
      const values = Float64Array.from(one.unknowns, ({ belief }) =>
        "middle" in belief ? belief.middle : Math.sqrt(belief.low * belief.high),
      );
      values[place.age] = days(60);
      if (common !== undefined) values[commonCount] = common;
      const asked = askedOf({ ...shop, visit }, one, values);
      return termOf(evidence[0]!, asked);
    };
    const [first, second] = [looked(100, "walk round"), looked(110, "walk round")];
    const alone = says([first]);
    expect(alone).toBeLessThan(-0.01);
    const mean = exactAnswer({
      unknowns: [{ name: "common", belief: { law: "normal", middle: 0, spread: 1 } }],
      logLikelihood: ([common]) => says([first, second], common),
    });
    expect(mean.logEvidence).toBeCloseTo(alone, 6);
  });
});
