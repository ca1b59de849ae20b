// A leak in a technician's words: where, what kind, how large now and in the end, over how many running hours.

import * as v from "valibot";
import { orElse, plainNumber, quantity } from "./leaf.ts";
import { above, aboveTo, atLeast, between } from "./limits.ts";

const length = () => quantity("length", above(0));
const common = {
  place: v.picklist(["supply-line", "return-line", "pan", "pan-seam", "shaft-seal"]),
  height: orElse(quantity("length", atLeast(0)), "0 mm"),
  /** Where in the rail a seam leaks, counted from the pan's rear and right wall. */
  x: orElse(quantity("length", atLeast(0)), "0 mm"),
  y: orElse(quantity("length", atLeast(0)), "0 mm"),
  /** What stands behind the seal of a shaft. */
  fedBy: v.optional(v.picklist(["converter-outlet", "lubrication"]), "lubrication"),
  lineAbove: orElse(quantity("volume", atLeast(0)), "0 mL"),
  columnHeight: orElse(quantity("length", atLeast(0)), "0 mm"),
  dripRadius: orElse(quantity("length", above(0)), "3 mm"),
  hiding: v.optional(
    v.strictObject({
      capacity: quantity("volume", atLeast(0)),
      carryOff: orElse(quantity("rate", atLeast(0)), "0 1/h"),
    }),
    { capacity: "0 mL", carryOff: "0 1/h" },
  ),
};
const gap = {
  diameter: length(),
  length: length(),
  eccentricity: orElse(plainNumber("0.5", between(0, 1)), "0"),
};

export const leakSchema = v.variant("kind", [
  v.strictObject({ kind: v.literal("hole"), ...common, diameter: length(), wall: length() }),
  v.strictObject({ kind: v.literal("slot"), ...common, length: length(), gap: length(), depth: length() }),
  v.strictObject({
    kind: v.literal("seal"),
    ...common,
    ...gap,
    clearance: length(),
    finalClearance: length(),
    creepTime: quantity("time", above(0)),
  }),
  /** A seal of which only the drops are known: the clearances are worked out from what was counted. */
  v.strictObject({
    kind: v.literal("seep"),
    ...common,
    ...gap,
    drops: quantity("dripRate", above(0)),
    finalDrops: quantity("dripRate", above(0)),
    /** Pressure in the line and temperature of the fluid at which the drops are or would be counted. */
    countedAt: v.strictObject({
      pressure: quantity("pressure", above(0)),
      temperature: quantity("temperature", between(220, 480)),
    }),
    creepTime: quantity("time", above(0)),
  }),
  v.strictObject({
    kind: v.literal("crack"),
    ...common,
    /** Length of the crack when it is first damp and when the line parts. */
    length: length(),
    partsAtLength: length(),
    partsAfter: quantity("time", above(0)),
    parisExponent: plainNumber("3", aboveTo(0, 20)),
    wall: length(),
    tubeDiameter: length(),
    modulus: orElse(quantity("pressure", above(0)), "205 GPa"),
    poisson: orElse(plainNumber("0.29", between(0, 0.5)), "0.29"),
    bendingStress: quantity("pressure", atLeast(0)),
    restGap: quantity("length", atLeast(0)),
  }),
  v.strictObject({
    kind: v.literal("pit"),
    ...common,
    /** Decides the exponent of growth. */
    material: v.picklist(["aluminium", "steel"]),
    /** Width of the mouth so long after the wall was through, by the calendar. */
    diameter: length(),
    after: quantity("time", above(0)),
    wall: length(),
    /** Bore of the line; on the pan the width of the rusted patch. */
    bore: length(),
    /** Half the pit's width over its depth, 1 for half a ball: the mouth is then what the wall cuts from it. Left out: the mouth widens by the power of time. */
    aspect: v.exactOptional(plainNumber("1", aboveTo(0, 10)).wrapped),
  }),
  v.strictObject({
    kind: v.literal("rub"),
    ...common,
    tubeDiameter: length(),
    wall: length(),
    /** Length of what rubs, along the line. */
    contact: length(),
    /** Depth that the first hundred running hours rub off the new tube. */
    wornInHundredHours: length(),
    /** Depth that is gone when the case starts; the leak then opens when the wall is through. Left out: it opens as the case says. */
    wornAtStart: v.exactOptional(quantity("length", atLeast(0)).wrapped),
  }),
]);

export type LeakTree = v.InferOutput<typeof leakSchema>;
