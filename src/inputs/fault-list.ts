// A list that faults are added to while a case is looked through.

import type { Fault } from "../errors.ts";

export interface FaultList {
  readonly faults: Fault[];
  /** Adds a fault unless what is wanted holds. Comparisons with a number that could not be read are to be written so that they hold. */
  want(holds: boolean, path: string, expected: string, given: string, example?: string): void;
}

export function faultList(faults: Fault[] = []): FaultList {
  return {
    faults,
    want(holds, path, expected, given, example = "") {
      if (!holds) faults.push({ path, expected, given, example });
    },
  };
}
