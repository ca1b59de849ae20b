// A life fitted to records: it finds the law behind them, sits on the top of their likelihood, and says when they are too few.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fittedLife, type LifeRecord } from "../../src/decisions/fitted-life.ts";
import {
  ageByWhich,
  failedBy,
  failureDensity,
  survival,
  type WeibullLife,
} from "../../src/decisions/life.ts";
import { between, decades } from "../between.ts";
import { refused } from "./refused.ts";

const failed = (...ages: number[]): LifeRecord[] => ages.map((at) => ({ kind: "failed", at }));
const running = (...ages: number[]): LifeRecord[] => ages.map((at) => ({ kind: "running", at }));

/** Ages at which parts of a life fail, spread as evenly as so many can be. */
const spread = (life: WeibullLife, count: number) =>
  Array.from({ length: count }, (_, i) => ageByWhich(life, (i + 0.5) / count));

/** The likelihood once more, from the laws of a life alone. */
function logLikelihood(records: readonly LifeRecord[], life: WeibullLife): number {
  return records.reduce((sum, record) => {
    const since = record.since ?? 0;
    const holding = Math.log(survival(life, since));
    switch (record.kind) {
      case "failed":
        return sum + Math.log(failureDensity(life, record.at)) - holding;
      case "running":
        return sum + Math.log(survival(life, record.at)) - holding;
      case "found failed":
        return sum + Math.log(failedBy(life, record.by) - failedBy(life, since)) - holding;
      case "failed between":
        return sum + Math.log(survival(life, record.from) - survival(life, record.to)) - holding;
    }
  }, 0);
}

/** Fleets of all kinds of records, with failures enough. */
const fleets = fc
  .record({
    ages: fc.array(between(20, 200), { minLength: 4, maxLength: 12 }),
    good: fc.array(between(20, 250), { maxLength: 6 }),
    found: fc.array(between(60, 200), { maxLength: 3 }),
    looks: fc.array(fc.tuple(between(10, 120), between(5, 60)), { maxLength: 4 }),
    late: between(1, 19),
  })
  .filter(({ ages }) => Math.max(...ages) > 1.3 * Math.min(...ages))
  .map(({ ages, good, found, looks, late }): LifeRecord[] => [
    ...failed(...ages),
    ...running(...good),
    ...found.map((by) => ({ kind: "found failed", by }) as const),
    ...looks.map(([from, wide]) => ({ kind: "failed between", from, to: from + wide }) as const),
    { kind: "failed", at: 20 + late, since: late },
    { kind: "running", at: 90, since: late },
    { kind: "found failed", by: 90, since: late },
  ]);

