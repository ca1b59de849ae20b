// What nobody knows of any leak, whatever its law: when it opened, what hides it, how the vehicle was really used, what the last filler put in.

import { assumed } from "./assumed.ts";
import type { Outline } from "./visit.ts";
import type { Believed } from "./laws.ts";
import { sharedUnknowns } from "./shared.ts";

const day = 86400;
const quart = 0.946352946e-3;

/** Their places in a guess. */
export const place = { age: 0, soakedUp: 1, short: 2, harder: 3, use: 4, drop: 5 } as const;
/** How closely the driving of a week is told, without a log: standard deviation of its logarithm. Assumed. */
export const WEEKS_TOLD = 0.2;
/** How many there are: errors that several items share come after them, and then what is an explanation's own. */
export const commonCount = 6;

/**
 * The common unknowns of a visit. The age of the leak is believed to be anything up to the visit's second 0, evenly: no day is likelier than
 * another for a joint to give way.
 */
export function commonUnknowns(visit: Outline): readonly Believed[] {
  const { at, shield, driven, undated } = visit;
  const logged = driven !== undefined && undated !== true;
  return [
    {
      name: "age of the leak",
      belief: { law: "uniform", low: 0, high: at },
      unit: "d",
      per: 1 / day,
      origin: assumed("any day since the visit's first date, each as likely as any other"),
    },
    {
      name: "held back under the vehicle",
      belief: shield
        ? { law: "log-uniform", low: 0.05e-3, high: 0.6e-3 }
        : { law: "log-uniform", low: 0.5e-6, high: 0.05e-3 },
      unit: "L",
      per: 1e3,
      origin: assumed(
        shield ? "a flat tray with rims and foam holds 0.1 to 0.5 L" : "what clings to a bare underside",
      ),
    },
    {
      name: "lacking when it was last full",
      belief: { law: "normal", middle: 0, spread: 0.15 * quart },
      unit: "qt",
      per: 1 / quart,
      origin: assumed("a level is set to about half of what lies between the marks"),
    },
    {
      name: "this unit against its drawing",
      belief: { law: "normal", middle: 0, spread: 0.1 * quart },
      unit: "qt",
      per: 1 / quart,
      origin: assumed("pickup height, hold-up and clearances differ from unit to unit"),
    },
    {
      name: "use against the week as told",
      belief: { law: "lognormal", middle: 1, spread: logged ? 0.05 : WEEKS_TOLD },
      unit: "",
      per: 1,
      origin: assumed(
        logged ? "the odometer tells the distance, not the hours" : "nobody keeps a log of a week",
      ),
    },
    {
      name: "drops against the law of their size",
      belief: { law: "lognormal", middle: 1, spread: 0.15 },
      unit: "",
      per: 1,
      origin: assumed("what a drop hangs from is seldom a clean rim"),
    },
    ...sharedUnknowns(visit),
  ];
}
