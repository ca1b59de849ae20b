// What lies before the last full, and a last full without a date: both are told with their weight and their doubt.
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { answerOf, type Answer } from "../../src/lookback/answer/answer.ts";
import { moments } from "../../src/lookback/answer/spread.ts";
import { explanationsOf } from "../../src/lookback/causes.ts";
import { place, WEEKS_TOLD } from "../../src/lookback/common.ts";
import { walkOfGuess } from "../../src/lookback/course.ts";
import type { Evidence } from "../../src/lookback/evidence.ts";
import { lookBack } from "../../src/lookback/lookback.ts";
import { askedOf, guessOf, type Bench } from "../../src/lookback/question.ts";
import { flowAt, missingAt, termOf } from "../../src/lookback/terms.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { shut, type GrowingOpening } from "../../src/physics/leak/flow.ts";
import { agedOpening, openingAt } from "../../src/physics/leaking.ts";
import { simulate } from "../../src/history/simulate.ts";
import { days } from "../emerge/van.ts";
import { lossShop } from "./grown-otherwise.ts";

const litre = 1e-3;
let shop: Bench;
beforeAll(() => {
  shop = lossShop();
});

const ask = async (visit: Visit): Promise<Answer> =>
  answerOf(await lookBack(visit, shop.prepared, { guesses: 1000, moves: 2, seed: 3, workers: 1 }));

/** Evidence of a leak in a unit that was full at second 0 and lacks so much at the visit. */
const seen = (at: number, litres: number, drops: number): Evidence[] => [
  { name: "full", kind: "known full", at: 0, error: 0.15 * litre },
  { name: "missing", kind: "fluid missing", at, volume: litres * litre, error: 0.1 * litre },
  { name: "drops", kind: "drops", at, count: drops, time: 120, moment: "idling hot" },
];

/** Guesses of an older leak with middling numbers, that opened so long before the visit. */
function older(visit: Visit, law: string, age: number) {
  const explanation = explanationsOf(visit).find((one) => one.cause === "older leak" && one.law === law)!;
  const values = Float64Array.from(explanation.unknowns, ({ belief }) =>
    "middle" in belief ? belief.middle : Math.sqrt(belief.low * belief.high),
  );
  values[place.age] = age;
  return { explanation, values };
}

describe("a leak that is older than the last full", { timeout: 120_000 }, () => {
  test("where nothing else is believed there is an answer, without an opening date", async () => {
    const visit = { ...shop.visit, evidence: seen(shop.visit.at, 1.5, 40) };
    const posterior = await lookBack(visit, shop.prepared, {
      guesses: 1000,
      moves: 2,
      seed: 3,
      workers: 1,
      beliefs: {
        causes: {
          "slow leak": 0,
          "line let go": 0,
          "never filled": 0,
          "cooler leaks into the coolant": 0,
          "worn pump or seals": 0,
          "wrong or aged fluid": 0,
        },
      },
    });
    const { opened, older: share, flow } = answerOf(posterior);
    expect(opened).toBeNull();
    expect(share).toBeCloseTo(1, 12);
    expect(flow!.hot.middle).toBeGreaterThan(0);
  });

  test.each(["steady", "creeping", "cracking", "rusting"])(
    "%s: has lost nothing since at second 0 but leaks as it has grown, and nothing is none",
    (law) => {
      const visit = { ...shop.visit, at: days(20) };
      const bench = { ...shop, visit };
      const flows = [days(21), days(60), days(150)].map((age) => {
        const { explanation, values } = older(visit, law, age);
        const asked = askedOf(bench, explanation, values);
        expect(missingAt(asked, 0)).toBeCloseTo(asked.short, 12);
        expect(missingAt(asked, days(2))).toBeGreaterThan(missingAt(asked, days(1)));
        return flowAt(asked, days(1), "idling hot");
      });
      flows.reduce((before, flow) => {
        expect(flow).toBeGreaterThanOrEqual(before * (1 - 1e-9));
        return flow;
      }, 0);
    },
  );

  // Its own law begun later is the same law: the walk may begin with the leak as it then is.
  test("an opening that has grown so long grows on as it would have", () => {
    const hours = fc.double({ min: 0, max: 400 * 3600, noNaN: true });
    const visit = { ...shop.visit, at: days(20) };
    for (const law of ["steady", "creeping", "cracking"])
      fc.assert(
        fc.property(hours, hours, (first, then) => {
          const { explanation, values } = older(visit, law, days(60));
          const opening = explanation.opening!(values);
          if (opening.kind === "crack" && first + then > 0.95 * opening.partsAfter) return;
          const at = (one: typeof opening, age: number): GrowingOpening => {
            const out = { viscous: shut, inertial: shut };
            openingAt(out, one, age, 2e5, true);
            return out;
          };
          const [whole, parted] = [at(opening, first + then), at(agedOpening(opening, first), then)];
          expect(parted.viscous / whole.viscous).toBeCloseTo(1, 6);
        }),
        { numRuns: 50 },
      );
  });

  test.each(["creeping", "rusting"])(
    "%s: walked trip by trip it loses what averages foretell, to a tenth",
    (law) => {
      const visit = { ...shop.visit, at: days(20) };
      const { explanation, values } = older(visit, law, days(80));
      const asked = askedOf({ ...shop, visit }, explanation, values);
      const { end } = simulate(walkOfGuess(visit, guessOf(visit, explanation, values)));
      const walked = end.hidden + end.onRoad + end.onGround;
      expect(asked.course().lostBy(days(20)) / walked).toBeGreaterThan(0.9);
      expect(asked.course().lostBy(days(20)) / walked).toBeLessThan(1.1);
    },
  );

  test("weighs more where all that is missing would have had to drip as now since the last full, and less where half of that is missing", async () => {
    const at = days(20);
    const [all, half] = [
      await ask({ ...shop.visit, at, evidence: seen(at, 1.6, 480) }),
      await ask({ ...shop.visit, at, evidence: seen(at, 0.5, 480) }),
    ];
    expect(all.older).toBeGreaterThan(2 * half.older);
    expect(all.causes.find(({ cause }) => cause === "older leak")!.share).toBe(all.older);
    // The opening date is told of leaks since then only.
    expect(all.opened!.dots[0]).toBeGreaterThanOrEqual(0);
    expect(all.opened!.chance).toBeLessThanOrEqual(1 - all.older + 1e-9);
  });
});

