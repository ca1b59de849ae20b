import { codedError, finite, type Fault } from "../errors.ts";
import { ticks } from "./ticks.ts";
import { type Ticks, type Trace } from "./trace.ts";

/** One drive of a week, engine on from its first tick to its last. */
export interface Trip {
  readonly ticks: Ticks;
  /** Seconds after midnight. */
  readonly startsAt: number;
  readonly name: string;
}

/** Seven days, Monday first; each day's trips in the order of their start. */
export interface Week {
  readonly days: readonly (readonly Trip[])[];
}

/** A drive that comes back on given days: 0 is Monday. */
export interface TripSpec {
  readonly trace: Trace;
  /** Seconds after midnight. */
  readonly startsAt: number;
  readonly days: readonly number[];
}

/** What a week amounts to, on the mean day. SI. */
export interface DailyDriving {
  readonly trips: number;
  readonly drivingTime: number;
  readonly distance: number;
  /** Share of driving time at standstill. */
  readonly idleShare: number;
}

const day = 86400;
export const everyDay: readonly number[] = [0, 1, 2, 3, 4, 5, 6];
export const workdays: readonly number[] = [0, 1, 2, 3, 4];

/** How long a trip lasts [s]. */
export const tripTime = (trip: Trip): number => trip.ticks.dt.reduce((sum, dt) => sum + dt, 0);

/** Seconds after midnight from the clock: `clock(7, 30)`. */
export function clock(hours: number, minutes = 0): number {
  finite("hours", hours);
  finite("minutes", minutes);
  return hours * 3600 + minutes * 60;
}

/**
 * A week from trips that come back, each cut into ticks of at most `step` [s] once.
 * Throws `bad-case` with every fault: a day that is none, a start outside the day, trips that overlap. A trip may
 * run past midnight, also from Sunday into Monday, since the week comes round.
 */
export function weekOf(specs: readonly TripSpec[], step = 1): Week {
  const faults: Fault[] = [];
  const days: Trip[][] = everyDay.map(() => []);
  specs.forEach(({ trace, startsAt, days: on }, index) => {
    const path = `week.trips[${index}]`;
    if (!(startsAt >= 0 && startsAt < day))
      faults.push({
        path: `${path}.startsAt`,
        expected: "a time of the day from 0 s up to 86400 s",
        given: String(startsAt),
        example: "27000",
      });
    const trip: Trip = { ticks: ticks(trace, step), startsAt, name: trace.name };
    for (const d of new Set(on)) {
      if (everyDay.includes(d)) days[d].push(trip);
      else
        faults.push({
          path: `${path}.days`,
          expected: "0 (Monday) to 6 (Sunday)",
          given: String(d),
          example: "0",
        });
    }
  });
  if (faults.length === 0) faults.push(...overlaps(days));
  if (faults.length > 0) throw codedError("bad-case", faults);
  for (const trips of days) trips.sort((one, other) => one.startsAt - other.startsAt);
  return { days };
}

// Each trip that starts before the one before it has ended, around the whole week.
function overlaps(days: readonly (readonly Trip[])[]): Fault[] {
  const all = days
    .flatMap((trips, d) => trips.map((trip) => ({ trip, start: d * day + trip.startsAt })))
    .sort((one, other) => one.start - other.start);
  return all.flatMap(({ trip, start }, i) => {
    const next = all[(i + 1) % all.length];
    const nextStart = i + 1 < all.length ? next.start : next.start + 7 * day;
    const end = start + tripTime(trip);
    if (end - nextStart < 1e-6) return []; // ticks add up to a hair
    const path = `week.days[${Math.floor(next.start / day)}]`;
    return [
      {
        path,
        expected: `"${next.trip.name}" to start after "${trip.name}" has ended, which starts on ${moment(start)} and takes until ${moment(end)}`,
        given: `its start on ${moment(nextStart)}`,
        example: "",
      },
    ];
  });
}

const names = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

/** "Monday at 08:10" for seconds since Monday's midnight; what is no full minute is told as the next one. */
function moment(seconds: number): string {
  const whole = (Math.ceil((seconds - 1e-6) / 60) * 60) % (7 * day);
  const two = (value: number) => String(Math.floor(value)).padStart(2, "0");
  return `${names[Math.floor(whole / day)]} at ${two((whole % day) / 3600)}:${two((whole % 3600) / 60)}`;
}

/** The mean day of a week. A trip starts from standstill. */
export function dailyDriving(week: Week): DailyDriving {
  let [trips, time, distance, still] = [0, 0, 0, 0];
  for (const trip of week.days.flat()) {
    trips++;
    let before = 0;
    for (let i = 0; i < trip.ticks.count; i++) {
      const [dt, v] = [trip.ticks.dt[i], trip.ticks.speed[i]];
      time += dt;
      distance += 0.5 * (before + v) * dt;
      if (before === 0 && v === 0) still += dt;
      before = v;
    }
  }
  return {
    trips: trips / 7,
    drivingTime: time / 7,
    distance: distance / 7,
    idleShare: time > 0 ? still / time : 0,
  };
}
