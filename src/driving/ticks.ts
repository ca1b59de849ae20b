import { impossible } from "../errors.ts";
import { type Ticks, type Trace } from "./trace.ts";

/**
 * Cuts a trace into ticks of at most `step` [s], so that every time of the trace is the end of a tick: kinks of the
 * driving are stepped on, never over. Ticks between two times are equal. The speed before the first tick is the
 * trace's first speed; a trip starts from standstill.
 */
export function ticks(trace: Trace, step = 1): Ticks {
  if (!(step > 0)) impossible("step", step, "a time above 0 s");
  const { time, speed } = trace;
  // A hair of slack: 0.1 s samples written in decimals are not cut in two for their last bit.
  const parts = (i: number) => Math.max(1, Math.ceil((time[i + 1] - time[i]) / step - 1e-6));
  let count = 0;
  for (let i = 0; i + 1 < time.length; i++) count += parts(i);
  const cut = {
    count,
    dt: new Float64Array(count),
    speed: new Float64Array(count),
    grade: new Float64Array(count),
    lateral: new Float64Array(count),
  };
  let tick = 0;
  for (let i = 0; i + 1 < time.length; i++) {
    const n = parts(i);
    for (let part = 1; part <= n; part++, tick++) {
      cut.dt[tick] = (time[i + 1] - time[i]) / n;
      cut.speed[tick] = part === n ? speed[i + 1] : speed[i] + ((speed[i + 1] - speed[i]) * part) / n;
      cut.grade[tick] = trace.grade[i];
      cut.lateral[tick] = trace.lateral[i];
    }
  }
  return cut;
}
