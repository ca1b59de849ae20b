// The invented parcel van and town taxi, tight, and what the tests of this folder hang on them: leaks, weeks, plans.
import { fileURLToPath } from "node:url";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { everyDay, weekOf, type Week } from "../../src/driving/pattern.ts";
import type { RoundOptions } from "../../src/driving/road-draws.ts";
import { taxiShift } from "../../src/driving/taxi-shift.ts";
import { traceFrom } from "../../src/driving/trace-from.ts";
import type { Trace } from "../../src/driving/trace.ts";
import type { EventName } from "../../src/history/watch.ts";
import type { History, Plan } from "../../src/history/simulate.ts";
import { readCaseFile } from "../../src/inputs/files.ts";
import type { Leak, LeakOpening, LeakPlace, Unit } from "../../src/physics/build.ts";

const file = (name: string) =>
  fileURLToPath(new URL(`../../reference-data/cases/${name}.json`, import.meta.url));
/** A case as it is shipped. */
export const shipped = (name: string) => readCaseFile(file(name));

export const van: Unit = { ...shipped("pinhole").unit, leak: null };
export const taxi: Unit = { ...shipped("taxi-shaft-seal").unit, leak: null };

export const celsius = (t: number) => t + 273.15;
export const qt = (n: number) => n * 9.46352946e-4;
export const hours = (n: number) => n * 3600;
export const days = (n: number) => n * 86400;

/** A leak with nothing above it and nothing to hide behind, unless said otherwise. */
export function leaking(place: LeakPlace, opening: LeakOpening, more: Partial<Leak> = {}): Leak {
  return {
    place,
    opening,
    height: 0.06,
    x: 0,
    y: 0,
    fedBy: "lubrication",
    lineAbove: 0,
    columnHeight: 0,
    dripRadius: 0.004,
    hiding: { capacity: 0, carryOff: 0 },
    ...more,
  };
}

export const hole = (diameter: number, wall = 0.9e-3): LeakOpening => ({ kind: "hole", diameter, wall });

/** A fitting whose seal no longer creeps: a gap far narrower than it is long. */
export const gap = (clearance: number): LeakOpening => ({
  kind: "seal",
  diameter: 0.013,
  length: 2.4e-3,
  eccentricity: 0.5,
  clearance,
  finalClearance: clearance,
  creepTime: hours(1000),
});

/** Parcel rounds each day of the week at the hours given, every round another one. */
export function rounds(at: readonly number[], options: RoundOptions, seed = 1, step = 1): Week {
  return weekOf(
    everyDay.flatMap((day) =>
      at.map((hour, i) => ({
        trace: parcelRound(seed + 10 * day + i, options),
        startsAt: hours(hour),
        days: [day],
      })),
    ),
    step,
  );
}

/** Taxi shifts each day of the week at the hours given, every shift another one. */
export function shifts(at: readonly number[], options: RoundOptions, seed = 1): Week {
  return weekOf(
    everyDay.flatMap((day) =>
      at.map((hour, i) => ({
        trace: taxiShift(seed + 10 * day + i, options),
        startsAt: hours(hour),
        days: [day],
      })),
    ),
  );
}

/** One trace a day, every day, at an hour. */
export function daily(trace: Trace, hour = 8, step = 1): Week {
  return weekOf([{ trace, startsAt: hours(hour), days: everyDay }], step);
}

/** A trace from rows of time [s], speed [m/s], grade and lateral acceleration [m/s²]; the last two hold until the next row. */
export function trace(name: string, rows: readonly (readonly [number, number, number?, number?])[]): Trace {
  return traceFrom({
    name,
    time: rows.map(([time]) => time),
    speed: rows.map(([, speed]) => speed),
    grade: rows.map(([, , grade]) => grade ?? 0),
    lateral: rows.map(([, , , lateral]) => lateral ?? 0),
  });
}

/** A crack of 2 mm in a steel line of 10 mm, unbent, that parts the line when its half has grown to a length [m], after so much running [s]. */
export const steelCrack = (partsAt: number, partsAfter: number): LeakOpening => ({
  kind: "crack",
  halfLength: 1e-3,
  partsAt,
  partsAfter,
  parisExponent: 3,
  wall: 0.9e-3,
  tubeRadius: 4.55e-3,
  modulus: 205e9,
  poisson: 0.29,
  bendingStress: 0,
  restGap: 0,
});

/** A plan from midnight of a Monday in January, the leak open from the start; air of one temperature all the time. */
export function plan(unit: Unit, week: Week, air: number, more: Partial<Plan> = {}): Plan {
  return {
    unit: { ...unit, surroundings: { meanTemperature: air, yearlySwing: 0 } },
    week,
    weekday: 0,
    dayOfYear: 0,
    opens: { after: 0 },
    topUps: [],
    span: days(7),
    ...more,
  };
}

export const named = (history: History, name: EventName) =>
  history.events.find((event) => event.name === name);
