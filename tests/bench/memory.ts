// Whether a history's memory grows with its days.
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { simulate } from "../../src/history/simulate.ts";
import { cpuTime } from "./clock.ts";
import { soundUnit, van } from "./van.ts";

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

/** Heap [MB] with a history of so many days in hand, more than before it; and processor time [µs] of a second of its running. */
export function historyOf(days: number): { readonly heap: number; readonly second: number } {
  collect();
  const before = process.memoryUsage().heapUsed;
  const from = cpuTime();
  const history = simulate({
    unit: soundUnit,
    week: van.week,
    weekday: 0,
    dayOfYear: 60,
    opens: { after: Infinity },
    topUps: [],
    span: days * 86400,
  });
  const spent = cpuTime() - from;
  collect();
  const heap = (process.memoryUsage().heapUsed - before) / 1e6;
  return { heap, second: spent / history.end.running };
}
