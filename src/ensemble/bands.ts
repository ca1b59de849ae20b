// From the members' outcomes to bands: of every event, and of every curve over running time and over the date.

import { keyOf, staying, type CurveName, type Happened, type Outcome } from "./outcome.ts";
import { quantiles, type Band } from "./quantiles.ts";

/** Quantiles of an event over the members; those in which it had not happened count as later than the end (null). */
export interface EventBand {
  readonly key: string;
  readonly name: Happened["name"];
  readonly clutch?: string;
  /** Share of the members in which it happens at all. */
  readonly share: number;
  /** Seconds since the start; of running; odometer [m]; fluid lost [m³ at the fill's temperature]. */
  readonly clock: Band;
  readonly running: Band;
  readonly odometer: Band;
  readonly lost: Band;
}

/** What is told of each event. */
export const measures = ["clock", "running", "odometer", "lost"] as const;
export type Measure = (typeof measures)[number];

/** Every event that happens in some member, the likelier and earlier first in time. */
export function eventBands(outcomes: readonly Outcome[]): readonly EventBand[] {
  const kinds = new Map<string, Happened>();
  for (const { events } of outcomes)
    for (const event of events) if (!kinds.has(keyOf(event))) kinds.set(keyOf(event), event);
  const bands = [...kinds].map(([key, { name, clutch }]): EventBand => {
    const band = (measure: Measure) => quantiles(valuesOf(outcomes, key, measure));
    return {
      key,
      name,
      ...(clutch === undefined ? {} : { clutch }),
      share: outcomes.filter((outcome) => eventOf(outcome, key) !== undefined).length / outcomes.length,
      clock: band("clock"),
      running: band("running"),
      odometer: band("odometer"),
      lost: band("lost"),
    };
  });
  // In the order of their medians; those of fewer than half of the members after them, by their share.
  const order = ({ running, share }: EventBand) => running[2] ?? 1e18 * (2 - share);
  return bands.sort((a, b) => order(a) - order(b) || (a.key < b.key ? -1 : 1));
}

/** A member's value of an event; Infinity where it had not happened by the end. */
export function valuesOf(outcomes: readonly Outcome[], key: string, measure: Measure): number[] {
  return outcomes.map((outcome) => eventOf(outcome, key)?.[measure] ?? Infinity);
}

export const eventOf = ({ events }: Outcome, key: string): Happened | undefined =>
  events.find((event) => keyOf(event) === key);

/** Whether anything happens before the leak opens, which it must have done. */
export function ailsFirst(outcome: Outcome): boolean {
  const opens = eventOf(outcome, "leak opens");
  return opens !== undefined && outcome.events.some(({ running }) => running < opens.running);
}

/** A curve's band at each time; null where nobody can be told of. */
export type CurveBand = readonly Band[];

export interface CurveBands {
  /** Seconds of running or since the start. */
  readonly times: readonly number[];
  /** Share of the members still on their way. */
  readonly going: readonly number[];
  readonly bands: Readonly<Record<CurveName, CurveBand>>;
}

/**
 * Bands at `points` times from 0 to the latest end. What stays when a history ends (level, fluid lost, heat of slips, damage)
 * is counted on as it was left; what belongs to a trip (gas, pressure, temperature) is told of those still on their way.
 */
export function curveBands(
  outcomes: readonly Outcome[],
  over: "running" | "clock",
  points: number,
): CurveBands {
  const ends = outcomes.map(({ end, rows }) => Math.max(end[over], rows[over].at(-1) ?? 0));
  const latest = Math.max(0, ...ends);
  const times = Array.from({ length: points }, (_, i) => (latest * i) / Math.max(1, points - 1));
  const band = (name: CurveName): CurveBand =>
    times.map((time) =>
      quantiles(
        outcomes
          .filter((_, m) => ends[m]! >= time || staying.includes(name))
          .map((outcome) => curveAt(outcome, over, name, time))
          .filter((value) => !Number.isNaN(value)),
      ),
    );
  return {
    times,
    going: times.map((time) => ends.filter((end) => end >= time).length / Math.max(1, outcomes.length)),
    bands: {
      level: band("level"),
      lost: band("lost"),
      gas: band("gas"),
      pressure: band("pressure"),
      slipEnergy: band("slipEnergy"),
      temperature: band("temperature"),
      damage: band("damage"),
    },
  };
}

/**
 * A curve at a time: what adds up lies on a straight line between the ends of trips, from nothing at the start; what belongs
 * to a trip holds for all of it, and a level since the stick was last read. NaN where there is none.
 */
export function curveAt({ rows }: Outcome, over: "running" | "clock", name: CurveName, time: number): number {
  const [at, values] = [rows[over], rows[name]];
  const n = at.length;
  let [low, high] = [0, n]; // the first row that ends at the time or later
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at[middle]! < time) low = middle + 1;
    else high = middle;
  }
  if (n === 0) return name === "lost" || name === "slipEnergy" || name === "damage" ? 0 : Number.NaN;
  if (low >= n) return values[n - 1]!;
  if (name === "level") return at[low] === time || low === 0 ? values[low]! : values[low - 1]!;
  if (!staying.includes(name)) return values[low]!;
  const from = low === 0 ? 0 : at[low - 1]!;
  const before = low === 0 ? 0 : values[low - 1]!;
  const span = at[low]! - from;
  return span > 0 ? before + ((time - from) / span) * (values[low]! - before) : values[low]!;
}
