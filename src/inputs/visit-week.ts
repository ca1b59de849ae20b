// A small week for a vehicle of which only the use is told: few kinds of trips, since each has to be prepared.

import { dailyDriving, weekOf } from "../driving/pattern.ts";
import { nedcExtraUrban } from "../driving/nedc.ts";
import { parcelRound } from "../driving/parcel-round.ts";
import type { Trace } from "../driving/trace.ts";
import { dayNames } from "./week-schema.ts";

export type Roads = "town" | "mixed" | "highway";

/** How much a vehicle is used; one of the two numbers, SI, a week and a mean day of it. */
export interface Use {
  readonly roads: Roads;
  readonly distancePerWeek?: number | undefined;
  readonly hoursPerDay?: number | undefined;
}

/** A trip as a case writes it. */
interface WrittenTrip {
  readonly schedule: string;
  readonly days: readonly string[];
  readonly at: string;
  readonly seed?: number;
  readonly hardness?: number;
  readonly duration?: string;
  readonly name?: string;
  readonly csv?: string;
}

/** Shortest and longest trip that is made [s]; from how short ones on it is driven on fewer days. */
const SHORTEST = 600;
const SHORT = 1200;
const LONGEST = 4500;
/** Trips start so early and so far apart that the first of a day finds everything cold [h]. */
const STARTS: Readonly<Record<number, readonly string[]>> = {
  2: ["07:30", "17:00"],
  4: ["06:30", "09:30", "12:30", "15:30"],
};

/** What one trip of the roads is, in seconds; two make a day out and home, the second of another seed. */
function tripOf(roads: Roads, duration: number, second: boolean): Omit<WrittenTrip, "days" | "at"> {
  if (roads === "highway" || (roads === "mixed" && second)) return highway(duration);
  return {
    schedule: "parcel round",
    seed: second ? 2 : 1,
    hardness: 0.8,
    duration: `${(duration / 60).toFixed(1)} min`,
  };
}

/** The extra-urban part of the driving cycle over and over: the fastest schedule that is published. */
function highway(duration: number): Omit<WrittenTrip, "days" | "at"> {
  const { time, speed } = nedcExtraUrban;
  const whole = time.at(-1)!;
  const parts = Math.max(1, Math.round(duration / whole));
  const lines = ["time [s],speed [m/s]"];
  for (let second = 0, i = 0; second <= parts * whole; second++) {
    const into = second % whole;
    if (into === 0) i = 0;
    while (time[i + 1]! < into) i++;
    const share = (into - time[i]!) / (time[i + 1]! - time[i]!);
    lines.push(`${second},${(speed[i]! + share * (speed[i + 1]! - speed[i]!)).toFixed(4)}`);
  }
  return { schedule: "own", name: "extra-urban parts on end", csv: lines.join("\n") };
}

/** Mean speed of a trip [m/s], from a long one. */
function speedOf(roads: Roads): number {
  const of = (trace: Trace) => {
    const { distance, drivingTime } = dailyDriving(weekOf([{ trace, startsAt: 0, days: [0] }]));
    return distance / drivingTime;
  };
  const town = of(parcelRound(1, { hardness: 0.8, hilliness: 1, duration: 2400 }));
  const fast = of(nedcExtraUrban);
  return roads === "town" ? town : roads === "highway" ? fast : 0.5 * (town + fast);
}

/** Days on which it is driven, by running time a week [s]: little use is fewer days, not shorter trips. */
function daysFor(running: number): readonly string[] {
  if (running < 2 * 5 * SHORT) return running < 2 * 3 * SHORT ? ["Mon", "Thu"] : ["Mon", "Wed", "Fri"];
  return running <= 4 * 5 * LONGEST ? dayNames.slice(0, 5) : dayNames;
}

/** A week with about that use: two or four trips a day, each day alike, so that there are as many kinds of trips as trips a day. */
export function weekFor({ roads, distancePerWeek, hoursPerDay }: Use): { trips: readonly WrittenTrip[] } {
  const running =
    distancePerWeek !== undefined ? distancePerWeek / speedOf(roads) : 7 * (hoursPerDay ?? 3600);
  const days = daysFor(running);
  const count = running <= 2 * days.length * LONGEST ? 2 : 4;
  const duration = Math.min(LONGEST, Math.max(SHORTEST, running / (days.length * count)));
  return {
    trips: STARTS[count]!.map((at, i) => ({ ...tripOf(roads, duration, i % 2 === 1), days, at })),
  };
}
