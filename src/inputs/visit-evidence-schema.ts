// What was seen, in a visit's file: each item in the trade's words. What is left out gets an error from common practice, which the visit then says.

import * as v from "valibot";
import { quantity, plainNumber } from "./leaf.ts";
import { above, aboveTo, atLeast, between, wholeAtLeast } from "./limits.ts";

/** A leaf that may be left out: what is assumed then is worked out later, and told. */
export const maybe = <T>(schema: { readonly wrapped: v.GenericSchema<unknown, T> }) =>
  v.exactOptional(schema.wrapped);

/** A date, an odometer reading or how long ago; read when both clocks of the visit are known. */
export const moment = () => v.exactOptional(v.unknown());

const on = { on: moment() };
const volume = () => quantity("volume", above(0));
const volumeError = { error: maybe(volume()) };
/** Whose measure it was, or whose memory: volumes of one share a part of their error. */
export const by = { by: v.exactOptional(v.pipe(v.string(), v.nonEmpty())) };

/** When an event came: one of these. */
const when = {
  about: moment(),
  between: moment(),
  before: moment(),
  after: moment(),
  notSeenBy: moment(),
  error: maybe(quantity("time", above(0))),
};

/** What a driver feels, in his words and the trade's. */
export const symptomWords = [
  "slow into gear",
  "slow into gear, cold",
  "slow into gear, hot",
  "flare",
  "slips",
  "lock-up slips",
  "runs hot",
  "falls behind",
  "does not move",
  "whines",
] as const;

export const lookWords = ["walk round", "look underneath", "shield taken off"] as const;
export const fullWords = ["hot dipstick", "overflow plug", "service without a look"] as const;
export const stickWords = [
  "at the full mark",
  "between the marks",
  "at the low mark",
  "below the low mark",
  "dry",
] as const;

/** Distance or warm-ups since something happened in the on-board computer: data that every vehicle with the open standard tells. */
const sinceCleared = {
  distance: maybe(quantity("distance", atLeast(0))),
  warmUps: maybe(plainNumber("33", wholeAtLeast(0))),
};

export const evidenceSchema = v.variant("kind", [
  v.strictObject({
    kind: v.literal("fluid missing"),
    ...on,
    volume: quantity("volume"),
    ...volumeError,
    ...by,
  }),
  v.strictObject({ kind: v.literal("added until it ran"), ...on, volume: volume(), ...volumeError, ...by }),
  v.strictObject({
    kind: v.literal("fluid drained"),
    ...on,
    volume: volume(),
    ...volumeError,
    ...by,
    /** What the drain does not reach. */
    stays: maybe(quantity("volume", atLeast(0))),
    staysError: maybe(volume()),
  }),
  v.strictObject({
    kind: v.literal("dipstick"),
    ...on,
    temperature: quantity("temperature", between(230, 430)),
    /** In words, or 0 at the low mark, 1 at the full one. */
    reads: v.union([
      v.picklist(stickWords),
      plainNumber(
        '"below the low mark" or -0.5',
        between(-3, 5),
        `${stickWords.map((word) => `"${word}"`).join(", ")}, or a number without unit (0 at the low mark, 1 at the full one)`,
      ).wrapped,
    ]),
    error: maybe(plainNumber("0.2", aboveTo(0, 3))),
  }),
  v.strictObject({
    kind: v.literal("drops"),
    ...on,
    count: plainNumber("40", wholeAtLeast(0)),
    time: quantity("time", above(0)),
    engine: v.picklist(["idling hot", "off"]),
    dropVolume: maybe(quantity("volume", between(1e-9, 0.5e-6))),
  }),
  v.strictObject({ kind: v.literal("first spot"), ...when }),
  v.strictObject({ kind: v.literal("first symptom"), what: v.picklist(symptomWords), ...when }),
  v.strictObject({ kind: v.literal("not felt"), what: v.picklist(symptomWords), until: moment() }),
  v.strictObject({ kind: v.literal("known full"), ...on, checked: v.picklist(fullWords), ...volumeError }),
  v.strictObject({ kind: v.literal("looked"), ...on, how: v.picklist(lookWords), seen: v.boolean() }),
  v.strictObject({
    kind: v.literal("stored slip code"),
    /** Odometer or date of the record. */
    storedAt: moment(),
    /** Distance since the record, or since all records were cleared. */
    distanceSinceStored: maybe(quantity("distance", atLeast(0))),
    distanceSinceCleared: maybe(quantity("distance", atLeast(0))),
    warmUpsSinceCleared: maybe(plainNumber("33", wholeAtLeast(0))),
  }),
  v.strictObject({ kind: v.literal("codes cleared"), ...sinceCleared, slipCodeSince: v.boolean() }),
  v.strictObject({
    kind: v.literal("learned trim"),
    ...on,
    pressure: quantity("pressure", between(-2e6, 2e6)),
    error: maybe(quantity("pressure", above(0))),
  }),
  v.strictObject({
    kind: v.literal("learned fill"),
    ...on,
    clutch: v.string(),
    time: quantity("time", between(-2, 2)),
    error: maybe(quantity("time", above(0))),
  }),
  v.strictObject({
    kind: v.literal("line pressure"),
    ...on,
    pressure: quantity("pressure", between(0, 5e6)),
    error: maybe(quantity("pressure", above(0))),
  }),
  v.strictObject({
    kind: v.literal("cooler flow"),
    ...on,
    flow: quantity("flow", atLeast(0)),
    error: maybe(quantity("flow", above(0))),
  }),
  v.strictObject({
    kind: v.literal("sediment"),
    ...on,
    amount: v.picklist(["clean", "grey film", "dark flakes"]),
  }),
  v.strictObject({
    kind: v.literal("teardown"),
    ...on,
    clutch: v.string(),
    burnt: v.boolean(),
    /** Thickness of friction lining that is left on a face, and the colour of the steels. */
    lining: maybe(quantity("length", between(0, 5e-3))),
    steelTint: v.exactOptional(v.string()),
  }),
  v.strictObject({ kind: v.literal("fluid in the coolant"), ...on, found: v.boolean() }),
]);

export type EvidenceTree = v.InferOutput<typeof evidenceSchema>;
