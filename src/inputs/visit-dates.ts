// Both clocks of a visit, from dates, odometer readings and the week's driving, whichever of them are told.

import type { DailyDriving } from "../driving/pattern.ts";
import { WEEKS_TOLD } from "../lookback/common.ts";
import { given } from "../units/parse.ts";
import { isRecord } from "./broken.ts";
import { dateExample, dateExpected, dateSeconds } from "./dates.ts";
import { show } from "../units/show.ts";
import type { FaultList } from "./fault-list.ts";
import { assumed, type Assume } from "./visit-assumed.ts";
import { BY_THE_CLOCK, WITHIN_DAY, type VisitClock } from "./visit-clock.ts";
import type { PlainVisit } from "./visit-schema.ts";

const DAY = 86400;

/** No road vehicle goes farther: 40 m/s day and night [m a day]. */
const FARTHEST = DAY * 40;
/** Farther on the mean day is hardly any vehicle's use: 8 h at 75 km/h on every day, Sundays counted [m]. Assumed. */
const FAR = 600e3;

/** What the odometer says: distance since the last full, and its readings then and now. */
export interface Driven {
  readonly distance?: number;
  readonly from?: number;
}

export function drivenOf({ lastFull, visit }: PlainVisit): Driven {
  // A number that could not be read is as good as none: its fault is told already.
  const read = (value: number | undefined) => (Number.isNaN(value) ? undefined : value);
  const [then, now, ago] = [read(lastFull.odometer), read(visit.odometer), read(lastFull.distanceAgo)];
  const distance = ago ?? (now !== undefined && then !== undefined ? now - then : undefined);
  if (distance === undefined) return {};
  const from = then ?? (now === undefined ? undefined : now - distance);
  return { distance, ...(from === undefined ? {} : { from }) };
}

/** Seconds of a date of the file; NaN, with the reason in the list, for what is none. */
export function dateIn(path: string, date: unknown, { want }: FaultList): number {
  const at = typeof date === "string" ? dateSeconds(date) : Number.NaN;
  want(!Number.isNaN(at), path, dateExpected, given(date), dateExample);
  return at;
}

/**
 * What moments are read by where the clocks cannot be known, so that their own faults are told all the same: nothing lies after
 * it, and before it only what precedes the last full, where at least that is dated.
 */
export function noClock(lastFull: unknown, visit: unknown): VisitClock {
  const dayIn = (part: unknown) => (isRecord(part) ? dateSeconds(String(part["date"])) : Number.NaN);
  const first = Number.isNaN(dayIn(visit)) ? dayIn(lastFull) : Number.NaN;
  return {
    date: Number.isNaN(first) ? "1000-01-01" : isoDay(first),
    at: Infinity,
    distance: Number.NaN,
    odometer: 0,
    undated: false,
    error: 0,
  };
}

const isoDay = (seconds: number): string => new Date(seconds * 1000).toISOString().slice(0, 10);

/** Looks at the distance on the mean day between two dates, with the odd day that dates without a time of day leave open: refused beyond what is possible, asked about beyond what is usual. */
function lookAtUse(path: string, distance: number, seconds: number, list: FaultList, assume: Assume): void {
  const perDay = distance / (seconds / DAY + 1);
  const told = (metres: number) => show(metres, "distance", "US");
  list.want(
    !(perDay > FARTHEST),
    path,
    `no more than a vehicle can drive between the dates, ${told(FARTHEST)} a day`,
    `${told(distance)} in ${Math.round(seconds / DAY)} days`,
    path === "visit.odometer" ? '"62000 mi"' : '"3100 mi"',
  );
  if (perDay > FAR)
    assume(
      path,
      `odometer and dates are taken as they are, though they make ${told(perDay)} on every day: is one of them mistyped?`,
      assumed(`more than ${told(FAR)} on the mean day is possible, but hardly any vehicle's use`),
    );
}

/** How an odometer that did not go on is told. */
const behind = (distance: number): string =>
  distance === 0
    ? "the same reading"
    : `a reading that is ${show(-distance, "distance", "US")} less than at the last full`;

/** Null, with the reasons in the list, where they cannot be known. */
export function clockOf(
  { lastFull, visit }: PlainVisit,
  { distance, from }: Driven,
  daily: DailyDriving | null,
  list: FaultList,
  assume: Assume,
): VisitClock | null {
  const { want } = list;
  const visited = dateIn("visit.date", visit.date, list);
  const full = lastFull.date === undefined ? undefined : dateIn("lastFull.date", lastFull.date, list);
  want(
    full !== undefined || distance !== undefined,
    "lastFull",
    "when it was last full: a date, the odometer then (with that of the visit), or the distance since",
    "none of them",
    '"distanceAgo": "3100 mi"',
  );
  const path = lastFull.distanceAgo === undefined ? "visit.odometer" : "lastFull.distanceAgo";
  want(
    !(distance !== undefined && distance <= 0),
    path,
    "more than the odometer read at the last full",
    distance === undefined ? "" : behind(distance),
    '"63100 mi"',
  );
  want(
    lastFull.distanceAgo === undefined || lastFull.odometer === undefined,
    "lastFull.distanceAgo",
    "the distance since or the odometer then, not both",
    "both",
    '"3100 mi"',
  );
  want(
    !(full !== undefined && visited <= full),
    "visit.date",
    `a date after the last full (${String(lastFull.date)})`,
    given(visit.date),
    dateExample,
  );
  if (
    Number.isNaN(visited) ||
    (full !== undefined && !(full < visited)) ||
    (distance !== undefined && !(distance > 0))
  )
    return null;
  if (full === undefined && distance === undefined) return null;
  if (full !== undefined && distance !== undefined) lookAtUse(path, distance, visited - full, list, assume);
  const perDay = daily === null || !(daily.distance > 0) ? 50e3 : daily.distance;
  const noon = String(visit.date).includes(":") ? 0 : DAY / 2;
  if (full === undefined)
    assume(
      "lastFull.date",
      `its date follows from the distance and the week's driving, right to ${100 * WEEKS_TOLD} %: every date is as uncertain, miles are sure`,
      assumed("only the distance is known"),
    );
  // Second 0 is a midnight.
  const first = Math.floor((full ?? visited - (distance! / perDay) * DAY) / DAY) * DAY;
  const at = visited + noon - first;
  const far = distance ?? (perDay * at) / DAY;
  const start =
    from ??
    (distance === undefined
      ? visit.odometer === undefined
        ? lastFull.odometer
        : visit.odometer - far
      : undefined);
  if (distance === undefined)
    assume(
      "lastFull.odometer",
      "distances follow from the dates and the week's driving",
      assumed("the odometer was not read at both ends"),
    );
  return {
    date: isoDay(first),
    at,
    distance: far,
    odometer: start ?? null,
    undated: full === undefined,
    error: noon === 0 ? BY_THE_CLOCK : WITHIN_DAY,
  };
}
