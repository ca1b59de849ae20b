// How near a drive came to each event: a condition that must last has a continuous measure of its own, the largest value above
// which the measure stayed for the time that it must last. It is above zero exactly when the event happens.

/** Looks that are kept: more than the longest lasting condition can hold. */
const RING = 8192;
const MASK = RING - 1;

/** Watches several measures at once; `lasting` [s] for each. Written in place. */
export interface Severity {
  readonly lasting: Float64Array;
  /** Which of them must last at all: only their looks are kept. */
  readonly timed: Int32Array;
  readonly times: Float64Array;
  readonly values: Float64Array;
  /** Indices of looks of rising value, the least first: what is left of them after every larger, older one is dropped. */
  readonly rising: Int32Array;
  readonly head: Int32Array;
  readonly tail: Int32Array;
  /** The last look at or before the beginning of the window. */
  readonly left: Int32Array;
  looks: number;
}

export function newSeverity(lasting: readonly number[]): Severity {
  const count = lasting.length;
  return {
    lasting: Float64Array.from(lasting),
    timed: Int32Array.from(lasting.flatMap((seconds, i) => (seconds > 0 ? [i] : []))),
    times: new Float64Array(RING),
    values: new Float64Array(count * RING),
    rising: new Int32Array(count * RING),
    head: new Int32Array(count),
    tail: new Int32Array(count),
    left: new Int32Array(count),
    looks: 0,
  };
}

/** Forgets every look. */
export function forget(severity: Severity): void {
  severity.looks = 0;
  severity.head.fill(0);
  severity.tail.fill(0);
  severity.left.fill(0);
}

/** Notes the measures at a time [s]; times never fall. */
export function noteLook(severity: Severity, time: number, measures: Float64Array): void {
  const { times, values, rising, head, tail, left, lasting, timed } = severity;
  const at = severity.looks++;
  times[at & MASK] = time;
  for (let n = 0; n < timed.length; n++) {
    const i = timed[n]!;
    const value = measures[i]!;
    const row = i * RING;
    values[row + (at & MASK)] = value;
    while (tail[i]! > head[i]! && values[row + (rising[row + ((tail[i]! - 1) & MASK)]! & MASK)]! >= value)
      tail[i]!--;
    rising[row + (tail[i]! & MASK)] = at;
    tail[i]!++;
    const from = time - lasting[i]!;
    if (at - left[i]! >= RING) left[i] = at - RING + 1;
    while (left[i]! < at && times[(left[i]! + 1) & MASK]! <= from) left[i]!++;
    while (rising[row + (head[i]! & MASK)]! <= left[i]! && head[i]! < tail[i]! - 1) head[i]!++;
  }
}

/** The value above which a timed measure stayed for its time, up to the last look; -Infinity when nothing was seen for so long. */
export function heldFor(severity: Severity, i: number): number {
  const { times, values, rising, head, left, lasting } = severity;
  const at = severity.looks - 1;
  const row = i * RING;
  const from = times[at & MASK]! - lasting[i]!;
  const edge = left[i]!;
  if (times[edge & MASK]! > from) return -Infinity;
  const next = edge + 1;
  const t0 = times[edge & MASK]!;
  const t1 = times[next & MASK]!;
  const v0 = values[row + (edge & MASK)]!;
  const v1 = values[row + (next & MASK)]!;
  const atEdge = t1 > t0 ? v0 + ((v1 - v0) * (from - t0)) / (t1 - t0) : v1;
  return Math.min(atEdge, values[row + (rising[row + (head[i]! & MASK)]! & MASK)]!);
}
