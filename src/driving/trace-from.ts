import { codedError, type Fault } from "../errors.ts";
import { type Trace } from "./trace.ts";

/** Columns as a user's file gives them, already in SI. Grade and lateral acceleration may be left out: zero. */
export interface TraceColumns {
  readonly name: string;
  readonly time: ArrayLike<number>;
  readonly speed: ArrayLike<number>;
  readonly grade?: ArrayLike<number>;
  readonly lateral?: ArrayLike<number>;
}

/** Longest gap between two rows while the vehicle moves [s]: across a longer one nobody knows how it was driven. */
export const longestGap = 5;
const fastest = 140; // m/s, 504 km/h, 313 mph: no road vehicle
const steepest = 0.5; // rise over run: no road
const hardest = 12; // m/s2: no road tyre

/**
 * A trace from columns, checked: one length, two rows or more, finite numbers, rising time, no gap above
 * `longestGap` while moving, speed from 0 to 140 m/s, |grade| < 0.5, |lateral| < 12 m/s2.
 * Throws `bad-trace` with every fault, row by row.
 */
export function traceFrom(columns: TraceColumns): Trace {
  const { name, time, speed } = columns;
  const n = time.length;
  const faults: Fault[] = [];
  const fault = (path: string, expected: string, given: number, example: string) =>
    faults.push({ path: `${name}.${path}`, expected, given: String(given), example });
  if (n < 2) fault("time", "two rows or more", n, "");
  const check = (
    field: "speed" | "grade" | "lateral",
    good: (value: number) => boolean,
    expected: string,
    example: string,
  ) => {
    const column = columns[field];
    if (column === undefined) return;
    if (column.length !== n) fault(field, `${n} rows, as many as time has`, column.length, "");
    for (let i = 0; i < column.length; i++)
      if (!good(column[i])) fault(`${field}[${i}]`, expected, column[i], example);
  };
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(time[i])) fault(`time[${i}]`, "a finite time in s", time[i], String(i));
    else if (i > 0 && !(time[i] > time[i - 1]))
      fault(
        `time[${i}]`,
        `a time after row ${i - 1}${time[i] === time[i - 1] ? " (rows of one time are made one where mergeRepeats is asked for)" : ""}`,
        time[i],
        "",
      );
    else if (i > 0 && time[i] - time[i - 1] > longestGap && (speed[i - 1] > 0 || speed[i] > 0))
      fault(
        `time[${i}]`,
        `at most ${longestGap} s after row ${i - 1} while the vehicle moves (longer gaps are bridged where bridgeGaps is asked for)`,
        time[i] - time[i - 1],
        "rows each second",
      );
  }
  check(
    "speed",
    (v) => v >= 0 && v <= fastest,
    `a speed from 0 to ${fastest} m/s (504 km/h, 313 mph), as road vehicles drive`,
    "13.9",
  );
  check(
    "grade",
    (g) => Math.abs(g) < steepest,
    `a rise over run between -${steepest} and ${steepest}`,
    "0.06",
  );
  check("lateral", (y) => Math.abs(y) < hardest, `between -${hardest} and ${hardest} m/s2`, "1.5");
  if (faults.length > 0) throw codedError("bad-trace", faults);
  return {
    name,
    time: Float64Array.from(time),
    speed: Float64Array.from(speed),
    grade: columns.grade ? Float64Array.from(columns.grade) : new Float64Array(n),
    lateral: columns.lateral ? Float64Array.from(columns.lateral) : new Float64Array(n),
  };
}
