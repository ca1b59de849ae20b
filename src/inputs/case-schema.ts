// The shape of a whole case file.

import * as v from "valibot";
import { buildSchema } from "./build-schema.ts";
import type { Plain } from "./gather.ts";
import { orElse, plainNumber, quantity, share, seed } from "./leaf.ts";
import { above, aboveTo, atLeast, between } from "./limits.ts";
import { leakSchema } from "./leak-schema.ts";
import { days, weekSchema } from "./week-schema.ts";

const fluidSchema = v.strictObject({
  /** Two points, or three with a cold one. */
  viscosity: v.pipe(
    v.array(
      v.strictObject({
        temperature: quantity("temperature"),
        kinematic: quantity("kinematicViscosity", above(0.3e-6)),
      }),
    ),
    v.minLength(2),
    v.maxLength(3),
  ),
  density15: quantity("density", between(500, 1500)),
  shearLoss: orElse(plainNumber('"15 %"', between(0, 0.99)), "0"),
});

/** A moment: so long after the start, on a date, at an odometer reading, or after so many running hours. */
const opensSchema = v.union(
  [
    v.strictObject({ date: v.string() }),
    v.strictObject({ after: quantity("time", atLeast(0)) }),
    v.strictObject({ odometer: quantity("distance", atLeast(0)) }),
    v.strictObject({ running: quantity("time", atLeast(0)) }),
  ],
  "when the leak opens: a date, a time after the start, an odometer reading, or a running time",
);

/** Temperature of fluid that is poured in: between the coldest and the hottest that any is. */
const bottled = () => quantity("temperature", between(180, 480));

const entrySchema = v.strictObject({
  kind: v.literal("top-up"),
  date: v.string(),
  volume: quantity("volume", above(0)),
  temperature: orElse(bottled(), "20 degC"),
});

/** What the driver does about what he feels for the first time. */
const reactionSchema = v.optional(
  v.variant("does", [
    v.strictObject({ does: v.picklist(["carries on", "stops"]) }),
    v.strictObject({ does: v.literal("drives home"), distance: quantity("distance", atLeast(0)) }),
    v.strictObject({
      does: v.literal("tops up"),
      volume: v.union([v.literal("to the full mark"), quantity("volume", above(0)).wrapped]),
      /** Left out: that of the air. */
      temperature: v.exactOptional(bottled().wrapped),
    }),
  ]),
  { does: "carries on" },
);

/** A trailer: on the given weekdays, from one date (from the start) to another (to the end). */
const towedSchema = v.strictObject({
  mass: quantity("mass", above(0)),
  dragArea: quantity("area", atLeast(0)),
  rolling: plainNumber("0.010", between(0, 0.1)),
  rotating: orElse(plainNumber("1.02", between(1, 1.5)), "1.02"),
  days: v.optional(days, "every day"),
  from: v.exactOptional(v.string()),
  until: v.exactOptional(v.string()),
});

export const caseSchema = v.strictObject({
  name: v.pipe(v.string(), v.nonEmpty()),
  about: v.exactOptional(v.string()),
  build: buildSchema,
  fluid: fluidSchema,
  leak: v.nullable(leakSchema),
  week: weekSchema,
  towed: v.exactOptional(towedSchema),
  driver: v.optional(
    v.strictObject({
      pressOn: quantity("perSpeed", atLeast(0)),
      easeOff: share(),
      whenBehind: v.picklist(["carries on", "stops"]),
      atFirstFlare: reactionSchema,
      atFirstSlip: reactionSchema,
    }),
    { pressOn: "0.05 s/m", easeOff: 1, whenBehind: "carries on" },
  ),
  surroundings: v.strictObject({
    meanTemperature: quantity("temperature", aboveTo(180, 340)),
    yearlySwing: quantity("temperatureDifference", between(0, 60)),
  }),
  start: v.strictObject({ date: v.string(), odometer: quantity("distance", atLeast(0)) }),
  opens: v.optional(opensSchema, { after: "0 s" }),
  span: quantity("time", above(0)),
  /** Fluid short of the correct fill from the start, at the fill temperature; negative when overfull. */
  fillShort: orElse(quantity("volume"), "0 qt"),
  entries: v.optional(v.array(entrySchema), []),
  seed: seed(),
});

export type CaseTree = v.InferOutput<typeof caseSchema>;
/** A whole case with its numbers in SI. */
export type PlainCase = Plain<CaseTree>;
