// Looking back at made-up visits: what must hold whatever the numbers. The week is prepared for its loss alone, so a test takes seconds.
import { beforeAll, describe, expect, test } from "vitest";
import { coordinateAt, valueAt } from "../../src/chance/belief.ts";
import { randomBits } from "../../src/chance/random.ts";
import { answerOf, type Answer } from "../../src/lookback/answer/answer.ts";
import { explanationsOf } from "../../src/lookback/causes.ts";
import type { Range } from "../../src/errors.ts";
import { earlyAnswer } from "../../src/lookback/early.ts";
import type { Evidence } from "../../src/lookback/evidence.ts";
import { foretell } from "../../src/lookback/foretell.ts";
import { lookBack, lookBackHands, type LookBackOptions } from "../../src/lookback/lookback.ts";
import type { Posterior, Run } from "../../src/lookback/posterior.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { askedOf, problemOf, type Bench } from "../../src/lookback/question.ts";
import { wholeLikelihood } from "../../src/lookback/sampler/problem.ts";
import { temperedAnswer } from "../../src/lookback/sampler/tempered.ts";
import { termOf } from "../../src/lookback/terms.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { fillOrificeRange } from "../../src/physics/clutch/fill.ts";
import { viscosityTemperatureRange } from "../../src/physics/fluid/viscosity.ts";
import { lossShop } from "./grown-otherwise.ts";
import { looksAhead } from "../../src/lookback/looks-ahead.ts";
import { ownHands, type Hand } from "../../src/hands/hands.ts";
import { workbench } from "../../src/lookback/workbench.ts";
import { celsius, days } from "../emerge/van.ts";

const litre = 1e-3;
const options = { guesses: 1000, moves: 2, seed: 3, workers: 1 } as const;

let shop: Bench;
beforeAll(() => {
  shop = lossShop();
});

const at = days(120);
const full: Evidence = { name: "full", kind: "known full", at: 0, error: 0.15 * litre };
const missing = (litres: number): Evidence => ({
  name: "missing",
  kind: "fluid missing",
  at,
  volume: litres * litre,
  error: 0.15 * litre,
});
const drops = (count: number): Evidence => ({
  name: "drops",
  kind: "drops",
  at,
  count,
  time: 120,
  moment: "idling hot",
});
const visited = (...evidence: Evidence[]): Visit => ({ ...shop.visit, evidence });
const ask = async (visit: Visit, more: Partial<LookBackOptions> = {}): Promise<Answer> =>
  answerOf(await lookBack(visit, shop.prepared, { ...options, ...more }));

describe("a guess", () => {
  test("is worth what its evidence says one by one, whatever was asked before", () => {
    const bench: Bench = { ...shop, visit: visited(full, missing(2), drops(40)) };
    for (const explanation of explanationsOf(bench.visit)) {
      const problem = problemOf(bench, explanation);
      for (let i = 0; i < 40; i++) {
        const random = randomBits(8, i);
        const values = Float64Array.from(explanation.unknowns, ({ belief }) =>
          valueAt(belief, coordinateAt(belief, random())),
        );
        const asked = askedOf(bench, explanation, values);
        const through = asked.course().ranOut || asked.course().over() < at;
        const whole = through
          ? -Infinity
          : bench.visit.evidence.reduce((sum, item) => sum + termOf(item, asked), 0);
        const found = wholeLikelihood(problem, values);
        expect(found === whole || Math.abs(found - whole) < 1e-9 * Math.abs(whole)).toBe(true);
      }
    }
  });
});

test("a guess's events are its own, also where they are asked for after another one was followed", () => {
  const bench: Bench = { ...shop, visit: visited(full, missing(2)) };
  const explanation = explanationsOf(bench.visit).find(({ law }) => law === "steady")!;
  const guessed = (p: number) =>
    askedOf(
      bench,
      explanation,
      Float64Array.from(explanation.unknowns, ({ belief }) => valueAt(belief, coordinateAt(belief, p))),
    ).course();
  const spot = "first spot on the ground";
  const [alone, other] = [guessed(0.5).when(spot), guessed(0.6).when(spot)];
  expect(alone).toBeLessThan(at);
  expect(other).not.toBe(alone);
  const [one, two] = [guessed(0.5), guessed(0.6)];
  // Both are followed to their ends before either is asked for its events.
  expect([one.over(), two.over()]).toEqual([Infinity, Infinity]);
  expect([one.when(spot), two.when(spot)]).toEqual([alone, other]);
});

