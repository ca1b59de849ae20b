// The learned fill: a controller that begins to fill a clutch earlier when it was full too late, until it may not.

import { fraction, impossible, notNegative, type Range } from "../../errors.ts";

/** How much earlier a controller may begin to fill a clutch. */
export const learnedFillRange: Range = {
  law: "learned fill of a clutch",
  quantity: "time by which a fill begins earlier",
  unit: "s",
  low: 0,
  high: 0.3,
  source: "adaptive fill is common practice; gain and limit are assumed, nobody has published them",
};

/**
 * Time [s] by which a controller begins to fill a clutch before a sound one would need it, after a shift whose clutch was full
 * `late` seconds after it was due (negative: early): moved by a share `gain` (0 to 1) of that, believed up to ± limit, and held
 * between 0 and `limit` [s]. Common practice of adaptive shift control; no gain or limit is published, both are inputs.
 */
export function nextFill(learned: number, late: number, gain: number, limit: number): number {
  if (Number.isNaN(late)) impossible("lateness of the fill", late, "a time in s");
  notNegative("learned fill", learned, "s");
  fraction("gain of the learned fill", gain);
  notNegative("limit of the learned fill", limit, "s");
  const believed = late > limit ? limit : late < -limit ? -limit : late;
  const next = learned + gain * believed;
  return next > limit ? limit : next < 0 ? 0 : next;
}
