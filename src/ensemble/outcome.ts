// What is kept of one member's history: its events, and one row a trip of what bands are made of.

import type { Ending, History } from "../history/simulate.ts";
import type { EventName } from "../history/watch.ts";
import type { Case } from "../inputs/case.ts";
import { volumeOf } from "../inputs/plan.ts";

/** The first event of its kind: seconds since the start, seconds of running, odometer [m], fluid lost [m³ at the fill's temperature]. */
export interface Happened {
  readonly name: EventName;
  readonly clutch?: string;
  readonly clock: number;
  readonly running: number;
  readonly odometer: number;
  readonly lost: number;
}

/**
 * The curves, SI: hot level over the pan's floor [m], fluid lost [m³], most gas of a trip [share], lowest line pressure of a
 * trip [share of the set point], heat of slips so far [J], hottest fluid of a trip [K], damage of the worst clutch [index].
 */
export const curveNames = [
  "level",
  "lost",
  "gas",
  "pressure",
  "slipEnergy",
  "temperature",
  "damage",
] as const;
export type CurveName = (typeof curveNames)[number];

/** Those that stay as they are when a history ends; the others are of a trip, and end with the last. */
export const staying: readonly CurveName[] = ["level", "lost", "slipEnergy", "damage"];

/** One row a trip; `level` is NaN until the stick could first be read. */
export type Rows = Readonly<Record<CurveName | "clock" | "running", Float64Array>>;

export interface Outcome {
  readonly endedBy: Ending;
  /** The last moment; `odometer` and `lost` as of an event. */
  readonly end: Omit<Happened, "name" | "clutch">;
  readonly events: readonly Happened[];
  readonly rows: Rows;
}

/** What is kept of a history of a case. Top-ups are what was done, not what happened: they are left out. */
export function outcomeOf({ unit, start }: Case, { events, trips, endedBy, end }: History): Outcome {
  const first = new Map<string, Happened>();
  for (const { name, clutch, clock, running, distance, lost } of events) {
    if (name === "topped up") continue;
    const at = { name, clock, running, odometer: start.odometer + distance, lost: volumeOf({ unit }, lost) };
    const own = { ...at, ...(clutch === undefined ? {} : { clutch }) };
    // A mark of damage is told of each clutch, and without a clutch of whichever comes to it first.
    for (const event of [own, at]) if (!first.has(keyOf(event))) first.set(keyOf(event), event);
  }
  const lostMass = end.hidden + end.onRoad + end.onGround;
  let slipped = 0;
  const column = (of: (row: History["trips"][number]) => number) => Float64Array.from(trips, of);
  return {
    endedBy,
    end: {
      clock: end.clock,
      running: end.running,
      odometer: start.odometer + end.distance,
      lost: volumeOf({ unit }, lostMass),
    },
    events: [...first.values()],
    rows: {
      clock: column((row) => row.clock),
      running: column((row) => row.running),
      level: column((row) => row.level ?? Number.NaN),
      lost: column((row) => volumeOf({ unit }, row.lost)),
      gas: column((row) => row.mostGas),
      pressure: column((row) => (Number.isFinite(row.leastPressure) ? row.leastPressure : 1)),
      slipEnergy: column((row) => (slipped += row.slipEnergy)),
      temperature: column((row) => row.hottest),
      damage: column((row) => row.worstDamage),
    },
  };
}

/** Name of an event with the clutch it concerns: "damage 1: front brake". */
export const keyOf = ({
  name,
  clutch,
}: {
  readonly name: EventName;
  readonly clutch?: string | undefined;
}): string => (clutch === undefined ? name : `${name}: ${clutch}`);
