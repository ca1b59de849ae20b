// The week in a case file: trips that come back on given days, each along a schedule.

import * as v from "valibot";
import { orElse, plainNumber, quantity, wholeNumber } from "./leaf.ts";
import { above, aboveTo, between } from "./limits.ts";

export const dayNames = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

export const days = v.union(
  [v.picklist(["every day", "workdays"]), v.pipe(v.array(v.picklist(dayNames)), v.nonEmpty())],
  '"every day", "workdays" or a list of days such as ["Mon", "Thu"]',
);
const common = { days, at: v.string() };

export const tripSchema = v.variant("schedule", [
  v.strictObject({ schedule: v.picklist(["NEDC", "NEDC urban", "NEDC extra-urban"]), ...common }),
  v.strictObject({
    schedule: v.literal("parcel round"),
    ...common,
    seed: v.exactOptional(wholeNumber()),
    hardness: orElse(plainNumber("1", aboveTo(0, 2)), "1"),
    hilliness: orElse(plainNumber("1", between(0, 4)), "1"),
    duration: orElse(quantity("time", between(300, 86400)), "40 min"),
  }),
  v.strictObject({
    schedule: v.literal("taxi shift"),
    ...common,
    seed: v.exactOptional(wholeNumber()),
    hardness: orElse(plainNumber("1", aboveTo(0, 2)), "1"),
    hilliness: orElse(plainNumber("1", between(0, 4)), "1"),
    duration: orElse(quantity("time", between(300, 86400)), "3.5 h"),
  }),
  /** The text of a CSV file, with its units in the header or named here. */
  v.strictObject({
    schedule: v.literal("own"),
    ...common,
    name: v.exactOptional(v.string()),
    csv: v.string(),
    timeUnit: v.exactOptional(v.string()),
    speedUnit: v.exactOptional(v.string()),
    gradeUnit: v.exactOptional(v.string()),
    lateralUnit: v.exactOptional(v.string()),
    /** What of the drive may be mended, as `Mending` says: nothing that is not asked for here. */
    mergeRepeats: v.exactOptional(v.boolean()),
    bridgeGaps: v.exactOptional(quantity("time", above(0), '"20 s"').wrapped),
    leadIn: v.exactOptional(quantity("acceleration", above(0), '"1 m/s2"').wrapped),
  }),
]);

export const weekSchema = v.strictObject({ trips: v.array(tripSchema) });

export type WeekTree = v.InferOutput<typeof weekSchema>;
