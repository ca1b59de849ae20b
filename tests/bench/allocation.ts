// What a run allocates, by V8's sampling of its own heap: what was collected meanwhile counts too.
import { Session } from "node:inspector";

/** Bytes between two samples on the average: small enough that a round of a thousand steps gives hundreds of samples. */
const EVERY = 1024;

interface Place {
  readonly selfSize: number;
  readonly children: readonly Place[];
}

const sizeOf = ({ selfSize, children }: Place): number =>
  children.reduce((sum, child) => sum + sizeOf(child), selfSize);

/** Bytes allocated while `run` runs. */
export function allocatedBy(run: () => void): number {
  const session = new Session();
  session.connect();
  session.post("HeapProfiler.startSampling", {
    samplingInterval: EVERY,
    includeObjectsCollectedByMajorGC: true,
    includeObjectsCollectedByMinorGC: true,
  } as { samplingInterval: number });
  run();
  let bytes = Number.NaN;
  session.post("HeapProfiler.stopSampling", (error, result) => {
    if (error === null) bytes = sizeOf(result.profile.head);
  });
  session.disconnect();
  return bytes;
}