describe("a last full of which only the miles are known", { timeout: 120_000 }, () => {
  const at = days(120);
  const visit = (undated: boolean): Visit => ({
    ...shop.visit,
    driven: { from: 0, to: 900e3 },
    ...(undated ? { undated } : {}),
    evidence: seen(at, 2, 40),
  });
  /** Standard deviation of the logarithm of the age [-], of even dots. */
  const spreadOf = (ages: readonly number[]) =>
    Math.sqrt(
      moments(
        ages.map(Math.log),
        ages.map(() => 1 / ages.length),
      ).variance,
    );

  test("leaves the miles as they are and makes dates as uncertain as the miles of a week", async () => {
    const [dated, undated] = [await ask(visit(false)), await ask(visit(true))];
    expect(dated.opened!.driven).toEqual(dated.opened!.when);
    const by = ({ opened }: Answer) => spreadOf(opened!.dots.map((dot) => at - dot));
    // Independent parts of a logarithm add by squares; fifty dots tell a spread to a tenth.
    const [low, high] = [0.85, 1.15].map((slack) => slack * Math.hypot(by(dated), WEEKS_TOLD));
    expect(by(undated)).toBeGreaterThan(low!);
    expect(by(undated)).toBeLessThan(high!);
    const middle = (answer: Answer) => at - answer.opened!.driven.middle;
    expect(middle(undated) / middle(dated)).toBeGreaterThan(0.9);
    expect(middle(undated) / middle(dated)).toBeLessThan(1.1);
  });

  test("what is told by a date is asked by the guess's own calendar, once for all that is told", () => {
    const explanation = explanationsOf(visit(true)).find(
      ({ law, cause }) => law === "steady" && cause === "slow leak",
    )!;
    const bench = { ...shop, visit: visit(true) };
    const told = (use: number) => {
      const values = Float64Array.from(explanation.unknowns, ({ belief }) =>
        "middle" in belief ? belief.middle : Math.sqrt(belief.low * belief.high),
      );
      values[place.age] = days(60);
      values[place.use] = use;
      values[place.soakedUp] = 1e-6;
      const asked = askedOf(bench, explanation, values);
      const spot = at - asked.course().when("first spot on the ground");
      expect(spot).toBeGreaterThan(0);
      const says = (ago: number) =>
        termOf(
          {
            name: "spot",
            kind: "first spot",
            when: { from: at - ago - days(0.5), to: at - ago + days(0.5), error: days(1) },
          },
          asked,
        );
      return [spot / use, spot / use + days(5), spot / use - days(5)].map(says);
    };
    for (const use of [0.8, 1, 1.25]) {
      const [then, before, after] = told(use);
      expect(then).toBeGreaterThan(before! + 4);
      expect(then).toBeGreaterThan(after! + 4);
    }
  });

  test("rust goes by the calendar: stretched days widen the pit, running does not", () => {
    const explanation = explanationsOf(visit(true)).find(
      ({ law, cause }) => law === "rusting" && cause === "slow leak",
    )!;
    const flow = (use: number) => {
      const values = Float64Array.from(explanation.unknowns, ({ belief }) =>
        "middle" in belief ? belief.middle : Math.sqrt(belief.low * belief.high),
      );
      values[place.age] = days(60);
      values[place.use] = use;
      values[explanation.own] = 0.1e-3; // a pit so small that the unit stays full enough
      return flowAt(askedOf({ ...shop, visit: visit(true) }, explanation, values), at, "idling hot");
    };
    // Half the miles in a week: twice the days, a wider pit.
    expect(flow(0.5)).toBeGreaterThan(1.1 * flow(1));
  });
});
