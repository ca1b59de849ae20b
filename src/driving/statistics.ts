import { finite, impossible, notNegative } from "../errors.ts";
import { type Trace } from "./trace.ts";

/** What a schedule amounts to, in SI. Exact for a trace of straight lines. */
export interface TraceStatistics {
  readonly duration: number;
  readonly distance: number;
  readonly meanSpeed: number;
  /** Mean over the time in which the vehicle moves. */
  readonly meanMovingSpeed: number;
  readonly maxSpeed: number;
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

/** Distance, speeds, idling, stops and accelerations of a trace of two moments or more. */
export function statistics(trace: Trace): TraceStatistics {
  check(trace);
  const { time, speed, grade } = trace;
  const last = time.length - 1;
  let [distance, still, stops, climb] = [0, 0, 0, 0];
  let [maxSpeed, most, least] = [speed[0], -Infinity, Infinity];
  for (let i = 0; i < last; i++) {
    const dt = time[i + 1] - time[i];
    const ds = 0.5 * (speed[i] + speed[i + 1]) * dt;
    distance += ds;
    climb += ds * Math.sin(Math.atan(grade[i]));
    if (speed[i] === 0 && speed[i + 1] === 0) still += dt;
    if (speed[i] > 0 && speed[i + 1] === 0) stops++;
    maxSpeed = Math.max(maxSpeed, speed[i + 1]);
    most = Math.max(most, rate(trace, i));
    least = Math.min(least, rate(trace, i));
  }
  const duration = time[last] - time[0];
  return {
    duration,
    distance,
    meanSpeed: distance / duration,
    meanMovingSpeed: duration > still ? distance / (duration - still) : 0,
    maxSpeed,
    idleShare: still / duration,
    stops,
    maxAcceleration: most,
    minAcceleration: least,
    climb,
  };
}

// Is an acceleration beyond a threshold, on the threshold's own side of zero?
const beyond = (given: number, threshold: number) => (threshold >= 0 ? given > threshold : given < threshold);

/**
 * Share of all time with an acceleration beyond `threshold` [m/s2]: above it when it is zero or positive,
 * below it (braking harder) when it is negative.
 */
export function shareBeyond(trace: Trace, threshold: number): number {
  if (Number.isNaN(threshold)) impossible("threshold", threshold, "an acceleration in m/s2");
  check(trace);
  const { time } = trace;
  let held = 0;
  for (let i = 0; i + 1 < time.length; i++)
    if (beyond(rate(trace, i), threshold)) held += time[i + 1] - time[i];
  return held / (time[time.length - 1] - time[0]);
}

/** Longest unbroken time [s] with an acceleration beyond `threshold` [m/s2], counted as in `shareBeyond`. */
export function longestBeyond(trace: Trace, threshold: number): number {
  if (Number.isNaN(threshold)) impossible("threshold", threshold, "an acceleration in m/s2");
  check(trace);
  const { time } = trace;
  let [run, longest] = [0, 0];
  for (let i = 0; i + 1 < time.length; i++) {
    run = beyond(rate(trace, i), threshold) ? run + time[i + 1] - time[i] : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}
