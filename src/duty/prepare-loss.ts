// A week prepared for its loss alone: within a tenth of a second or two, where nothing else of a leak is asked yet.

import type { Week } from "../driving/pattern.ts";
import type { Unit } from "../physics/build.ts";
import { newFrozen } from "./frozen.ts";
import { kindsOf } from "./kinds.ts";
import { walkLevels } from "./levels.ts";
import { levelStep, type Prepared } from "./prepared.ts";

/**
 * What a leak loses in a week with a full unit in air of one temperature [K]. Beyond so many levels (the first half kilogram) the loss goes on as there, which
 * is so while the pump is fed, but not of a leak at the pan; no event is known to it.
 */
export function prepareLoss(unit: Unit, week: Week, air: number, levels = 2): Prepared {
  const kinds = kindsOf(week);
  const tight: Unit = { ...unit, leak: null };
  const walked = walkLevels(newFrozen(tight, air), kinds, () => true, levels * levelStep, false)!;
  return { unit: tight, ...kinds, climates: [walked.climate], thresholds: [], aftermaths: [] };
}