test("a copy of a guess foretells what the guess does, and the next one what it does alone", () => {
  const bench: Bench = { ...shop, visit: visited(full, missing(2), drops(40)) };
  for (const explanation of explanationsOf(bench.visit)) {
    const n = explanation.unknowns.length;
    const [one, other] = [0.4, 0.6].map((p) =>
      Float64Array.from(explanation.unknowns, ({ belief }) => valueAt(belief, coordinateAt(belief, p))),
    ) as [Float64Array, Float64Array];
    const rows = (...guesses: Float64Array[]) =>
      foretell(bench, explanation, {
        values: Float64Array.from(guesses.flatMap((guess) => [...guess])),
        count: guesses.length,
        dimensions: n,
      });
    const alone = [one, other].map((guess) => [...rows(guess)]) as [number[], number[]];
    expect(alone[1]).not.toEqual(alone[0]);
    expect([...rows(one, other, one, other)]).toEqual([...alone, ...alone].flat());
  }
});

describe("the same case and seed", () => {
  test("give the same numbers to the bit with one worker and with two", async () => {
    const visit = visited(full, missing(2), drops(40));
    const [one, two] = [await ask(visit), await ask(visit, { workers: 2 })];
    expect(two).toEqual(one);
    expect(await ask(visit, { seed: 4 })).not.toEqual(one);
  });

  test("the answer is plain data without a number that is none", async () => {
    const answer = await ask(visited(full, missing(2), drops(40)));
    const said = JSON.stringify(answer, (_, value: unknown) => {
      if (typeof value === "number") expect(Number.isNaN(value)).toBe(false);
      return value;
    });
    expect(JSON.parse(said)).toBeTruthy();
  });

  test("the answer tells the laws that its guesses left: the clutches' fill after a night at 15 degC, the viscosity line too in a frost of -30 degC", async () => {
    const leaves = ({ outside }: Answer, { law }: Range) => outside.some((text) => text.startsWith(law));
    const warm = await ask(visited(full, missing(2)));
    expect(leaves(warm, fillOrificeRange)).toBe(true);
    expect(leaves(warm, viscosityTemperatureRange)).toBe(false);
    const air = celsius(-30);
    const frost: Visit = {
      ...visited(full, missing(2)),
      unit: { ...shop.visit.unit, surroundings: { meanTemperature: air, yearlySwing: 0 } },
    };
    const prepared = prepareLoss(frost.unit, frost.week, air);
    const cold = answerOf(await lookBack(frost, prepared, options));
    expect(leaves(cold, fillOrificeRange)).toBe(true);
    expect(leaves(cold, viscosityTemperatureRange)).toBe(true);
  });
});

// Half a litre and 13 L were missing at once, each to 0.15 L: whatever was lost is 6.25 L, 42 errors, from both or further from one, e^-1740.
test("evidence that every explanation gives up on is asked of all of them again, to the end", async () => {
  const visit = visited(missing(0.5), { ...missing(13), name: "missing too" });
  const early: Posterior[] = [];
  const stop = new AbortController();
  const asked = lookBack(visit, shop.prepared, {
    ...options,
    signal: stop.signal,
    onProgress(_, posterior) {
      if (posterior === undefined) return;
      early.push(posterior);
      stop.abort(); // What follows is asked as ever.
    },
  });
  await expect(asked).rejects.toThrow("aborted");
  const [{ bench, weighed: first }] = early as [Posterior];
  let sum = 0;
  for (const { explanation, runs, share } of first) {
    const problem = problemOf(bench, explanation);
    const [{ answer }] = runs as [Run];
    const { values, logEvidence } = temperedAnswer(problem, { guesses: 100, moves: 1, seed: options.seed });
    expect(logEvidence).toBeLessThan(-1000);
    expect(answer.logEvidence).toBe(logEvidence);
    expect(answer.values).toEqual(values);
    sum += share;
  }
  expect(sum).toBeCloseTo(1, 9);
});

describe("guesses walked trip by trip", () => {
  test("of a unit that never leaked: it drives to the visit, and every clutch is told of", async () => {
    const { walked, weighed } = await lookBack(visited(missing(1.5), drops(0)), shop.prepared, {
      ...options,
      walks: 1,
      beliefs: { causes: { "never filled": 1e6 } },
    });
    expect(weighed.find(({ explanation }) => explanation.cause === "never filled")!.share).toBeGreaterThan(
      0.99,
    );
    const { build } = shop.visit.unit;
    expect(walked.map((clutches) => clutches.map(({ name }) => name))).toEqual([
      [...build.clutches.map(({ name }) => name), build.lockUp.clutch.name],
    ]);
  });
});

