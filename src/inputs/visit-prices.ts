// What a visit's file says of money and of the other joints of the lines.

import type { Part, Prices } from "../decisions/renewal.ts";
import { assumed, type Assume } from "./visit-assumed.ts";
import type { PlainVisit } from "./visit-schema.ts";

/** Prices with the name of their money; where the file tells them, what a look costs (with the shield off, or underneath where there is none), and the way that is driven for each leak [m]. */
export interface Priced extends Prices {
  readonly currency: string;
  readonly look?: number;
  readonly oneLeakIn?: number;
}

/** Joints as old as the one that leaks, beside it: how many, how old, how long they are to hold yet [s], and the Weibull law of their life (`scale` in s). */
export interface Lines {
  readonly joints: number;
  readonly age: number;
  readonly toHold: number;
  readonly life: { readonly scale: number; readonly shape: number };
}

const YEAR = 31_557_600;
const TO_HOLD = 2 * YEAR;
const LIFE = 16 * YEAR;
const SHAPE = 3;

export function pricesOf({
  "coming back": comingBack,
  ...prices
}: NonNullable<PlainVisit["prices"]>): Priced {
  return { ...(prices satisfies Omit<Priced, "comingBack"> & Record<Part, number>), comingBack };
}

export function linesOf(
  { joints, age, toHold, life, shape }: NonNullable<PlainVisit["lines"]>,
  assume: Assume,
): Lines {
  if (toHold === undefined)
    assume(
      "lines",
      "the other joints are to hold for two years yet",
      assumed("as long as a repair is usually answered for"),
    );
  if (life === undefined || shape === undefined)
    assume(
      "lines",
      `of joints like these ${life === undefined ? "63 in 100 have failed by 16 years" : "the life is as told"}, by a Weibull law of the shape ${shape ?? SHAPE}`,
      assumed("nobody has published how long the joints of cooler lines last; salt shortens it much"),
    );
  return { joints, age, toHold: toHold ?? TO_HOLD, life: { scale: life ?? LIFE, shape: shape ?? SHAPE } };
}
