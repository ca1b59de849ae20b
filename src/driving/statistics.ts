import { finite, impossible, notNegative } from "../errors.ts";
import { type Trace } from "./trace.ts";

/** What a schedule amounts to, in SI. Exact for a trace of straight lines. */
export interface TraceStatistics {
  readonly duration: number;
  readonly distance: number;
  /** Speed at its first row. A trip starts from standstill: above 0 it drives less than `distance`, unless it is led in (`mendTrace`). */
  readonly startSpeed: number;
  readonly meanSpeed: number;
  /** Mean over the time in which the vehicle moves. */
  readonly meanMovingSpeed: number;
  readonly maxSpeed: number;
  /** Roots of the mean squares: of the speed over all time, of the acceleration over all time and over the time in which it moves. */
  readonly rmsSpeed: number;
  readonly rmsAcceleration: number;
  readonly rmsMovingAcceleration: number;
  /** Speed gained times speed, over the distance [m/s2]: ∫ v max(0, a) dt / ∫ v dt; 0 where nothing is driven. */
  readonly relativePositiveAcceleration: number;
  /** Share of the time at standstill. */
  readonly idleShare: number;
  /** Number of times that the vehicle comes to rest. */
  readonly stops: number;
  /** Largest and smallest (hardest braking) acceleration [m/s2]. */
  readonly maxAcceleration: number;
  readonly minAcceleration: number;
  /** Height gained less height lost from start to end [m]. */
  readonly climb: number;
}

/** Refuses a trace in which nothing is driven: one moment alone, or a row that is no driving. */
function check({ time, speed, grade }: Trace): void {
  if (!(time.length > 1)) impossible("trace.time", time.length, "two moments or more");
  finite("trace.time[0]", time[0]!);
  for (let i = 0; i < time.length; i++) {
    if (i > 0 && !(time[i]! > time[i - 1]! && time[i]! < Infinity))
      impossible(`trace.time[${i}]`, time[i]!, "a moment in s after the one before");
    notNegative(`trace.speed[${i}]`, speed[i]!, "m/s");
    finite(`trace.grade[${i}]`, grade[i]!);
  }
}

const rate = ({ time, speed }: Trace, i: number) => (speed[i + 1] - speed[i]) / (time[i + 1] - time[i]);

/** Distance, speeds, idling, stops and accelerations of a trace. Errors: fewer than two rows; a row that is no driving. */
export function statistics(trace: Trace): TraceStatistics {
  check(trace);
  const { time, speed, grade } = trace;
  const last = time.length - 1;
  let [distance, still, stops, climb] = [0, 0, 0, 0];
  let [maxSpeed, most, least] = [speed[0], -Infinity, Infinity];
  let [speeds, accelerations, gains] = [0, 0, 0];
  for (let i = 0; i < last; i++) {
    const dt = time[i + 1] - time[i];
    const [from, to] = [speed[i], speed[i + 1]];
    const ds = 0.5 * (from + to) * dt;
    const a = rate(trace, i);
    distance += ds;
    climb += ds * Math.sin(Math.atan(grade[i]));
    speeds += ((from * from + from * to + to * to) / 3) * dt;
    accelerations += a * a * dt;
    gains += Math.max(0, a) * ds;
    if (from === 0 && to === 0) still += dt;
    if (from > 0 && to === 0) stops++;
    maxSpeed = Math.max(maxSpeed, to);
    most = Math.max(most, a);
    least = Math.min(least, a);
  }
  const duration = time[last] - time[0];
  const moving = duration > still;
  return {
    duration,
    distance,
    startSpeed: speed[0],
    meanSpeed: distance / duration,
    meanMovingSpeed: moving ? distance / (duration - still) : 0,
    maxSpeed,
    rmsSpeed: Math.sqrt(speeds / duration),
    rmsAcceleration: Math.sqrt(accelerations / duration),
    rmsMovingAcceleration: moving ? Math.sqrt(accelerations / (duration - still)) : 0,
    relativePositiveAcceleration: distance > 0 ? gains / distance : 0,
    idleShare: still / duration,
    stops,
    maxAcceleration: most,
    minAcceleration: least,
    climb,
  };
}

