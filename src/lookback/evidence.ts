// What was seen, counted, measured or told: each item by itself, with its own error. Seconds count from the midnight at which the visit's clock starts; SI.

import type { EventName } from "../history/watch.ts";

/** When something happened: not before, not after (-Infinity, Infinity: open), and how uncertain both ends are [s]. */
export interface When {
  readonly from: number;
  readonly to: number;
  readonly error: number;
  /** Told by the odometer: the distance from second 0 to the visit [m]. The other numbers are then metres since second 0. */
  readonly of?: number;
}

/** How thoroughly somebody looked. */
export type LookKind = "walk round" | "look underneath" | "shield taken off";

/** What can be told of the pan and its magnet. */
export type Sediment = "clean" | "grey film" | "dark flakes";

/** One item of evidence; `name` is the path in the visit's file, so that every answer can say what it rests on. */
export type Evidence = { readonly name: string } & (
  | {
      readonly kind: "fluid missing";
      readonly at: number;
      readonly volume: number;
      readonly error: number;
      /** Whose measure it was: those of one measure share a part of their error. */
      readonly by?: string;
    }
  | {
      readonly kind: "fluid drained";
      readonly at: number;
      readonly volume: number;
      readonly error: number;
      readonly by?: string;
      readonly stays: number;
      readonly staysError: number;
    }
  | {
      readonly kind: "dipstick";
      readonly at: number;
      readonly temperature: number;
      readonly position: number;
      readonly error: number;
    }
  | {
      readonly kind: "off the dipstick";
      readonly at: number;
      readonly temperature: number;
      readonly error: number;
    }
  | {
      readonly kind: "drops";
      readonly at: number;
      readonly count: number;
      readonly time: number;
      readonly moment: "idling hot" | "parked";
      readonly dropVolume?: number;
    }
  | { readonly kind: "first spot"; readonly when: When }
  | { readonly kind: "first symptom"; readonly symptom: EventName; readonly when: When }
  | { readonly kind: "not felt"; readonly symptom: EventName; readonly until: number }
  | { readonly kind: "known full"; readonly at: number; readonly error: number }
  | { readonly kind: "looked"; readonly at: number; readonly look: LookKind; readonly seen: boolean }
  | { readonly kind: "line pressure"; readonly at: number; readonly pressure: number; readonly error: number }
  | { readonly kind: "cooler flow"; readonly at: number; readonly flow: number; readonly error: number }
  | { readonly kind: "sediment"; readonly at: number; readonly amount: Sediment }
  | {
      readonly kind: "teardown";
      readonly at: number;
      readonly clutch: string;
      readonly burnt: boolean;
      /** What is left of a friction lining [m], and the colour of the steels, one of `tints`. */
      readonly lining?: number;
      readonly steelTint?: string;
    }
  | { readonly kind: "learned trim"; readonly at: number; readonly pressure: number; readonly error: number }
  | {
      readonly kind: "learned fill";
      readonly at: number;
      readonly clutch: string;
      readonly time: number;
      readonly error: number;
    }
  | { readonly kind: "fluid in the coolant"; readonly at: number; readonly found: boolean }
);

export type EvidenceKind = Evidence["kind"];

/** Fluid added [m³ at its temperature], by somebody's measure ± error: all that one measure poured is too much or too little by the same share of its error. */
export interface Added {
  readonly at: number;
  readonly volume: number;
  readonly error: number;
  readonly temperature: number;
  readonly by: string;
}
