// A vehicle in the bay: what it is, how it is used, where it leaks, and what was seen of that.

import type { Week } from "../driving/pattern.ts";
import type { Leak, Unit } from "../physics/build.ts";
import type { Added, Evidence } from "./evidence.ts";

/** Everything about a leak but the opening itself: where it sits and what hides it. */
export type Site = Omit<Leak, "opening" | "hiding">;

/** What of a visit its explanations hang on. */
export type Outline = Pick<Visit, "at" | "shield" | "driven" | "undated" | "added" | "evidence">;

export interface Visit {
  readonly name: string;
  /** The unit without its leak. */
  readonly unit: Unit;
  readonly week: Week;
  readonly site: Site;
  /** Whether something under the vehicle catches fluid. */
  readonly shield: boolean;
  /** Weekday (0 is Monday) and day of the year (0 is 1 January) of second 0. */
  readonly weekday: number;
  readonly dayOfYear: number;
  /** When it was looked at in the bay [s]: nothing is asked of what comes later. */
  readonly at: number;
  /** Odometer at second 0 and at the visit [m], where both were read. */
  readonly driven?: { readonly from: number; readonly to: number };
  /** Only the distance since second 0 is known, not its date: the clock is then that of the miles, and the calendar as uncertain as the miles of a week. */
  readonly undated?: boolean;
  readonly evidence: readonly Evidence[];
  readonly added: readonly Added[];
}