// Is an acceleration beyond a threshold, on the threshold's own side of zero?
const beyond = (given: number, threshold: number) => (threshold >= 0 ? given > threshold : given < threshold);

function checkAsked(trace: Trace, threshold: number): void {
  check(trace);
  if (Number.isNaN(threshold)) impossible("threshold", threshold, "an acceleration in m/s2");
}

/**
 * Share of all time with an acceleration beyond `threshold` [m/s2]: above it when it is zero or positive,
 * below it (braking harder) when it is negative. Errors: fewer than two rows; a threshold that is no number.
 */
export function shareBeyond(trace: Trace, threshold: number): number {
  checkAsked(trace, threshold);
  const { time } = trace;
  let held = 0;
  for (let i = 0; i + 1 < time.length; i++)
    if (beyond(rate(trace, i), threshold)) held += time[i + 1] - time[i];
  return held / (time[time.length - 1] - time[0]);
}

/** Unbroken stretches with an acceleration beyond a threshold: how many, and how long they last [s]; 0 where there is none. */
export interface Stretches {
  readonly count: number;
  readonly mean: number;
  readonly longest: number;
}

/** Launches (or, below a negative `threshold` [m/s2], brakings): unbroken stretches beyond it, counted as in `shareBeyond`. Errors: as there. */
export function stretchesBeyond(trace: Trace, threshold: number): Stretches {
  checkAsked(trace, threshold);
  const { time } = trace;
  let [run, longest, count, all] = [0, 0, 0, 0];
  for (let i = 0; i + 1 < time.length; i++) {
    const dt = time[i + 1] - time[i];
    const held = beyond(rate(trace, i), threshold);
    if (held && run === 0) count++;
    run = held ? run + dt : 0;
    all += held ? dt : 0;
    longest = Math.max(longest, run);
  }
  return { count, mean: count > 0 ? all / count : 0, longest };
}

/** Longest unbroken time [s] with an acceleration beyond `threshold` [m/s2], counted as in `shareBeyond`. */
export const longestBeyond = (trace: Trace, threshold: number): number =>
  stretchesBeyond(trace, threshold).longest;

/**
 * Acceleration [m/s2] that is not exceeded for a share (0 to 1) of all time; `of` "size" asks for it without its sign. Counted by
 * time, not between samples. Errors: fewer than two rows; a share outside 0 to 1.
 */
export function accelerationAt(trace: Trace, share: number, of: "signed" | "size" = "signed"): number {
  check(trace);
  if (!(share >= 0 && share <= 1)) impossible("share", share, "a share from 0 to 1");
  const { time } = trace;
  const held = Array.from(time.subarray(1), (end, i) => {
    const a = rate(trace, i);
    return { a: of === "size" ? Math.abs(a) : a, dt: end - time[i] };
  }).sort((one, other) => one.a - other.a);
  const wanted = share * (time[time.length - 1] - time[0]);
  let by = 0;
  // A hair of slack, so that a share that ends with a stretch is within it.
  return held.find(({ dt }) => (by += dt) >= wanted * (1 - 1e-12))?.a ?? held.at(-1)!.a;
}

/** Samples each `step` [s] from its first row to its last: how many, and how many of them at standstill. Errors: fewer than two rows; a step that is not above 0. */
export function standingSamples(
  trace: Trace,
  step = 1,
): { readonly samples: number; readonly standing: number } {
  check(trace);
  if (!(step > 0 && step < Infinity)) impossible("step", step, "a time above 0 s");
  const { time, speed } = trace;
  const samples = Math.floor((time[time.length - 1] - time[0]) / step + 1e-6) + 1;
  let [standing, i] = [0, 0];
  for (let n = 0; n < samples; n++) {
    const at = time[0] + n * step;
    while (i < time.length - 2 && time[i + 1] < at - 1e-9 * step) i++;
    const share = Math.min(1, Math.max(0, (at - time[i]) / (time[i + 1] - time[i])));
    if (speed[i] * (1 - share) + speed[i + 1] * share < 1e-9) standing++;
  }
  return { samples, standing };
}
