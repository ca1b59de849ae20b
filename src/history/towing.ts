// On which trips a trailer hangs behind the vehicle.

import type { Unit } from "../physics/build.ts";
import { coupled, type Trailer } from "../physics/load/towed.ts";

/** A trailer, the weekdays (0 is Monday) on which it is towed, and from when until when a trip must start for that [s]. */
export interface Towed {
  readonly trailer: Trailer;
  readonly days: readonly number[];
  readonly from: number;
  readonly until: number;
}

/** The unit with a vehicle of its own, and a call before each trip that hitches or unhitches the trailer. */
export function towing(
  unit: Unit,
  towed: Towed | undefined,
): { unit: Unit; before: (weekday: number, clock: number) => void } {
  const nothing = () => {
    /* no trailer: the unit is as it is */
  };
  if (towed === undefined) return { unit, before: nothing };
  const alone = unit.build.vehicle;
  const both = coupled(alone, towed.trailer);
  const vehicle = { ...alone };
  return {
    unit: { ...unit, build: { ...unit.build, vehicle } },
    before: (weekday, clock) => {
      const hitched = towed.days.includes(weekday) && clock >= towed.from && clock <= towed.until;
      Object.assign(vehicle, hitched ? both : alone);
    },
  };
}
