// What has to be said about the driving itself: how a recorded drive was read, that there was none, or that it asks for more than the vehicle does.

import type { Week } from "../../src/driving/pattern.ts";
import type { Ticks } from "../../src/driving/trace.ts";
import type { History } from "../../src/history/simulate.ts";
import type { Tell } from "./said.ts";

const DAY = 86400;
/** Driving less of what is asked is more than the lag of a driver who follows [-]. */
const FOLLOWS = 0.97;

/** So many remarks are told; a drive with a gap on every street has more than anybody reads. */
const REMARKS = 6;

/** How recorded drives were read: what was passed over, taken for granted or mended. */
export function remarksText(remarks: readonly string[]): string[] {
  const left = remarks.length - REMARKS;
  return [
    ...remarks.slice(0, REMARKS).map((says) => `Of the recorded drive ${says}.`),
    ...(left > 0 ? [`And ${left} more ${left === 1 ? "remark" : "remarks"} of this kind.`] : []),
  ];
}

/** One sentence at most. `weekday` is that of the first day, 0 is Monday. */
export function drivenText(
  week: Week,
  weekday: number,
  { trips, events }: Pick<History, "trips" | "events">,
  tell: Tell,
): string[] {
  if (week.days.flat().length === 0)
    return [
      "The week of this case has no trips: the vehicle stood all the time, and only what leaks while parked was reckoned.",
    ];
  const slip = events.find(({ name }) => name === "first flare" || name === "first sustained slip");
  const last = trips.findLast(({ clock }) => clock <= (slip?.clock ?? Infinity));
  if (last === undefined) return [];
  const asked = distanceAsked(week, weekday, last.clock);
  if (last.distance >= FOLLOWS * asked) return [];
  return [
    `The drive asks for more than this vehicle does: of ${tell(asked, "distance")} that its trips ask for it drove ` +
      `${tell(last.distance, "distance")} while every clutch still held. Its speeds or hills are beyond the vehicle: check its units and the vehicle's mass.`,
  ];
}

/** Distance of all trips that started before a moment [m]. */
function distanceAsked({ days }: Week, weekday: number, until: number): number {
  let sum = 0;
  for (let d = 0; d * DAY < until; d++)
    for (const { startsAt, ticks } of days[(weekday + d) % 7]!)
      if (d * DAY + startsAt < until) sum += lengthOf(ticks);
  return sum;
}

function lengthOf({ count, dt, speed }: Ticks): number {
  let [sum, before] = [0, 0];
  for (let i = 0; i < count; i++) {
    sum += 0.5 * (before + speed[i]!) * dt[i]!;
    before = speed[i]!;
  }
  return sum;
}