describe("what the evidence does", () => {
  test("none at all: the answer is the belief, any day as likely as any other", async () => {
    const { opened, causes } = await ask(visited());
    const [low, high] = opened!.when.nineTenths;
    // Even over 120 days: 6 to 114; a vehicle that ran dry on the way would not have come, so what is left leans late.
    expect(low).toBeGreaterThan(days(1));
    expect(high).toBeGreaterThan(days(105));
    expect(high - low).toBeGreaterThan(days(80));
    for (const { share, believed } of causes) expect(share).toBeGreaterThan(0.2 * believed);
  });

  test("nothing drips and two litres are missing: what a low fill lacked is told with its own number, of every cause that counts", async () => {
    const { unknowns, causes } = await ask(visited(missing(2), drops(0)));
    expect(causes.find(({ cause }) => cause === "never filled")!.share).toBeGreaterThan(0.5);
    const lacked = unknowns.find(({ law }) => law === "never filled")!;
    expect(lacked.name).toBe("lacking since it was filled");
    expect(Math.abs(lacked.after.middle - 2 * litre)).toBeLessThan(0.3 * litre);
    for (const { law } of unknowns)
      if (law !== undefined)
        expect(["steady", "creeping", "cracking", "rusting", ...causes.map(({ cause }) => cause)]).toContain(
          law.startsWith("older leak, ") ? law.slice(12) : law,
        );
  });

  test("more measured missing moves what is missing, and the flow follows the drops", async () => {
    const [little, much] = [
      await ask(visited(full, missing(1), drops(20))),
      await ask(visited(full, missing(3), drops(200))),
    ];
    expect(little.missing.now.middle).toBeLessThan(1.3 * litre);
    expect(much.missing.now.middle).toBeGreaterThan(2.6 * litre);
    expect(much.flow!.hot.middle).toBeGreaterThan(5 * little.flow!.hot.middle);
  });

  test("drops beside a full unit of last week: opened since; the same drops and much missing: long before", async () => {
    const lately = await ask(visited({ ...full, at: days(113) }, drops(60)));
    const long = await ask(visited(full, missing(3), drops(60)));
    expect(lately.opened!.when.nineTenths[1]).toBeGreaterThan(long.opened!.when.nineTenths[1]);
    expect(long.opened!.when.middle).toBeLessThan(days(100));
  });

  test("no drop, a dry look and fluid missing since the fill: not the leak", async () => {
    const { causes, opened, events } = await ask(
      visited(missing(1.5), drops(0), { name: "coolant", kind: "fluid in the coolant", at, found: false }),
    );
    expect(causes[0]!.cause).toBe("never filled");
    // Where there hardly is a leak nothing is told to lie before or after its opening.
    expect(opened).toBeNull();
    expect(events.every(({ early, since }) => early === 0 && since === null)).toBe(true);
  });

  test("quantiles stand in order, dots rise, shares add up to one", async () => {
    const { opened, missing: curve, causes } = await ask(visited(full, missing(2), drops(40)));
    const { middle, half, nineTenths } = opened!.when;
    expect([nineTenths[0], half[0], middle, half[1], nineTenths[1]]).toEqual(
      [nineTenths[0], half[0], middle, half[1], nineTenths[1]].sort((a, b) => a - b),
    );
    expect([...opened!.dots]).toEqual([...opened!.dots].sort((a, b) => a - b));
    for (const band of curve.bands) expect([...band]).toEqual([...band].sort((a, b) => a - b));
    expect(causes.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  });
});

describe("evidence that contradicts itself", () => {
  test("three litres missing on a full dipstick: both are named, with a way out", async () => {
    const stick: Evidence = {
      name: "stick",
      kind: "dipstick",
      at,
      temperature: 353.15,
      position: 1,
      error: 0.1,
    };
    const { conflicts, trust } = await ask(visited(full, missing(3), stick));
    expect(conflicts[0]).toMatchObject({ first: "missing", second: "stick" });
    expect(conflicts[0]!.wayOut).toMatch(/read cold/);
    expect(trust.word).toBe("evidence conflicts");
  });

  test("two volumes found missing at the same visit: one of the readings is wrong", async () => {
    const again = { ...missing(1), name: "missing again" };
    const { conflicts } = await ask(visited(full, missing(3), again));
    expect(conflicts[0]).toMatchObject({ first: "missing", second: "missing again" });
    expect(conflicts[0]!.wayOut).toBe("one of the two readings is wrong");
  });

  test("a stream a month ago and full today: fluid was added that nobody told of", async () => {
    const before: Evidence = { ...drops(240), at: days(90) } as Evidence;
    const { conflicts } = await ask(visited(full, before, { ...full, name: "full today", at }));
    expect(conflicts[0]).toMatchObject({ first: "drops", second: "full today" });
    expect(conflicts[0]!.wayOut).toMatch(/added/);
  });

  test("more missing than any way down leaves to lose: at odds with the vehicle itself, with no second item", async () => {
    const { conflicts, trust } = await ask(visited(missing(9)));
    expect(conflicts[0]).toMatchObject({ first: "missing" });
    expect(conflicts[0]!.second).toMatch(/came in by itself/);
    expect(trust.word).toBe("evidence conflicts");
  });

  test("drops counted outside nearly rule out a cooler that leaks into the coolant alone: 46 in two minutes weigh as much as e to the 200", () => {
    const bench: Bench = { ...shop, visit: visited(full, missing(2), drops(46)) };
    const inside = explanationsOf(bench.visit).find(
      ({ cause }) => cause === "cooler leaks into the coolant",
    )!;
    for (let i = 0; i < 20; i++) {
      const random = randomBits(4, i);
      const values = Float64Array.from(inside.unknowns, ({ belief }) =>
        valueAt(belief, coordinateAt(belief, random())),
      );
      expect(termOf(drops(46), askedOf(bench, inside, values))).toBeLessThan(-200);
      expect(termOf(drops(0), askedOf(bench, inside, values))).toBeGreaterThan(-0.1);
    }
  });

  test("a litre gone since yesterday and nothing drips is no contradiction: the cooler may leak into the coolant", async () => {
    // Two of three against one of three for a low fill: a thousand guesses tell that hardly better than a coin.
    const { conflicts, causes } = await ask(visited({ ...full, at: days(119) }, missing(1), drops(0)), {
      guesses: 4000,
    });
    expect(conflicts).toEqual([]);
    expect(causes[0]!.cause).toBe("cooler leaks into the coolant");
  });

  test("nothing is named where all goes together", async () => {
    expect((await ask(visited(full, missing(2), drops(40)))).conflicts).toEqual([]);
  });
});

describe("what to look at next", () => {
  const running = looksAhead.filter(({ runsEngine }) => runsEngine === true).map(({ says }) => says);
  const advised = ({ ahead, parting }: Answer) => [...ahead, ...(parting.look ? [parting.look] : [])];

  test("holds looks that run the engine while it drives, and none once it no longer does", async () => {
    const drives = await ask(visited(full, missing(2), drops(40)));
    expect(drives.ahead.map(({ says }) => says)).toEqual(expect.arrayContaining(running));
    const when = { from: days(118), to: at, error: 3600 };
    const stands = await ask(
      visited(full, { name: "stands", kind: "first symptom", symptom: "no drive", when }),
    );
    const looks = advised(stands).map(({ says }) => says);
    expect(looks.length).toBeGreaterThan(2);
    for (const says of running) expect(looks).not.toContain(says);
  });
});

describe("on the way", () => {
  test("an early answer comes before the last, and the share done rises to one", async () => {
    const shares: number[] = [];
    let early = 0;
    await lookBack(visited(full, missing(2), drops(40)), shop.prepared, {
      ...options,
      onProgress(share, posterior) {
        shares.push(share);
        if (posterior !== undefined) {
          early++;
          expect(answerOf(posterior).opened).not.toBeNull();
        }
      },
    });
    expect(early).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBeCloseTo(1, 2);
  });

  test("a first run stays where nothing follows it, or four times as much; its rows are told with the early answer", async () => {
    let early: Posterior | undefined;
    const last = await lookBack(visited(full, missing(2), drops(40)), shop.prepared, {
      ...options,
      guesses: 2400,
      onProgress: (_, posterior) => (early ??= posterior),
    });
    const [alone, beside, forgotten] = [[], [], []] as Run[][];
    for (const [i, { runs }] of last.weighed.entries()) {
      const first = early!.weighed[i]!.runs[0]!;
      expect(first.foretold.length).toBe(100 * last.columns.length);
      const later = runs.filter(({ seed }) => seed !== first.seed);
      const stays = later.length < runs.length;
      if (stays) expect(runs[0]).toEqual(first);
      (later.length === 0 ? alone : stays ? beside : forgotten).push(first);
      if (later.length > 0) {
        expect(later.length).toBeGreaterThan(1);
        expect(later.reduce((sum, { answer }) => sum + answer.count, 0) >= 400).toBe(stays);
      }
    }
    for (const some of [alone, beside, forgotten]) expect(some.length).toBeGreaterThan(0);
  });

  test("hands that stay answer the next visit, of the same week or another, as new ones do, to the bit, and go home when they are called off", async () => {
    const hands = lookBackHands({ workers: 2 });
    const [one, other] = [visited(full, missing(1)), visited(full, missing(2), drops(40))];
    const first = lookBack(one, shop.prepared, { ...options, hands });
    await expect(lookBack(other, shop.prepared, { ...options, hands })).rejects.toThrow("not busy");
    await expect(lookBack(one, shop.prepared, { ...options, hands: [] })).rejects.toThrow("one or more");
    await first;
    const warmer = prepareLoss(shop.visit.unit, shop.visit.week, celsius(40));
    const runsOf = async (prepared: Prepared, more: Partial<LookBackOptions>) =>
      (await lookBack(other, prepared, { ...options, ...more })).weighed.map(({ runs }) => runs);
    const anew = await runsOf(shop.prepared, {});
    expect(await runsOf(shop.prepared, { hands })).toEqual(anew);
    const warm = await runsOf(warmer, { hands });
    expect(warm).not.toEqual(anew);
    expect(warm).toEqual(await runsOf(warmer, {}));
    expect(await runsOf(shop.prepared, { hands })).toEqual(anew);
    const off = new AbortController();
    const calledOff = lookBack(one, shop.prepared, {
      ...options,
      hands,
      signal: off.signal,
      onProgress: () => off.abort(new Error("that will do")),
    });
    await expect(calledOff).rejects.toThrow("that will do");
    await expect(lookBack(one, shop.prepared, { ...options, hands })).rejects.toThrow("sent home");
  });

  test("a hand that begins after all is done does not answer the next visit with that", async () => {
    const slow = ownHands(workbench());
    let [began, begin] = [false, () => {}];
    let answered: (answer: unknown) => void = () => {};
    const late: Hand = {
      ...slow,
      listen(onAnswer, broke) {
        answered = onAnswer;
        slow.listen((answer) => {
          if (began) answered(answer);
          else begin = () => answered(answer);
          began = true;
        }, broke);
      },
    };
    const hands = [ownHands(workbench()), late];
    const asked = (evidence: Evidence) =>
      lookBack(visited(full, evidence), shop.prepared, {
        ...options,
        hands,
        onProgress: (share) => void (share > 0.99 && setTimeout(() => begin(), 100)),
      });
    await asked(missing(1));
    const { runs } = (await asked(missing(2))).weighed[0]!;
    const anew = (await lookBack(visited(full, missing(2)), shop.prepared, options)).weighed[0]!;
    expect(runs).toEqual(anew.runs);
  });

  test("called off, it rejects with the reason", async () => {
    const off = new AbortController();
    const asked = lookBack(visited(full, missing(2)), shop.prepared, {
      ...options,
      signal: off.signal,
      onProgress: () => off.abort(new Error("that will do")),
    });
    await expect(asked).rejects.toThrow("that will do");
  });

  test("the answer from the loss alone overlaps the whole one, and tells what it left out", async () => {
    const visit = visited(full, missing(2), drops(40), {
      name: "no spot",
      kind: "not felt",
      symptom: "first flare",
      until: at,
    });
    const early = earlyAnswer(visit, 3);
    const { opened } = await ask(visited(full, missing(2), drops(40)));
    expect(early.leftOut).toEqual(["no spot"]);
    expect(early.opened.half[0]).toBeLessThan(opened!.when.nineTenths[1]);
    expect(early.opened.half[1]).toBeGreaterThan(opened!.when.nineTenths[0]);
  });
});

describe("refused in clear words", () => {
  test.each([
    ["guesses", { guesses: 10 }],
    ["workers", { workers: 0 }],
    ["walks", { walks: -1 }],
    ["steady", { beliefs: { laws: { steady: -1 } } }],
    ["laws", { beliefs: { laws: { steady: 0, creeping: 0, cracking: 0, rusting: 0 } } }],
  ])("%s", async (field, more) => {
    await expect(ask(visited(full, missing(2)), more)).rejects.toMatchObject({
      code: "impossible-input",
      faults: [{ path: field }],
    });
  });
});
