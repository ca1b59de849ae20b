// Time into gear: from neutral, brakes on, the seconds from moving the lever until the gear has taken hold.

import { idleInNeutral } from "../history/idle.ts";
import { engageFromRest, noEngagement } from "../history/shift.ts";
import type { Unit } from "../physics/build.ts";
import { holdAt, HOT, idling, inReverse, stoodFor } from "./ready.ts";

/** When the lever is moved: hot; hot, nose up on a ramp; cold, at once after a night's stand; cold, after a minute's idling, when most fluid is in flight. */
export type Moment = "hot" | "hot, nose up" | "cold start" | "cold, idled";

/** A night [s], its air [K], and the idling before the lever is moved [s]: belt and brake, or scraping the windows. */
const NIGHT = 12 * 3600;
const COLD = 268.15;
const AT_ONCE = 2;
const MINUTE = 60;
/** A ramp, and how long it takes for the fluid to come to rest on it [s]. */
const RAMP = 0.2;
const AT_REST = 20;

/**
 * Time into gear [s] of a unit that lacks `shortage` [m³]; null when nothing takes hold. After the night the fluid is at
 * -5 °C and converter and passages have drained as far as they do.
 */
export function timeIntoGear(
  unit: Unit,
  shortage: number,
  gear: "drive" | "reverse",
  moment: Moment,
): number | null {
  const chosen = gear === "drive" ? unit : inReverse(unit);
  const hot = moment === "hot" || moment === "hot, nose up";
  const walk = hot ? idling(chosen, shortage, HOT) : stoodFor(chosen, shortage, NIGHT, COLD);
  const { idleSpeed } = unit.build.engine;
  if (moment === "hot, nose up") idleInNeutral(walk, AT_REST, idleSpeed, () => holdAt(walk, HOT), RAMP);
  else if (!hot) idleInNeutral(walk, moment === "cold start" ? AT_ONCE : MINUTE, idleSpeed);
  const engagement = noEngagement();
  engageFromRest(walk, engagement);
  const taken = engagement.fill + engagement.time;
  return Number.isFinite(taken) ? taken : null;
}