describe("a life fitted to records", () => {
  it("is the top of their likelihood: each way down it goes", () => {
    fc.assert(
      fc.property(fleets, (records) => {
        const { life, logLikelihood: top } = fittedLife(records);
        expect(logLikelihood(records, life)).toBeCloseTo(top, 7);
        for (const [a, b] of [
          [1.01, 1],
          [0.99, 1],
          [1, 1.01],
          [1, 0.99],
          [1.01, 1.01],
          [0.99, 1.01],
        ] as const)
          expect(logLikelihood(records, { scale: a * life.scale, shape: b * life.shape })).toBeLessThan(top);
      }),
    );
  });

  it("has the covariance that its likelihood's curvature gives", () => {
    fc.assert(
      fc.property(fleets, (records) => {
        const { life, covariance } = fittedLife(records);
        const h = 1e-3;
        const at = (a: number, b: number) =>
          logLikelihood(records, {
            scale: life.scale * Math.exp(a * h),
            shape: life.shape * Math.exp(b * h),
          });
        const second = (a: number, b: number) => (at(a, b) - 2 * at(0, 0) + at(-a, -b)) / h ** 2;
        const [xx, yy] = [-second(1, 0), -second(0, 1)];
        const xy = -(second(1, 1) - second(1, 0) - second(0, 1)) / 2;
        const { lnScale: v, lnShape: w, both: c } = covariance;
        // The product of both matrices is that of one.
        expect(v * xx + c * xy).toBeCloseTo(1, 3);
        expect(c * xy + w * yy).toBeCloseTo(1, 3);
        expect(Math.abs(v * xy + c * yy) / Math.hypot(xx, yy) / v).toBeLessThan(1e-3);
        expect(v * w).toBeGreaterThan(c * c);
      }),
    );
  });

  it("finds the law behind many that failed, and behind as many of which the older still run", () => {
    fc.assert(
      fc.property(decades(-1, 5), between(0.6, 5), (scale, shape) => {
        const ages = spread({ scale, shape }, 400);
        const whole = fittedLife(failed(...ages)).life;
        expect(whole.scale / scale).toBeCloseTo(1, 1);
        expect(Math.abs(whole.shape / shape - 1)).toBeLessThan(0.02);
        const cut = ages[200]!;
        const half = fittedLife([
          ...failed(...ages.slice(0, 200)),
          ...running(...ages.slice(200).map(() => cut)),
        ]).life;
        expect(Math.abs(half.scale / scale - 1)).toBeLessThan(0.02);
        expect(Math.abs(half.shape / shape - 1)).toBeLessThan(0.02);
      }),
      { numRuns: 30 },
    );
  });

  it("finds it between looks, too, and where records begin late", () => {
    const life = { scale: 100, shape: 2.5 };
    const ages = spread(life, 400);
    const looked = ages.map((age): LifeRecord => ({
      kind: "failed between",
      from: 20 * Math.floor(age / 20),
      to: 20 * Math.ceil(age / 20),
    }));
    expect(fittedLife(looked).life.shape / life.shape).toBeCloseTo(1, 1);
    expect(fittedLife(looked).life.scale / life.scale).toBeCloseTo(1, 2);
    // Of those that held to 60 only: told so they say the same, untold they seem to grow old.
    const late = ages.filter((at) => at > 60).map((at) => ({ kind: "failed", at, since: 60 }) as const);
    expect(Math.abs(fittedLife(late).life.shape / life.shape - 1)).toBeLessThan(0.03);
    expect(fittedLife(failed(...late.map(({ at }) => at))).life.shape).toBeGreaterThan(1.3 * life.shape);
  });

  it("is the same in any unit and order", () => {
    fc.assert(
      fc.property(fleets, decades(-6, 6), (records, unit) => {
        const there = (age: number) => age * unit;
        const others = records.map((record): LifeRecord => {
          const since = record.since === undefined ? {} : { since: there(record.since) };
          if (record.kind === "failed between")
            return { ...since, kind: record.kind, from: there(record.from), to: there(record.to) };
          if (record.kind === "found failed") return { ...since, kind: record.kind, by: there(record.by) };
          return { ...since, kind: record.kind, at: there(record.at) };
        });
        const [one, other] = [fittedLife(records).life, fittedLife(others.reverse()).life];
        expect(other.shape / one.shape).toBeCloseTo(1, 8);
        expect(other.scale / unit / one.scale).toBeCloseTo(1, 8);
      }),
    );
  });

  it("one part found failed as it was made new tells nothing; one that narrow looks catch tells as one seen", () => {
    const seen = fittedLife(failed(50, 90, 140)).life;
    const caught = fittedLife(
      [50, 90, 140].map((at) => ({ kind: "failed between", from: at - 1e-4, to: at + 1e-4 }) as const),
    ).life;
    expect(caught.shape / seen.shape).toBeCloseTo(1, 6);
    expect(caught.scale / seen.scale).toBeCloseTo(1, 6);
    expect(fittedLife([...failed(50, 90, 140), { kind: "found failed", by: 1e9 }]).life.shape).toBeCloseTo(
      seen.shape,
      6,
    );
    expect(fittedLife([...failed(50, 90, 140), ...running(0)]).life.shape).toBeCloseTo(seen.shape, 10);
  });

  it("says when failures are few, however many run", () => {
    expect(
      fittedLife([...failed(50, 90, 110, 140), ...running(...Array.from({ length: 30 }, () => 150))]),
    ).toMatchObject({
      failures: 4,
      few: true,
    });
    expect(fittedLife(failed(50, 90, 110, 140, 150))).toMatchObject({ failures: 5, few: false });
  });

  it("that cannot be are refused: no failure, all at one age, looks that go backwards", () => {
    expect(refused(() => fittedLife([]))).toBe(true);
    expect(refused(() => fittedLife(running(10, 20, 30)))).toBe(true);
    expect(refused(() => fittedLife(failed(10, 10, 10)))).toBe(true);
    expect(refused(() => fittedLife([...failed(10), ...running(5)]))).toBe(true);
    expect(refused(() => fittedLife([{ kind: "found failed", by: 10 }, ...running(20)]))).toBe(true);
    expect(refused(() => fittedLife(failed(10, 20, 0)))).toBe(true);
    expect(refused(() => fittedLife([...failed(10, 20), { kind: "failed between", from: 9, to: 8 }]))).toBe(
      true,
    );
    expect(refused(() => fittedLife([...failed(10, 20), { kind: "running", at: 8, since: 9 }]))).toBe(true);
    expect(refused(() => fittedLife([...failed(10, 20), { kind: "found failed", by: 9, since: 9 }]))).toBe(
      true,
    );
  });
});
