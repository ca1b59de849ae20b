// The week that the histories drive, from its trips; what is wrong with them is added to the list.

import { nedc, nedcExtraUrban, nedcUrban } from "../driving/nedc.ts";
import { parcelRound } from "../driving/parcel-round.ts";
import { everyDay, weekOf, workdays, type TripSpec, type Week } from "../driving/pattern.ts";
import { taxiShift } from "../driving/taxi-shift.ts";
import type { Trace } from "../driving/trace.ts";
import { isCoded } from "../errors.ts";
import { given } from "../units/parse.ts";
import { readTrace } from "./csv.ts";
import { clockSeconds } from "./dates.ts";
import type { FaultList } from "./fault-list.ts";
import type { Plain } from "./gather.ts";
import { dayNames, type WeekTree } from "./week-schema.ts";

type PlainWeek = Plain<WeekTree>;
type PlainTrip = PlainWeek["trips"][number];

/** A week, and what was passed over, taken for granted or mended in its recorded drives: a sentence each, with the drive's name. */
export interface ReadWeek {
  readonly week: Week;
  readonly remarks: readonly string[];
}

/** The week, or null with the reasons in the list. A round or shift without a seed takes the case's and its own place. */
export function toWeek(tree: PlainWeek, seed: number, list: FaultList): ReadWeek | null {
  const before = list.faults.length;
  const remarks = new Set<string>(); // the same drive on several trips is told once
  const specs = tree.trips.map((trip, i): TripSpec | null => {
    const path = `week.trips[${i}]`;
    const startsAt = clockSeconds(trip.at);
    list.want(!Number.isNaN(startsAt), `${path}.at`, "a time of day", given(trip.at), '"07:30"');
    try {
      const trace = traceOf(trip, seed + i, path, (says) => remarks.add(says));
      return trace === null ? null : { trace, startsAt, days: daysOf(trip.days) };
    } catch (error) {
      if (!isCoded(error)) throw error;
      list.faults.push(...error.faults);
      return null;
    }
  });
  const good = specs.filter((spec): spec is TripSpec => spec !== null && !Number.isNaN(spec.startsAt));
  try {
    const week = weekOf(good);
    return list.faults.length === before ? { week, remarks: [...remarks] } : null;
  } catch (error) {
    if (!isCoded(error)) throw error;
    list.faults.push(...error.faults);
    return null;
  }
}

// Null for a round with a number that could not be read: that is in the list already.
function traceOf(trip: PlainTrip, seed: number, path: string, remark: (says: string) => void): Trace | null {
  switch (trip.schedule) {
    case "NEDC":
      return nedc;
    case "NEDC urban":
      return nedcUrban;
    case "NEDC extra-urban":
      return nedcExtraUrban;
    case "parcel round":
    case "taxi shift": {
      const { hardness, hilliness, duration } = trip;
      if ([hardness, hilliness, duration].some(Number.isNaN)) return null;
      const drive = trip.schedule === "taxi shift" ? taxiShift : parcelRound;
      return drive(trip.seed ?? seed, { hardness, hilliness, duration });
    }
    case "own": {
      const { name = path, csv, timeUnit, speedUnit, gradeUnit, lateralUnit } = trip;
      const { mergeRepeats, bridgeGaps, leadIn } = trip;
      if ([bridgeGaps, leadIn].some(Number.isNaN)) return null;
      const { trace, remarks } = readTrace(name, csv, {
        units: {
          ...(timeUnit === undefined ? {} : { time: timeUnit }),
          ...(speedUnit === undefined ? {} : { speed: speedUnit }),
          ...(gradeUnit === undefined ? {} : { grade: gradeUnit }),
          ...(lateralUnit === undefined ? {} : { lateral: lateralUnit }),
        },
        mend: {
          ...(mergeRepeats === undefined ? {} : { mergeRepeats }),
          ...(bridgeGaps === undefined ? {} : { bridgeGaps }),
          ...(leadIn === undefined ? {} : { leadIn }),
        },
      });
      for (const says of remarks) remark(`${name}: ${says}`);
      return trace;
    }
  }
}

/** Weekdays by number, 0 is Monday. */
export function daysOf(days: PlainTrip["days"]): readonly number[] {
  if (days === "every day") return everyDay;
  if (days === "workdays") return workdays;
  return days.map((day) => dayNames.indexOf(day));
}
