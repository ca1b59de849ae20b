// The air that a visit's time meets: what a week has to be prepared for.

import type { AirRange } from "../duty/prepare.ts";
import { ambientOn } from "../history/simulate.ts";
import type { Visit } from "./visit.ts";

const DAY = 86400;

/** Coldest and warmest day [K] from second 0 of a visit's clock to the visit, as `prepareDuty` takes them. */
export function airOf({ unit, dayOfYear, at }: Visit): AirRange {
  const met = Array.from({ length: Math.ceil(at / DAY) + 1 }, (_, day) => ambientOn(unit, dayOfYear + day));
  return { coldest: Math.min(...met), warmest: Math.max(...met) };
}
