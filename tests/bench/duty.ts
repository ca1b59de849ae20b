// What histories by averages cost: a week prepared, one history, its leak and loss alone, ten thousand, and how that grows.
import { dutyHistory } from "../../src/duty/history.ts";
import { begin, newMarch } from "../../src/duty/course.ts";
import { marchOn } from "../../src/duty/march.ts";
import { prepareDuty } from "../../src/duty/prepare.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import type { Plan } from "../../src/history/simulate.ts";
import { drawWeek } from "../duty/cases.ts";
import { cpuTime, median, timeOf } from "./clock.ts";

export interface DutyCost {
  /** Processor time of the preparation [s], in one climate and in all that the drawn cases meet. */
  readonly oneClimate: number;
  readonly preparation: number;
  /** Median over drawn leaks [µs]: all events; leak and loss alone. */
  readonly history: number;
  readonly march: number;
  /** Processor time of ten thousand histories in one thread [s]. */
  readonly tenThousand: number;
  /** Exponents of the cost against the days that a leak lives, and against the number of runs. */
  readonly byDays: number;
  readonly byRuns: number;
}

const SEED = 12;
const DRAWN = 60;

/** Slope of a straight line through the logarithms. */
function exponent(x: readonly number[], y: readonly number[]): number {
  const [u, v] = [x.map(Math.log), y.map(Math.log)];
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const [mu, mv] = [mean(u), mean(v)];
  const top = u.reduce((sum, value, i) => sum + (value - mu) * (v[i]! - mv), 0);
  return top / u.reduce((sum, value) => sum + (value - mu) ** 2, 0);
}

function seconds(run: () => void): number {
  const from = cpuTime();
  run();
  return (cpuTime() - from) / 1e6;
}

/** A leak so many times slower, that lives so many times longer. */
function slower(plan: Plan, times: number): Plan {
  const leak = plan.unit.leak!;
  const { opening } = leak;
  const finer =
    opening.kind === "hole" ? { ...opening, diameter: opening.diameter / times ** 0.25 } : opening;
  return {
    ...plan,
    unit: { ...plan.unit, leak: { ...leak, opening: finer } },
    span: plan.span * 20,
    topUps: [],
  };
}

export function costOfDuty(): DutyCost {
  const { week, air, cases } = drawWeek(SEED, DRAWN);
  const { unit } = cases[0]!.plan;
  const middle = 0.5 * (air.coldest + air.warmest);
  const oneClimate = seconds(() => prepareDuty(unit, week, undefined, { coldest: middle, warmest: middle }));
  let prepared: Prepared | undefined;
  const preparation = seconds(() => (prepared = prepareDuty(unit, week, undefined, air)));
  const ready = prepared!;
  const averaged = cases
    .map(({ plan }) => plan)
    .filter((plan) => dutyHistory(ready, plan).handedOver === "nothing");
  const costs = averaged.map((plan) => timeOf(100, () => dutyHistory(ready, { ...plan })));
  const march = newMarch(ready, averaged[0]!);
  const marches = averaged.map((plan) =>
    timeOf(100, () => {
      begin(march, plan);
      marchOn(march, 3);
    }),
  );
  const many = (runs: number) =>
    seconds(() => {
      for (let i = 0; i < runs; i++) dutyHistory(ready, { ...averaged[i % averaged.length]! });
    });
  many(1000);
  const runs = [1000, 3000, 10_000];
  const totals = runs.map(many);
  const onLine = averaged.find(({ unit: { leak } }) => leak?.opening.kind === "hole" && leak.place !== "pan");
  const longer = [1, 2, 4, 8, 16].map((times) => slower(onLine ?? averaged[0]!, times));
  return {
    oneClimate,
    preparation,
    history: median(costs),
    march: median(marches),
    tenThousand: totals.at(-1)!,
    byDays: exponent(
      longer.map((plan) => dutyHistory(ready, plan).end.clock),
      longer.map((plan) => timeOf(100, () => dutyHistory(ready, { ...plan }))),
    ),
    byRuns: exponent(runs, totals),
  };
}
