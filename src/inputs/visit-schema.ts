// The shape of a visit's file. Build, fluid, week, driver and surroundings are written as in a case, and read by the same rules.

import * as v from "valibot";
import type { Plain } from "./gather.ts";
import { plainNumber, quantity, seed } from "./leaf.ts";
import { above, atLeast, between, wholeAtLeast } from "./limits.ts";
import { by, evidenceSchema, fullWords, maybe, moment } from "./visit-evidence-schema.ts";

const distance = () => quantity("distance", above(0));
const odometer = { odometer: maybe(quantity("distance", between(0, 5e9))) };

/** How the vehicle is used, when nobody can tell its trips: a small week is made of it. */
const useSchema = v.strictObject({
  distancePerWeek: maybe(distance()),
  /** On the mean day of the week, Sundays counted. */
  hoursPerDay: maybe(quantity("time", between(60, 72000))),
  roads: v.exactOptional(v.picklist(["town", "mixed", "highway"])),
});

const lastFullSchema = v.strictObject({
  date: v.exactOptional(v.unknown()),
  ...odometer,
  distanceAgo: maybe(distance()),
  checked: v.picklist(fullWords),
});

const topUpSchema = v.strictObject({
  on: moment(),
  volume: quantity("volume", above(0)),
  error: maybe(quantity("volume", above(0))),
  ...by,
  temperature: maybe(quantity("temperature", between(230, 430))),
});

const beliefSchema = v.variant("law", [
  v.strictObject({
    law: v.picklist(["normal", "lognormal"]),
    middle: v.unknown(),
    /** Of a lognormal belief a plain number: the standard deviation of the natural logarithm. */
    spread: v.unknown(),
  }),
  v.strictObject({ law: v.picklist(["uniform", "log-uniform"]), low: v.unknown(), high: v.unknown() }),
]);

const price = () => plainNumber("120", atLeast(0), "a price as a number, in the currency beside it");

/** What each part costs, fitted at one visit with the others, in the writer's own money. */
const pricesSchema = v.strictObject({
  currency: v.pipe(v.string(), v.nonEmpty()),
  line: price(),
  "line set": price(),
  "fluid and filter": price(),
  cooler: price(),
  converter: price(),
  clutches: price(),
  "coming back": price(),
  /** A look with the shield off, or underneath where there is none; and how far vehicles like this are driven for each one that begins to leak. */
  look: maybe(plainNumber("35", above(0), "a price as a number, in the currency beside it")),
  oneLeakIn: maybe(quantity("distance", above(0), '"80000 mi"')),
});

/** The cooler lines' joints that are as old as the one that leaks, and how long they are to hold yet. */
const linesSchema = v.strictObject({
  joints: plainNumber(
    "4",
    wholeAtLeast(1),
    "how many joints of that age there are beside the one that leaks",
  ),
  age: quantity("time", above(0), '"9 years"'),
  toHold: maybe(quantity("time", above(0), '"2 years"')),
  /** Their life as a Weibull law: by when 63 of 100 have failed, and its shape. */
  life: maybe(quantity("time", above(0), '"16 years"')),
  shape: maybe(plainNumber("3", between(0.2, 20))),
});

export const visitSchema = v.strictObject({
  name: v.pipe(v.string(), v.nonEmpty()),
  about: v.exactOptional(v.string()),
  build: v.exactOptional(v.unknown()),
  fluid: v.exactOptional(v.unknown()),
  week: v.exactOptional(v.unknown()),
  use: v.exactOptional(useSchema),
  driver: v.exactOptional(v.unknown()),
  surroundings: v.exactOptional(v.unknown()),
  /** Where it leaks, as in a case, without the opening itself. */
  leak: v.record(v.string(), v.unknown()),
  shield: v.exactOptional(v.boolean()),
  lastFull: lastFullSchema,
  visit: v.strictObject({ date: v.exactOptional(v.unknown()), ...odometer }),
  topUps: v.optional(v.array(topUpSchema), []),
  evidence: v.array(evidenceSchema),
  beliefs: v.optional(v.record(v.string(), beliefSchema), {}),
  causes: v.optional(v.record(v.string(), plainNumber("0.1", above(0)).wrapped), {}),
  prices: v.exactOptional(pricesSchema),
  lines: v.exactOptional(linesSchema),
  seed: v.optional(seed(), 1),
});

export type VisitTree = v.InferOutput<typeof visitSchema>;
/** A whole visit with its numbers in SI. */
export type PlainVisit = Plain<VisitTree>;
