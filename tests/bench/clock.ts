// Processor time, so that a busy machine does not look like a slow program.

/** Microseconds of processor time that this process has used. */
export function cpuTime(): number {
  const { user, system } = process.cpuUsage();
  return user + system;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

const REPEATS = 7;

/** Processor time [µs] of one call: the median of several batches, after two for warming up. */
export function timeOf(calls: number, run: () => void): number {
  const batches: number[] = [];
  for (let batch = -2; batch < REPEATS; batch++) {
    const from = cpuTime();
    for (let i = 0; i < calls; i++) run();
    if (batch >= 0) batches.push((cpuTime() - from) / calls);
  }
  return median(batches);
}
