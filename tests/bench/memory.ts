// Whether a history's memory grows with its days.
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { simulate } from "../../src/history/simulate.ts";
import { cpuTime, median } from "./clock.ts";
import { soundUnit, van } from "./van.ts";

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

export interface HistoryCost {
  /** Heap with the history in hand, more than before it [MB]. */
  readonly heap: number;
  /** Processor time of all of it [s] and of a second of its running [µs], and how long it ran [h]. */
  readonly whole: number;
  readonly second: number;
  readonly hours: number;
}

/** What a healthy history of so many days costs. */
export function historyOf(days: number): HistoryCost {
  collect();
  const before = process.memoryUsage().heapUsed;
  const from = cpuTime();
  const history = simulate({
    unit: soundUnit,
    week: van.week,
    weekday: 0,
    dayOfYear: 60,
    opens: { after: 0 },
    topUps: [],
    span: days * 86400,
  });
  const spent = cpuTime() - from;
  collect();
  const heap = (process.memoryUsage().heapUsed - before) / 1e6;
  const { running } = history.end;
  return { heap, whole: spent / 1e6, second: spent / running, hours: running / 3600 };
}

/** The power of the days that a healthy history's cost goes with: the slope of a straight line through both logarithms, 1 for linear. */
export function powerOfDays(days: readonly number[]): number {
  const points = days.map(
    (n) => [Math.log(n), Math.log(median([n, n, n].map((each) => historyOf(each).whole)))] as const,
  );
  const mean = (of: 0 | 1) => points.reduce((sum, point) => sum + point[of], 0) / points.length;
  const [x, y] = [mean(0), mean(1)];
  const rise = points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0);
  return rise / points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0);
}
