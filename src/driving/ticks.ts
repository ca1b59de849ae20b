import { impossible } from "../errors.ts";
import { type Ticks, type Trace } from "./trace.ts";

/** Once speed, grade and turn have been steady for so many ticks, the ticks are so many times as long. */
const SETTLING = 3;
const STEADY = 5;

/**
 * Cuts a trace into ticks of at most `step` [s], so that every time of the trace is the end of a tick: kinks of the
 * driving are stepped on, never over. Ticks between two times are equal, but where the speed stays the same: after three
 * ticks, in which gears and lock-up follow, they are up to five times as long. The speed before the first tick is the
 * trace's first speed; a trip starts from standstill.
 */
export function ticks(trace: Trace, step = 1): Ticks {
  if (!(step > 0)) impossible("step", step, "a time above 0 s");
  const { time, speed } = trace;
  // A hair of slack: 0.1 s samples written in decimals are not cut in two for their last bit.
  const parts = (span: number, longest: number) => Math.max(1, Math.ceil(span / longest - 1e-6));
  const cuts = Array.from(time.subarray(1), (end, i) => {
    const span = end - time[i];
    const settling = Math.min(span, SETTLING * step);
    const steady = span - settling;
    if (speed[i + 1] !== speed[i] || steady < step)
      return Array<number>(parts(span, step)).fill(span / parts(span, step));
    const n = parts(steady, STEADY * step);
    return [...Array<number>(SETTLING).fill(step), ...Array<number>(n).fill(steady / n)];
  });
  const count = cuts.reduce((sum, { length }) => sum + length, 0);
  const cut = {
    count,
    dt: new Float64Array(count),
    speed: new Float64Array(count),
    grade: new Float64Array(count),
    lateral: new Float64Array(count),
  };
  let tick = 0;
  for (let i = 0; i + 1 < time.length; i++) {
    const n = cuts[i].length;
    for (let part = 1; part <= n; part++, tick++) {
      cut.dt[tick] = cuts[i][part - 1];
      cut.speed[tick] = part === n ? speed[i + 1] : speed[i] + ((speed[i + 1] - speed[i]) * part) / n;
      cut.grade[tick] = trace.grade[i];
      cut.lateral[tick] = trace.lateral[i];
    }
  }
  return cut;
}
