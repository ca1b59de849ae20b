// A rule about parts of a build that must fit each other, and numbers as its faults tell them.

import { show, type ShownKind } from "../units/show.ts";
import type { FaultList } from "./fault-list.ts";
import type { PlainBuild } from "./gears.ts";

export type Part = keyof PlainBuild;

/** Tried only when the parts that it looks at were read; a number that could not be read passes. */
export interface Rule {
  readonly needs: readonly Part[];
  readonly check: (build: PlainBuild, list: FaultList) => void;
}

const inWords = (kind: ShownKind) => (value: number) => show(value, kind, "US");
/** What was given, in the units of the trade with SI beside them: either may be the writer's. */
export const told = {
  length: inWords("length"),
  volume: inWords("volume"),
  pressure: inWords("pressure"),
  speed: inWords("speed"),
  temperature: inWords("temperature"),
  turning: inWords("angularSpeed"),
  distance: inWords("distance"),
};
